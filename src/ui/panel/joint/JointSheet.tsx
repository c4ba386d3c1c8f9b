import { jointNumber, jointVehicles, vehicleName } from '../../../core/findings/index.ts';
import { describeOf, namingOf } from '../../../state/index.ts';
import { useDesk, useSession } from '../../context.tsx';
import { Fact } from '../../controls/Fact.tsx';
import { lengthShown, useShow } from '../../show.ts';
import { BudgetTable } from './BudgetTable.tsx';
import { findingOfJoint } from './findingOfJoint.ts';
import { JointMargins } from './JointMargins.tsx';
import { OffsetParts } from './OffsetParts.tsx';
import { PassingTrace } from './PassingTrace.tsx';
import './joint.css';

/** The sheet of the joint under the lens: what its offset is made of, how its margin goes as it passes, its heads. */
export function JointSheet({ joint }: { readonly joint: number }) {
  const { session } = useDesk();
  const show = useShow();
  const trial = useSession((state) => state.trial);
  const result = useSession((state) => state.result);
  const chosen = useSession((state) => state.chosenFinding);
  const state = session.getState();
  const leading = trial?.train.vehicles[joint];
  const trailing = trial?.train.vehicles[joint + 1];
  if (!trial || !leading || !trailing) return null;
  const naming = namingOf(state);
  const number = jointNumber(naming, joint);
  const finding = result && findingOfJoint(result, joint, chosen);
  const head = lengthShown(leading.rear.coupling.headHeight, show);
  const mate = lengthShown(trailing.front.coupling.headHeight, show);
  return (
    <section className="joint-sheet" aria-label={`Joint ${number}`}>
      <h2>Joint {number}</h2>
      <p className="quiet">{jointVehicles(naming, joint).join(' to ')}</p>
      {finding && <OffsetParts finding={finding} title={describeOf(state, finding).title} />}
      {finding && <PassingTrace finding={finding} joint={joint} />}
      <Fact name={`Head of ${vehicleName(naming, joint)}`} shown={head.shown} others={head.other} />
      <Fact name={`Head of ${vehicleName(naming, joint + 1)}`} shown={mate.shown} others={mate.other} />
      <BudgetTable joint={joint} />
      <JointMargins joint={joint} />
    </section>
  );
}
