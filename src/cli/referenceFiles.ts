import { z } from 'zod';
import { sceneJsonSchema } from '../scene/index.ts';
import { defaultsPage } from './referenceDefaults.ts';
import { sectionReportSchema } from './section.ts';
import { surveyReportSchema } from './surveyReport.ts';
import { trialReportSchema } from './trialReport.ts';

const pretty = (schema: unknown): string => `${JSON.stringify(schema, null, 2)}\n`;

/** Every file of docs/reference that is made from the code, by its name, as its text. */
export const referenceFiles = (): Readonly<Record<string, string>> => ({
  'scene.schema.json': pretty(sceneJsonSchema()),
  'trial.schema.json': pretty(z.toJSONSchema(trialReportSchema)),
  'survey.schema.json': pretty(z.toJSONSchema(surveyReportSchema)),
  'section.schema.json': pretty(z.toJSONSchema(sectionReportSchema)),
  'defaults.md': defaultsPage(),
});
