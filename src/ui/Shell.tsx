import { type ReactNode, useEffect, useRef, useState } from 'react';
import { useStore } from 'zustand';
import { chapterOf } from './chapters/index.ts';
import { Chooser } from './chooser/Chooser.tsx';
import { type Desk, DeskProvider } from './context.tsx';
import { Fence } from './Fence.tsx';
import { DropVeil } from './files/DropVeil.tsx';
import { ProblemDialog } from './files/ProblemDialog.tsx';
import { Header } from './header/Header.tsx';
import { bindKeys } from './keyboard.ts';
import { Ledger } from './ledger/Ledger.tsx';
import { VerdictLine } from './ledger/VerdictLine.tsx';
import { Palette } from './palette/Palette.tsx';
import { Panel } from './panel/Panel.tsx';
import { Presentation } from './presentation/Presentation.tsx';
import { ChapterRail } from './rail/ChapterRail.tsx';
import { NewRailway } from './shapes/NewRailway.tsx';
import { NewVersion } from './update/NewVersion.tsx';
import './tokens.css';
import './base.css';
import './shell.css';
import './drawer.css';

interface ShellProps {
  readonly desk: Desk;
  readonly stage: ReactNode;
  readonly band: ReactNode;
}

/** The whole screen: header, chapters with their panel, stage, ledger and band, and what opens over them. */
export function Shell({ desk, stage, band }: ShellProps) {
  useEffect(() => bindKeys(desk), [desk]);
  // Only where the panel is a drawer (see shell.css) does it matter whether it is open.
  const [drawer, setDrawer] = useState(false);
  const chapter = useStore(desk.session, (state) => state.chapter);
  const presenting = useStore(desk.session, (state) => state.tour.presenting);
  // Turned by a key, the palette or a dropped table, a chapter is to be seen as much as by its tab.
  const turned = useRef(chapter);
  useEffect(() => {
    if (turned.current !== chapter) setDrawer(true);
    turned.current = chapter;
  }, [chapter]);
  return (
    <DeskProvider desk={desk}>
      <div
        className="shell"
        data-drawer={drawer ? 'open' : 'shut'}
        data-wide={chapterOf(chapter).wide}
        data-presenting={presenting || undefined}
      >
        <Header />
        <ChapterRail drawer={drawer} onDrawer={setDrawer} />
        <Panel />
        <VerdictLine />
        <main className="stage-place" aria-label="Stage">
          <Fence what="The stage">{stage}</Fence>
        </main>
        <Presentation />
        <Ledger />
        <div className="band-place">
          <Fence what="The band">{band}</Fence>
        </div>
      </div>
      <Palette />
      <Chooser />
      <NewRailway />
      <ProblemDialog />
      <DropVeil />
      <NewVersion />
    </DeskProvider>
  );
}
