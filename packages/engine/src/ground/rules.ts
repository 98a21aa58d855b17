/** What is settled about the Rules before a hole is played. */
export interface RulesInForce {
  /** Model Local Rule E-5: for a ball lost or out of bounds, go on by the nearest fairway for two penalty strokes instead of going back. */
  readonly e5?: boolean;
  /** Chance that a ball which comes to rest there is not found within three minutes; nought unless stated. */
  readonly lost?: { readonly recovery?: number; readonly rough?: number };
}
