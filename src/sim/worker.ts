import type { MessageEnd, SimReply, SimRequest } from './protocol.ts';
import { serveRequests } from './workerLoop.ts';

// The worker's own scope is one end of its channel; the DOM library types `self` as a window, which it is not here.
serveRequests(self as unknown as MessageEnd<SimReply, SimRequest>);
