import { type SurveyWorkerScope, serveSurveys } from '../../sim/survey/index.ts';

// The worker's own scope is one end of its channel; the DOM library types `self` as a window, which it is not here.
serveSurveys(self as unknown as SurveyWorkerScope);
