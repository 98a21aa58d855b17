/**
 * Where things lie in the room that a kernel works in: byte offsets within each record. Both the kernel's source and its plain twin read
 * this page. Whole numbers are int32, all others float32; an address is a byte offset in the room, nought for "none".
 */

/** A level: a blurred quantity's samples at (u0 + i / perM, v0 + j / perM), with the addresses of its three grids. */
export const LEVEL_BYTES = 48;
export const LEVEL_U0 = 0;
export const LEVEL_V0 = 4;
export const LEVEL_PER_M = 8;
export const LEVEL_COLUMNS = 12;
export const LEVEL_ROWS = 16;
export const LEVEL_DRY = 20;
export const LEVEL_OUT = 24;
export const LEVEL_WET = 28;

/** The clouds of a stroke: this head, then so many parts, then the clouds themselves, part after part. */
export const CLOUDS_HEAD_BYTES = 16;
export const CLOUDS_PARTS = 0;

/**
 * A part: the level its clouds read, the one they read near the flag instead, how many groups of four clouds and how many single ones
 * after them, the width of a cloud in metres, and how far all of them are moved along and across: what the day does down this line.
 */
export const PART_BYTES = 32;
export const PART_LEVEL = 0;
export const PART_NEAR = 4;
export const PART_GROUPS = 8;
export const PART_SINGLES = 12;
export const PART_SD_M = 16;
export const PART_MOVED_ALONG = 20;
export const PART_MOVED_ACROSS = 24;

/** Four clouds: four weights, four metres along, four metres across. */
export const GROUP_BYTES = 48;
export const GROUP_ALONG = 16;
export const GROUP_ACROSS = 32;

/** One cloud: weight, metres along, metres across. */
export const SINGLE_BYTES = 16;
export const SINGLE_ALONG = 4;
export const SINGLE_ACROSS = 8;

/**
 * What a sum comes to: costs that lead on, and the chance of playing again; of wet balls too few to be looked at one cloud at a time their
 * share, and that times their metres along and across. Each has room for four, to work in. Then a list of the other wet clouds behind
 * its length, with more room to work in between. Before it all, and only read, the box (u from, to; v from, to) that is near the flag.
 */
export const SUM_NEAR = 0;
export const SUM_AHEAD = 16;
export const SUM_REPLAYED = 32;
export const SUM_FEW = 48;
export const SUM_FEW_ALONG = 64;
export const SUM_FEW_ACROSS = 80;
export const SUM_WET_COUNT = 96;
export const SUM_SPARE = 112;
export const SUM_SHARES = 160;
export const SUM_WET = 176;

/** A wet cloud: its share of all balls, where it is, and its width in metres. */
export const WET_BYTES = 16;
export const WET_SHARE = 0;
export const WET_ALONG = 4;
export const WET_ACROSS = 8;
export const WET_SD_M = 12;

/** Columns that a kernel blurs at a time, and room for the weights of a blur. */
export const BLOCK = 16;
export const MOST_TAPS = 64;
