import { jointNumberOf, type SceneTourView, stopOnShow } from '../../state/show/index.ts';
import type { SessionState } from '../../state/types.ts';
import type { CameraRig } from '../camera/rig.ts';
import { lookOfView, viewOfRig } from '../camera/tourView.ts';
import type { StageSights } from './stageSights.ts';

/** Takes the camera to the stops of a tour, and the picture on show into one. */
export class TourFlights {
  /** It was gone to the whole railway, which a stage of another size frames anew. */
  onWhole = false;
  private went: number;

  constructor(
    state: SessionState,
    private readonly sights: StageSights,
  ) {
    this.went = state.tour.went;
  }

  /** Flies to the view of the stop on show, when the tour has come to one. The train has to stand where it is then. */
  follow(state: SessionState, rig: CameraRig, now: number): void {
    if (this.went === state.tour.went) return;
    this.went = state.tour.went;
    const view = stopOnShow(state)?.stop.view;
    this.onWhole = view?.kind === 'whole';
    if (view === undefined) return;
    if (state.camera === 'eye') this.sights.takeStand();
    rig.fly(state.camera, lookOfView(view, this.sights, rig.look), now);
    rig.touched = !this.onWhole;
  }

  /** What the picture shows now, as a view of a tour; null before there is one. */
  taken({ chosenJoint, trial }: SessionState, rig: CameraRig | null): SceneTourView | null {
    if (rig === null) return null;
    const joint = chosenJoint === null || trial === null ? null : jointNumberOf(chosenJoint, trial);
    return viewOfRig(rig, this.sights.first(), joint);
  }
}
