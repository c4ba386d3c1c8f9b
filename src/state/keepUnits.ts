import type { StoreApi } from 'zustand';
import type { SessionState } from './types.ts';

/** What lengths and grades are shown in. */
export type Units = Pick<SessionState, 'lengthUnit' | 'gradeForm'>;

/** Where a text is kept between visits. */
interface TextPort {
  read(): string | null;
  write(text: string | null): void;
}

/** Regions that build in inches. Source, from memory: Unicode CLDR, supplemental data, measurement system "US". */
const inInches: readonly string[] = ['US', 'LR', 'MM'];

/** Regions whose railways, and so their models, say a grade as 1 in n. Common practice, no source. */
const inOneIn: readonly string[] = ['GB', 'IE', 'AU', 'NZ', 'ZA', 'IN'];

/** The units usual where somebody with this language tag is at home; a tag that says no region means millimetres. */
export function usualUnits(tag: string): Units {
  const { region, language } = localeOf(tag);
  const lengthUnit = region !== undefined && inInches.includes(region) ? 'in' : 'mm';
  const oneIn = region === undefined ? language === 'en' : inOneIn.includes(region);
  return { lengthUnit, gradeForm: oneIn ? 'one-in' : 'percent' };
}

/** Shows what the person chose at an earlier visit, else what is usual where they are; keeps what they choose from here on. */
export function keepUnits(session: StoreApi<SessionState>, port: TextPort, tag: string): void {
  session.setState(readUnits(port.read()) ?? usualUnits(tag));
  session.subscribe(({ lengthUnit, gradeForm }, before) => {
    if (lengthUnit !== before.lengthUnit || gradeForm !== before.gradeForm) port.write(`${lengthUnit} ${gradeForm}`);
  });
}

function readUnits(text: string | null): Units | null {
  const [lengthUnit, gradeForm] = (text ?? '').split(' ');
  if (lengthUnit !== 'mm' && lengthUnit !== 'in') return null;
  if (gradeForm !== 'one-in' && gradeForm !== 'percent') return null;
  return { lengthUnit, gradeForm };
}

function localeOf(tag: string): { readonly language: string; readonly region?: string | undefined } {
  try {
    return new Intl.Locale(tag);
  } catch {
    return { language: 'en' };
  }
}
