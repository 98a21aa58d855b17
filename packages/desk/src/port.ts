/** One end of a line between an asker and a desk. What is sent is copied, but for the things in `moved`, which change hands. */
export interface Port {
  send(message: unknown, moved?: readonly object[]): void;
  /** Who takes what comes in; messages wait until somebody does. */
  receive(take: (message: unknown) => void): void;
  /** Who is told when the other end has died; it is told why. */
  ended(tell: (why: Error) => void): void;
  close(): void;
}
