import { z } from 'zod';
import { bounds } from './bounds.ts';
import { idText, maybe, named } from './fields.ts';

const change = z
  .strictObject({
    at: z
      .string()
      .min(1)
      .max(bounds.sentence)
      .meta({
        description: 'Address: keys of the file, items of a list by their id or their number from 1, joined by "/".',
        examples: ['tracks/gill-line/alignment/mouth/lengthMm'],
      }),
    to: maybe(z.unknown().meta({ description: 'What stands there now; left out: it is taken away.', examples: [450] })),
  })
  .meta({ description: 'One difference.', examples: [{ at: 'tracks/gill-line/alignment/mouth/lengthMm', to: 450 }] });

/** A railway as it might be instead: named differences from the scene, or from another variant of it. */
export const variantSchema = z
  .strictObject({
    id: idText('A short name for commands and links.', 'long-easement'),
    name: named('What people call it.', 'Easement of 450 mm'),
    from: maybe(idText('Id of the variant that it differs from; the scene itself when left out.', 'wide-helix')),
    changes: z.array(change).max(bounds.changes),
  })
  .meta({
    description: 'A variant of the railway.',
    examples: [{ id: 'long-easement', name: 'Easement of 450 mm', changes: [] }],
  });

export type SceneVariant = z.infer<typeof variantSchema>;
