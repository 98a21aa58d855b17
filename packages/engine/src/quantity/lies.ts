/** What a ball can be played from. A ball at rest in a tee area plays as fairway; `recovery` is trees and scrub. */
export const LIES = ['tee', 'fairway', 'rough', 'bunker', 'recovery', 'penalty'] as const;
export type Lie = (typeof LIES)[number];

/** What the ground is, as painted, and so what a ball can come to rest on. */
export const SURFACES = ['rough', 'recovery', 'fairway', 'green', 'tee', 'bunker', 'penalty', 'out'] as const;
export type Surface = (typeof SURFACES)[number];
