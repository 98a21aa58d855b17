/** Where answers go. */
export interface Answered<Question, Answer> {
  readonly got: (answer: Answer, question: Question) => void;
  readonly failed: (error: unknown) => void;
  /** Takes an answer that nobody waits for any more. */
  readonly passedOver?: (answer: Answer) => void;
}

/** Puts one question at a time. Of those that come meanwhile only the newest is put next, so that answers keep coming however fast one asks. */
export class Latest<Question, Answer> {
  private readonly ask: (question: Question) => Promise<Answer | undefined>;
  private readonly to: Answered<Question, Answer>;
  private waiting: { readonly question: Question } | undefined;
  private busy = false;
  private round = 0;

  /** An answer of `undefined` is passed over: a newer question took its place. */
  constructor(ask: (question: Question) => Promise<Answer | undefined>, to: Answered<Question, Answer>) {
    this.ask = ask;
    this.to = to;
  }

  put(question: Question): void {
    this.waiting = { question };
    if (!this.busy) void this.work();
  }

  /** Forgets every question put so far, also the one that is being answered. */
  drop(): void {
    this.waiting = undefined;
    this.round++;
  }

  private async work(): Promise<void> {
    this.busy = true;
    while (this.waiting !== undefined) {
      const { question } = this.waiting;
      const { round } = this;
      this.waiting = undefined;
      try {
        // one after the other is the point
        // oxlint-disable-next-line no-await-in-loop
        const answer = await this.ask(question);
        if (answer === undefined) continue;
        if (round === this.round) this.to.got(answer, question);
        else this.to.passedOver?.(answer);
      } catch (error) {
        if (round === this.round) this.to.failed(error);
      }
    }
    this.busy = false;
  }
}
