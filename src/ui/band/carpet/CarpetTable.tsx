import { memo } from 'react';
import type { TrialView } from '../frame/trialView.ts';
import { chainageWords, forceFigure, type Show } from '../words.ts';
import { jointName } from './jointName.ts';

/** The carpet as text: for each joint its strongest push and pull, where, and how long it hung slack. */
export const CarpetTable = memo(function CarpetTable({
  view,
  show,
}: {
  readonly view: TrialView;
  readonly show: Show;
}) {
  const { motion, forces } = view;
  const cell = (joint: number, f: number) =>
    motion && forces[joint][f] !== 0
      ? `${forceFigure(forces[joint][f], view.greatestForce)} N at ${chainageWords(motion.joints[joint][f], show)}`
      : 'none';
  return (
    <table>
      <caption>{motion ? 'Coupler force, joint by joint from the leading end' : 'Coupler force: no run yet'}</caption>
      <thead>
        <tr>
          <th scope="col">joint</th>
          <th scope="col">strongest buff</th>
          <th scope="col">strongest draft</th>
          <th scope="col">slack, % of the time</th>
        </tr>
      </thead>
      <tbody>
        {forces.map((joint, j) => {
          let buff = 0;
          let draft = 0;
          let slack = 0;
          for (let f = 0; f < joint.length; f++) {
            if (joint[f] < joint[buff]) buff = f;
            if (joint[f] > joint[draft]) draft = f;
            if (joint[f] === 0) slack++;
          }
          return (
            <tr key={jointName(view.naming, j)}>
              <td>{jointName(view.naming, j)}</td>
              <td>{joint[buff] < 0 ? cell(j, buff) : 'none'}</td>
              <td>{joint[draft] > 0 ? cell(j, draft) : 'none'}</td>
              <td>{Math.round((100 * slack) / joint.length)}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
});
