import { useMemo } from 'react';
import { roomRemarks } from '../../../state/room/index.ts';
import type { Scene } from '../../../state/types.ts';
import { useShow } from '../../show.ts';

/** What of the room is in the way of the tracks or of itself: facts of the drawing. Nothing where all is well. */
export function RoomRemarks({ scene }: { readonly scene: Scene }) {
  const { lengthUnit, gradeForm } = useShow();
  const remarks = useMemo(() => roomRemarks(scene, { lengthUnit, gradeForm }), [scene, lengthUnit, gradeForm]);
  if (remarks.length === 0) return null;
  return (
    <ul className="room-remarks" aria-label="In the way">
      {remarks.map(({ subject, words }) => (
        <li key={`${subject} ${words}`}>{words}</li>
      ))}
    </ul>
  );
}
