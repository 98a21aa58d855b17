/** What one standard error of one parameter of one option does to expected strokes. `key` names the parameter, so that shots which share it add up. */
export interface Nudge {
  readonly key: string;
  readonly strokes: number;
  /** What a standard error does either way, in the mean: half the second difference. */
  readonly bend?: number;
}
