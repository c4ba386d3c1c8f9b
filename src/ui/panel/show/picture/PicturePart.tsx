import { useStore } from 'zustand';
import { useDesk } from '../../../context.tsx';

/** A picture of what the stage shows now. */
export function PicturePart() {
  const { pictures, actions } = useDesk().pictures;
  const problem = useStore(pictures, (state) => state.problem);
  return (
    <section aria-labelledby="show-picture">
      <h3 id="show-picture">A picture</h3>
      <p className="quiet">
        What the stage shows now, without its labels; railway, trial, moment and verdict stand under it.
      </p>
      <div className="sheet-pair">
        <button type="button" className="sheet-button" onClick={() => void actions.save(1)}>
          As on the screen
        </button>
        <button type="button" className="sheet-button" onClick={() => void actions.save(2)}>
          Twice as fine
        </button>
      </div>
      {problem !== null && (
        <p className="said wrong" role="alert">
          {problem}
        </p>
      )}
    </section>
  );
}
