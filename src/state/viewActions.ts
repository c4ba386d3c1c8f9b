import type { StoreApi } from 'zustand/vanilla';
import type { MomentActions, ViewActions } from './session.ts';
import type { SessionState } from './types.ts';
import { jointOf } from './words.ts';

/** How the session is looked at. */
export function createViewActions(session: StoreApi<SessionState>, { seekToFinding }: MomentActions): ViewActions {
  return {
    chooseJoint: (chosenJoint) => session.setState({ chosenJoint }),
    setCamera: (camera) => session.setState({ camera }),
    showWhole: () => session.setState(({ wholeAsked }) => ({ camera: 'walk', wholeAsked: wholeAsked + 1 })),
    openLens(view) {
      const { result, chosenJoint, chosenFinding } = session.getState();
      if (!result || result.run.vehicles < 2) return;
      if (chosenJoint === null) {
        const gravest = result.findings.findIndex((finding) => jointOf(finding) !== null);
        if (chosenFinding === null && gravest >= 0) seekToFinding(gravest);
        else session.setState({ chosenJoint: 0 });
      }
      session.setState(({ lens }) => ({ lens: { open: true, view: view ?? lens.view } }));
    },
    closeLens: () => session.setState(({ lens }) => ({ lens: { ...lens, open: false } })),
    setLensView: (view) => session.setState(({ lens }) => ({ lens: { ...lens, view } })),
    setAxis: (axis) => session.setState({ axis }),
    setLengthUnit: (lengthUnit) => session.setState({ lengthUnit }),
    setGradeForm: (gradeForm) => session.setState({ gradeForm }),
    setChapter: (chapter) => session.setState({ chapter }),
    setPalette: (palette) => session.setState({ palette }),
    setChooser: (chooser) => session.setState({ chooser }),
    setMaking: (making) => session.setState({ making }),
    dismissProblem: () => session.setState({ problem: null }),
    report: (problem) => session.setState({ problem }),
  };
}
