import { contrastTheme, forcedTheme, plainTheme, type SystemColours, setTheme } from '../theme.ts';

const moreContrast = '(prefers-contrast: more)';
const forcedColours = '(forced-colors: active)';

/** A system colour of the page as `#RRGGBB`. */
function systemColour(name: string): string {
  const probe = document.createElement('span');
  probe.style.color = name;
  probe.style.display = 'none';
  document.body.append(probe);
  const parts = getComputedStyle(probe).color.match(/[\d.]+/g) ?? ['0', '0', '0'];
  probe.remove();
  return `#${parts
    .slice(0, 3)
    .map((part) => Math.round(Number(part)).toString(16).padStart(2, '0'))
    .join('')}`;
}

const systemColours = (): SystemColours => ({
  ground: systemColour('Canvas'),
  ink: systemColour('CanvasText'),
  mark: systemColour('Highlight'),
});

/** Keeps the drawing's colours with what the person's system asks for; calls `changed` now and after each change. Gives what ends it. */
export function followTheme(changed: () => void): () => void {
  const forced = matchMedia(forcedColours);
  const more = matchMedia(moreContrast);
  const take = () => {
    setTheme(forced.matches ? forcedTheme(systemColours()) : more.matches ? contrastTheme : plainTheme);
    changed();
  };
  take();
  for (const query of [forced, more]) query.addEventListener('change', take);
  return () => {
    for (const query of [forced, more]) query.removeEventListener('change', take);
  };
}

/** Whether lines are wanted heavier. */
export const wantsHeavier = (): boolean => matchMedia(moreContrast).matches || matchMedia(forcedColours).matches;
