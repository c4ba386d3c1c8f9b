import { clubPageHtml } from '../export/page/index.ts';
import type { Scene } from '../scene/index.ts';
import { createInProcessHost } from '../sim/index.ts';
import { gatherPage, type PageHooks } from '../sim/page/index.ts';
import { BadInput } from './exitCodes.ts';

/** What `page` is told. */
export interface PageWords {
  readonly 'no-loads'?: true | undefined;
  readonly inches?: true | undefined;
  readonly 'one-in'?: true | undefined;
  readonly date?: string | undefined;
}

/** The page to pass on of a railway, as one file of HTML. Throws BadInput when it is called off before the trials are over, or a trial cannot be laid. */
export async function page(scene: Scene, words: PageWords, hooks: PageHooks = {}): Promise<string> {
  const host = createInProcessHost();
  try {
    const gathered = await gatherPage(
      scene,
      {
        show: { lengthUnit: words.inches ? 'in' : 'mm', gradeForm: words['one-in'] ? 'one-in' : 'percent' },
        loads: words['no-loads'] !== true,
      },
      host,
      hooks,
    );
    return clubPageHtml(gathered, words.date ?? today());
  } catch (error) {
    if (error instanceof RangeError) throw new BadInput(error.message);
    if (error instanceof Error && error.name === 'AbortError')
      throw new BadInput('Called off before the trials were over: there is no page.');
    throw error;
  } finally {
    host.dispose();
  }
}

const today = (): string => new Date().toLocaleDateString('en-GB', { dateStyle: 'long' });
