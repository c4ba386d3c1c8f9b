import { useSession } from '../context.tsx';
import { JointSheet } from './joint/JointSheet.tsx';
import { RouteSheet } from './route/RouteSheet.tsx';
import { TrainsSheet } from './trains/TrainsSheet.tsx';
import { TrialSheet } from './trial/TrialSheet.tsx';
import './panel.css';

/** The sheet of the chosen chapter; while the lens is open, the sheet of the joint under it. */
export function Panel() {
  const chapter = useSession((state) => state.chapter);
  const joint = useSession((state) => (state.lens.open ? state.chosenJoint : null));
  const ready = useSession((state) => state.compiled !== null && state.trial !== null);
  if (!ready) return null;
  if (joint !== null) return <JointSheet joint={joint} />;
  return { route: <RouteSheet />, trains: <TrainsSheet />, trial: <TrialSheet /> }[chapter];
}
