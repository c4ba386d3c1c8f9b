export { roomRemoval } from './removal.ts';
export { roomDragged } from './roomDragged.ts';
export { newLabel, roomDrawn, usualPart } from './roomDrawn.ts';
export { type RoomHandle, roomHandles } from './roomHandles.ts';
export { roomLines } from './roomLines.ts';
export { drawingHeight, drawnKey, type RoomSubject, type RoomTool, roomSubject } from './roomParts.ts';
export { type RoomRemark, roomRemarks } from './roomRemarks.ts';
export { roomWords } from './roomWords.ts';
