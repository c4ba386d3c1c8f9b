import { z } from 'zod';
import { bounds } from './bounds.ts';
import { idText, maybe, named, oneOf, positiveMm, quantity } from './fields.ts';

const chainage = (about: string, example: number) => quantity(0, bounds.lengthMm, about, example);
const track = idText('Id of the track it belongs to.', 'down-line');

const portal = z.strictObject({
  kind: z.literal('portal'),
  name: named('What people call it.', 'Mouth of the short tunnel'),
  track,
  atMm: chainage('Chainage of its middle, mm.', 2400),
  widthMm: positiveMm(2_000, 'Clear width between its walls, mm.', 60),
  heightMm: positiveMm(2_000, 'Clear height over the rail, mm.', 60),
  depthMm: maybe(positiveMm(2_000, 'How far it reaches along the track, mm; 10 when left out.', 20)),
  offsetMm: maybe(quantity(-1_000, 1_000, 'Its middle to the left of the track, mm.', 0)),
});

const wall = z.strictObject({
  kind: z.literal('wall'),
  name: named('What people call it.', 'Platform'),
  track,
  fromMm: chainage('Chainage at which it begins, mm.', 1200),
  toMm: chainage('Chainage at which it ends, mm.', 1800),
  side: oneOf(['left', 'right'], 'Which side of the track, seen the way chainage grows.'),
  distanceMm: positiveMm(2_000, 'From the middle of the track to its face, mm.', 24),
  heightMm: quantity(-200, 2_000, 'Its top over the rail, mm.', 12),
});

export const linesideSchema = z.discriminatedUnion('kind', [portal, wall]).meta({
  description: 'A portal over a track, or a wall (a platform, a cutting) along one.',
  examples: [{ kind: 'portal', name: 'Tunnel mouth', track: 'down-line', atMm: 2400, widthMm: 60, heightMm: 60 }],
});

export type SceneLineside = z.infer<typeof linesideSchema>;
