import { serveRoute } from '../../sim/study/route/routeHost.ts';

// The worker's own scope is one end of its channel; the DOM library types `self` as a window, which it is not here.
const scope = self as unknown as {
  postMessage(said: unknown): void;
  onmessage: ((event: MessageEvent) => void) | null;
};
const tell = serveRoute((said) => scope.postMessage(said));
scope.onmessage = ({ data }) => tell(data);
