import { z } from 'zod';
import { sceneJsonSchema } from '../scene/index.ts';
import { bestReportSchema } from './bestReport.ts';
import { bestRouteReportSchema } from './bestRouteReport.ts';
import { chanceReportSchema } from './chanceReport.ts';
import { compareReportSchema } from './compareReport.ts';
import { loadsReportSchema } from './loadsReport.ts';
import { defaultsPage } from './referenceDefaults.ts';
import { sectionReportSchema } from './section.ts';
import { surveyReportSchema } from './surveyReport.ts';
import { sweepReportSchema } from './sweepReport.ts';
import { trialReportSchema } from './trialReport.ts';

const pretty = (schema: unknown): string => `${JSON.stringify(schema, null, 2)}\n`;

/** Every file of docs/reference that is made from the code, by its name, as its text. */
export const referenceFiles = (): Readonly<Record<string, string>> => ({
  'scene.schema.json': pretty(sceneJsonSchema()),
  'trial.schema.json': pretty(z.toJSONSchema(trialReportSchema)),
  'survey.schema.json': pretty(z.toJSONSchema(surveyReportSchema)),
  'best.schema.json': pretty(z.toJSONSchema(bestReportSchema)),
  'best-route.schema.json': pretty(z.toJSONSchema(bestRouteReportSchema)),
  'loads.schema.json': pretty(z.toJSONSchema(loadsReportSchema)),
  'sweep.schema.json': pretty(z.toJSONSchema(sweepReportSchema)),
  'chance.schema.json': pretty(z.toJSONSchema(chanceReportSchema)),
  'compare.schema.json': pretty(z.toJSONSchema(compareReportSchema)),
  'section.schema.json': pretty(z.toJSONSchema(sectionReportSchema)),
  'defaults.md': defaultsPage(),
});
