import { useSession } from '../context.tsx';
import { ShapeSheet } from './ShapeSheet.tsx';

/** The sheet that makes a new railway, while it is asked for. */
export function NewRailway() {
  return useSession((state) => state.making) ? <ShapeSheet /> : null;
}
