import { type ReactNode, useEffect, useState } from 'react';
import { type Desk, DeskProvider } from './context.tsx';
import { Fence } from './Fence.tsx';
import { DropVeil } from './files/DropVeil.tsx';
import { ProblemDialog } from './files/ProblemDialog.tsx';
import { Header } from './header/Header.tsx';
import { bindKeys } from './keyboard.ts';
import { Ledger } from './ledger/Ledger.tsx';
import { Palette } from './palette/Palette.tsx';
import { Panel } from './panel/Panel.tsx';
import { ChapterRail } from './rail/ChapterRail.tsx';
import './tokens.css';
import './base.css';
import './shell.css';

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
  return (
    <DeskProvider desk={desk}>
      <div className="shell" data-drawer={drawer ? 'open' : 'shut'}>
        <Header />
        <ChapterRail drawer={drawer} onDrawer={setDrawer} />
        <Panel />
        <main className="stage-place" aria-label="Stage">
          <Fence what="The stage">{stage}</Fence>
        </main>
        <Ledger />
        <div className="band-place">
          <Fence what="The band">{band}</Fence>
        </div>
      </div>
      <Palette />
      <ProblemDialog />
      <DropVeil />
    </DeskProvider>
  );
}
