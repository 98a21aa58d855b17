/**
 * Rounds px to two decimals: a fiftieth of a pixel is not seen, files are half as long, and every painter puts a letter on the same side
 * of a pixel's edge.
 */
export const hundredths = (px: number): number => Math.round(px * 100) / 100 + 0;
