export { applyCure } from './applyCure.ts';
export { compileScene } from './compileScene.ts';
export { compileTrial, isPropelled } from './compileTrial.ts';
export { createInProcessHost } from './inProcessHost.ts';
export { type MessageEnd, type SimReply, type SimRequest, transferables } from './protocol.ts';
export { riskContext, runTrial } from './runTrial.ts';
export type * from './types.ts';
export { createWorkerHost, type SimWorker } from './workerClient.ts';
export { serveRequests } from './workerLoop.ts';
