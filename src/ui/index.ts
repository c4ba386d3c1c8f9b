export { type BundledScene, type Desk, useDesk, useSession } from './context.tsx';
export { Shell } from './Shell.tsx';
