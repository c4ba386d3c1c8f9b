import { describe, expect, test } from 'vitest';
import {
  chainageFigure,
  differenceFigure,
  forceFigure,
  gradeBothForms,
  gradeOneForm,
  lengthFigure,
  marginFigure,
  radiusWords,
  turnsWords,
} from '../../../src/ui/band/words.ts';

const mm = { lengthUnit: 'mm', gradeForm: 'one-in' } as const;
const inches = { lengthUnit: 'in', gradeForm: 'percent' } as const;

describe('figures', () => {
  test('lengths with a true minus, inches finer below one', () => {
    expect(lengthFigure(0.2404, mm)).toBe('240.4');
    expect(lengthFigure(0.0025, mm, true)).toBe('+2.5');
    expect(lengthFigure(-0.0004, mm)).toBe('−0.4');
    expect(lengthFigure(0.2404, inches)).toBe('9.46');
    expect(lengthFigure(0.0025, inches)).toBe('0.098');
    expect(lengthFigure(Number.NaN, mm)).toBe('–');
  });

  test('chainages in metres, or in feet and whole inches', () => {
    expect(chainageFigure(7.4236, mm)).toBe('7.42');
    expect(chainageFigure(7.4236, inches)).toBe('24′ 4″');
    expect(chainageFigure(3.048, inches)).toBe('10′');
    expect(chainageFigure(0.1, inches)).toBe('4″');
    expect(chainageFigure(Number.NaN, inches)).toBe('–');
  });

  test('margins by their unit', () => {
    expect(marginFigure(-0.0004, 'length', mm)).toBe('−0.4');
    expect(marginFigure(2.12, 'share', mm)).toBe('+212');
    expect(marginFigure(-0.42, 'share', mm)).toBe('−42');
    expect(marginFigure(63.19, 'share', mm)).toBe('+6300');
    expect(marginFigure(Math.PI / 15, 'angle', mm)).toBe('12.0');
    expect(marginFigure(0.314, 'force', mm)).toBe('0.31');
  });

  test('forces to what the scale can show, and slack by name', () => {
    expect(forceFigure(-0.554, 0.6)).toBe('−0.55');
    expect(forceFigure(0.0123, 0.12)).toBe('+0.012');
    expect(forceFigure(0, 0.12)).toBe('slack');
  });

  test('grades in both forms, the chosen one first', () => {
    expect(gradeBothForms(-0.0239, mm)).toBe('1 in 41.8 · 2.39\u2009%');
    expect(gradeBothForms(0.0239, inches)).toBe('2.39\u2009% · 1 in 41.8');
    expect(gradeBothForms(0, mm)).toBe('level');
    expect(gradeOneForm(-0.02, mm)).toBe('1 in 50.0');
  });

  test('curves and turns', () => {
    expect(radiusWords(-1 / 0.6, mm)).toBe('R\u2009600\u2009mm right');
    expect(radiusWords(1 / 0.6096, inches)).toBe('R\u200924″ left');
    expect(radiusWords(0.001, mm)).toBe('straight');
    expect(turnsWords(3.45)).toBe('3½ turns');
    expect(turnsWords(1)).toBe('1 turn');
    expect(turnsWords(0.74)).toBe('¾ turn');
    expect(turnsWords(0.6)).toBe('');
  });
});

describe('how much another railway has more', () => {
  test('carries its sign, once', () => {
    expect(differenceFigure(0.0017, 'length', mm)).toBe('+1.7');
    expect(differenceFigure(-0.0017, 'length', mm)).toBe('−1.7');
    expect(differenceFigure(0.11, 'share', mm)).toBe('+11');
  });

  test('is nothing where no digit of it could be read, and unknown where one of them says nothing', () => {
    expect(differenceFigure(0.00004, 'length', mm)).toBe('=');
    expect(differenceFigure(-0.001, 'share', mm)).toBe('=');
    expect(differenceFigure(Number.NaN, 'length', mm)).toBe('–');
  });
});
