/** Chances of each number of strokes to hole out, by that number; the last holds all beyond it. */
export type ScoreChances = readonly number[];
