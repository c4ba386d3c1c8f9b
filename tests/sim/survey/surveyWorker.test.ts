import { expect, it } from 'vitest';
import {
  createSurveyWorkerHost,
  type SurveyWorker,
  type SurveyWorkerScope,
  serveSurveys,
} from '../../../src/sim/survey/index.ts';
import { bundledScene } from '../../scene/sample.ts';

const scene = bundledScene('08-harebell-spiral.json');

/** Workers in this thread: what is posted is cloned as between threads, and comes a turn later. */
function startedHere() {
  const ended: number[] = [];
  let started = 0;
  const host = createSurveyWorkerHost(() => {
    const number = started++;
    const worker: SurveyWorker = {
      onmessage: null,
      onerror: null,
      postMessage: (request) => {
        const data = structuredClone(request);
        setTimeout(() => scope.onmessage?.({ data } as MessageEvent), 0);
      },
      terminate: () => ended.push(number),
    };
    const scope: SurveyWorkerScope = {
      onmessage: null,
      postMessage: (reply) => worker.onmessage?.({ data: structuredClone(reply) } as MessageEvent),
    };
    serveSurveys(scope);
    return worker;
  });
  return { host, ended, started: () => started };
}

it('answers through the channel with all that the screen needs', async () => {
  const { host } = startedHere();
  const { survey, mend } = await host.work({ scene, surveyId: 'first', objective: null });
  expect(survey.explanation.supports.map(({ support }) => support).sort((a, b) => a - b)).toEqual([5, 16]);
  expect(mend).toBeNull();
});

it('tells what is wrong in words', async () => {
  const { host } = startedHere();
  await expect(host.work({ scene, surveyId: 'nowhere', objective: null })).rejects.toThrow('no survey "nowhere"');
});

it('ends its worker when a question is called off, and starts another for the next', async () => {
  const { host, ended, started } = startedHere();
  const calledOff = new AbortController();
  const asked = host.work({ scene, surveyId: 'first', objective: 'fewest' }, calledOff.signal);
  calledOff.abort();
  await expect(asked).rejects.toMatchObject({ name: 'AbortError' });
  expect(ended).toEqual([0]);
  await host.work({ scene, surveyId: 'first', objective: null });
  expect(started()).toBe(2);
});
