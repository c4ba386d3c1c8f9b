/** The format's bounds for what stands beside and over a track, mm. */
export const leastMm = 0.01;
export const highestMm = 2000;
export const lowestWallMm = -200;
export const farthestAsideMm = 1000;
export const farthestHeightMm = 10_000;
