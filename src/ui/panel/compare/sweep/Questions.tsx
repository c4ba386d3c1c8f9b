import { useStudyActions } from '../useStudy.ts';

/** Vehicles that the question of the steepest grade is asked with. */
const six = 6;

/** Two questions that every builder asks. */
export function Questions() {
  const actions = useStudyActions();
  return (
    <ul className="questions" aria-label="Ready questions">
      <li>
        <button type="button" className="study-button" onClick={() => void actions.askEasement()}>
          Shortest easement with which every train passes propelled
        </button>
      </li>
      <li>
        <button type="button" className="study-button" onClick={() => void actions.askSteepest(six)}>
          Steepest grade my weakest engine takes with six
        </button>
      </li>
    </ul>
  );
}
