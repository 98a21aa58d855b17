/** What the state needs of time; a test has its own. */
export interface Clock {
  /** Before the next frame is painted. */
  frame(then: () => void): void;
  /** After some milliseconds; the result calls it off. */
  after(ms: number, then: () => void): () => void;
}

/** The browser's frames and timers. */
export const BROWSER_CLOCK: Clock = {
  frame: (then) => {
    requestAnimationFrame(() => then());
  },
  after: (ms, then) => {
    const timer = setTimeout(then, ms);
    return () => clearTimeout(timer);
  },
};
