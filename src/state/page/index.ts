export { createPages, type PagePorts, type Pages } from './createPages.ts';
export type * from './types.ts';
