import { parseSpeed, type Reading } from '../../../core/units/index.ts';
import { percentWords } from '../../show.ts';

/** Reads a speed setting: `45`, `45 %`, or a speed that a light engine reaches with it (`0.2 m/s`, `40 mph`). A share, 0 to 1. */
export function readSetting(text: string, freeSpeed: number, ratio: number | undefined): Reading {
  const plain = text.trim().replace(',', '.');
  const percent = /^(\d+(?:\.\d+)?|\.\d+)\s*(?:%|per ?cent)?$/i.exec(plain);
  if (percent) return settingOf(Number(percent[1]) / 100, text);
  const speed = parseSpeed(text, ratio === undefined ? {} : { scale: ratio });
  if (speed.ok) return settingOf(speed.value / freeSpeed, text);
  return {
    ok: false,
    message: `“${text.trim().slice(0, 40)}” is not a setting. Write 45 %, or a speed like 0.2 m/s or 8 in/s.`,
  };
}

function settingOf(share: number, text: string): Reading {
  if (share >= 0.01 && share <= 1) return { ok: true, value: share, read: `${percentWords(share)} of full` };
  return { ok: false, message: `“${text.trim()}” is ${percentWords(share)} of full; 1 % to 100 % can be set.` };
}
