export { type Imported, type ImportOptions, importedScene } from './importedScene.ts';
export { centrelineKind } from './readCentreline.ts';
