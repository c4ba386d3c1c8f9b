export type { BundledScene, Desk } from './context.tsx';
export { Shell } from './Shell.tsx';
