export { captionOf } from './captionOf.ts';
export { createPictures, type Pictures } from './createPictures.ts';
export type * from './types.ts';
