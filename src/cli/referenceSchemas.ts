import { z } from 'zod';
import { sceneJsonSchema } from '../scene/index.ts';
import { sectionReportSchema } from './section.ts';
import { trialReportSchema } from './trialReport.ts';

const pretty = (schema: unknown): string => `${JSON.stringify(schema, null, 2)}\n`;

/** Every JSON Schema of docs/reference by its file name, as the text of the file. */
export const referenceSchemas = (): Readonly<Record<string, string>> => ({
  'scene.schema.json': pretty(sceneJsonSchema()),
  'trial.schema.json': pretty(z.toJSONSchema(trialReportSchema)),
  'section.schema.json': pretty(z.toJSONSchema(sectionReportSchema)),
});
