import { chapterOf, chapters } from '../chapters/index.ts';
import { useDesk, useSession } from '../context.tsx';
import './rail.css';

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
      {chapters.map(({ id, label, Icon }, index) => (
        <button
          key={id}
          type="button"
          aria-current={id === current ? 'page' : undefined}
          title={`${label} (${index + 1}; within a field Alt Shift ${index + 1})`}
          aria-keyshortcuts={`${index + 1} Alt+Shift+${index + 1}`}
          onClick={() => {
            onDrawer(!(drawer && id === current));
            actions.setChapter(id);
          }}
        >
          <i aria-hidden="true">{index + 1}</i>
          <Icon />
          {label}
        </button>
      ))}
      <button type="button" className="drawer" aria-expanded={drawer} onClick={() => onDrawer(!drawer)}>
        {chapterOf(current).label} sheet {drawer ? '▴' : '▾'}
      </button>
    </nav>
  );
}
