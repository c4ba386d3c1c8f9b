import { workerData } from 'node:worker_threads';
import { type MessageEnd, type SimReply, type SimRequest, serveRequests } from '../../sim/index.ts';

// One end of a channel comes with the thread; the types of Node and of browsers name the same port differently.
serveRequests((workerData as { readonly port: unknown }).port as MessageEnd<SimReply, SimRequest>);
