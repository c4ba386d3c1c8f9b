export { type BundledScene, type Desk } from './context.tsx';
export { Shell } from './Shell.tsx';
