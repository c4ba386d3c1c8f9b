import { chapterWords } from '../../state/commands/index.ts';
import type { Chapter } from '../../state/types.ts';
import { useDesk, useSession } from '../context.tsx';
import './rail.css';

const chapters = Object.keys(chapterWords) as Chapter[];

interface ChapterRailProps {
  /** Where the panel is a drawer: whether it is open. */
  readonly drawer: boolean;
  readonly onDrawer: (open: boolean) => void;
}

/** The chapters of the job that there are; each changes what the panel beside it shows. */
export function ChapterRail({ drawer, onDrawer }: ChapterRailProps) {
  const { actions } = useDesk();
  const current = useSession((state) => state.chapter);
  return (
    <nav className="rail" aria-label="Chapters">
      {chapters.map((chapter, index) => (
        <button
          key={chapter}
          type="button"
          aria-current={chapter === current ? 'page' : undefined}
          title={`${chapterWords[chapter]} (${index + 1})`}
          onClick={() => {
            onDrawer(!(drawer && chapter === current));
            actions.setChapter(chapter);
          }}
        >
          <i>{index + 1}</i>
          {chapterWords[chapter]}
        </button>
      ))}
      <button type="button" className="drawer" aria-expanded={drawer} onClick={() => onDrawer(!drawer)}>
        {chapterWords[current]} sheet {drawer ? '▴' : '▾'}
      </button>
    </nav>
  );
}
