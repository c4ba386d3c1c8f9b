import { z } from 'zod';
import { sceneJsonSchema } from '../../scene/index.ts';
import { bestReportSchema } from '../best/bestReport.ts';
import { bestRouteReportSchema } from '../best/bestRouteReport.ts';
import { buildReportSchema } from '../build/buildReport.ts';
import { sectionReportSchema } from '../section.ts';
import { chanceReportSchema } from '../studies/chanceReport.ts';
import { compareReportSchema } from '../studies/compareReport.ts';
import { loadsReportSchema } from '../studies/loadsReport.ts';
import { sweepReportSchema } from '../studies/sweepReport.ts';
import { surveyReportSchema } from '../survey/surveyReport.ts';
import { trialReportSchema } from '../trial/trialReport.ts';
import { defaultsPage } from './referenceDefaults.ts';

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
  'build.schema.json': pretty(z.toJSONSchema(buildReportSchema)),
  'section.schema.json': pretty(z.toJSONSchema(sectionReportSchema)),
  'defaults.md': defaultsPage(),
});
