/** The format's bound of a place in the room and of a size there, mm. */
export const farthestMm = 200_000;
