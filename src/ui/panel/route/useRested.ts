import { useEffect, useState } from 'react';
import type { Scene } from '../../../state/types.ts';
import { useSession } from '../../context.tsx';

/** A hand that has not moved for this long rests, ms: as long as the verdict waits for its thorough look. */
const restAfter = 250;

/** A railway as it is, or, while a hand that holds something of it moves, as it was when that hand last rested. */
export function useRested(newest: Scene): Scene {
  const held = useSession((state) => state.holding);
  const [rested, setRested] = useState(newest);
  useEffect(() => {
    const timer = setTimeout(() => setRested(newest), held ? restAfter : 0);
    return () => clearTimeout(timer);
  }, [newest, held]);
  return held ? rested : newest;
}
