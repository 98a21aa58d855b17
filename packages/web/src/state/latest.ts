/** Puts one question at a time. Of those that come meanwhile only the newest is put next, so that answers keep coming however fast one asks. */
export class Latest<Question, Answer> {
  private readonly ask: (question: Question) => Promise<Answer | undefined>;
  private readonly got: (answer: Answer, question: Question) => void;
  private readonly failed: (error: unknown, question: Question) => void;
  private waiting: { readonly question: Question } | undefined;
  private busy = false;

  /** An answer of `undefined` is passed over: a newer question took its place. */
  constructor(
    ask: (question: Question) => Promise<Answer | undefined>,
    got: (answer: Answer, question: Question) => void,
    failed: (error: unknown, question: Question) => void,
  ) {
    this.ask = ask;
    this.got = got;
    this.failed = failed;
  }

  put(question: Question): void {
    this.waiting = { question };
    if (!this.busy) void this.work();
  }

  /** Forgets the question that waits. */
  drop(): void {
    this.waiting = undefined;
  }

  private async work(): Promise<void> {
    this.busy = true;
    while (this.waiting !== undefined) {
      const { question } = this.waiting;
      this.waiting = undefined;
      try {
        // one after the other is the point
        // oxlint-disable-next-line no-await-in-loop
        const answer = await this.ask(question);
        if (answer !== undefined) this.got(answer, question);
      } catch (error) {
        this.failed(error, question);
      }
    }
    this.busy = false;
  }
}
