import { serveBest } from '../../sim/study/bestHost.ts';

// The worker's own scope is one end of its channel; the DOM library types `self` as a window, which it is not here.
serveBest(self as unknown as Parameters<typeof serveBest>[0]);
