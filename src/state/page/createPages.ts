import { createStore, type StoreApi } from 'zustand/vanilla';
import { type ClubPage, gatherPage } from '../../sim/page/index.ts';
import type { SimHost } from '../../sim/types.ts';
import { fileNameOf } from '../fileName.ts';
import type { Session } from '../session.ts';
import type { OutputKind, OutputPort, PageState } from './types.ts';

/** The page to pass on, and what can be done with it. */
export interface Pages {
  readonly pages: StoreApi<PageState>;
  readonly actions: {
    setLoads(loads: boolean): void;
    /** Works it out of the railway as it is now. Another one under way is given up. */
    make(): Promise<void>;
    /** Ends the work; with the trials over, what is known of the loads stays. */
    stop(): void;
    save(): Promise<void>;
    show(): void;
  };
}

/** What the pages need of the rest of the program. */
export interface PagePorts {
  /** A solver of its own, so that no trial on show waits. */
  readonly solver: () => SimHost;
  readonly layOut: (page: ClubPage, date: string) => Promise<string>;
  readonly output: OutputPort;
  /** Today, as it is written. */
  readonly today: () => string;
}

const html: OutputKind = { description: 'Page', mimeType: 'text/html', extension: '.html' };

/** Makes what the program remembers of the page to pass on while it is open. */
export function createPages(session: Pick<Session, 'session'>, { solver, layOut, output, today }: PagePorts): Pages {
  const pages = createStore<PageState>(() => ({ loads: true, progress: null, made: null, problem: null }));
  let calling: AbortController | null = null;
  const actions: Pages['actions'] = {
    setLoads: (loads) => pages.setState({ loads }),
    async make() {
      const { scene, lengthUnit, gradeForm } = session.session.getState();
      if (scene === null) return;
      calling?.abort();
      const own = new AbortController();
      calling = own;
      pages.setState({ progress: 0, problem: null, made: null });
      const host = solver();
      try {
        const page = await gatherPage(scene, { show: { lengthUnit, gradeForm }, loads: pages.getState().loads }, host, {
          signal: own.signal,
          onProgress: (progress) => calling === own && pages.setState({ progress }),
        });
        const text = await layOut(page, today());
        if (calling === own)
          pages.setState({ made: { html: text, fileName: fileNameOf(scene.name, '.html'), scene, whole: page.whole } });
      } catch (error) {
        if (calling !== own || (error instanceof Error && error.name === 'AbortError')) return;
        pages.setState({ problem: error instanceof Error ? error.message : String(error) });
      } finally {
        host.dispose();
        if (calling === own) {
          calling = null;
          pages.setState({ progress: null });
        }
      }
    },
    stop: () => calling?.abort(),
    async save() {
      const { made } = pages.getState();
      if (made === null) return;
      try {
        await output.save(made.fileName, made.html, html);
      } catch (error) {
        pages.setState({ problem: error instanceof Error ? error.message : String(error) });
      }
    },
    show() {
      const { made } = pages.getState();
      if (made !== null) output.show(made.html, html);
    },
  };
  return { pages, actions };
}
