export { sheetsDxf } from './sheetsDxf.ts';
export { sheetsSvg } from './sheetsSvg.ts';
