import type { Grade } from '@leeway/engine';
import type { Answered } from './latest.ts';

/**
 * Puts questions about a thing that is being moved. Quick ones go at once, so that the desk has the newest before it when it is free, and passes over
 * those before; one to be answered in full waits until the quick ones have been, and is forgotten when the thing moves on.
 */
export class Moves<Question extends { readonly grade: Grade }, Answer> {
  private readonly ask: (question: Question) => Promise<Answer | undefined>;
  private readonly to: Answered<Question, Answer>;
  private inFull: Question | undefined;
  private open = 0;
  private round = 0;

  /** An answer of `undefined` is passed over: a newer question took its place. */
  constructor(ask: (question: Question) => Promise<Answer | undefined>, to: Answered<Question, Answer>) {
    this.ask = ask;
    this.to = to;
  }

  put(question: Question): void {
    this.inFull = undefined;
    if (question.grade === 'settled' && this.open > 0) this.inFull = question;
    else void this.send(question);
  }

  /** Forgets every question put so far, also those that are being answered. */
  drop(): void {
    this.inFull = undefined;
    this.round++;
  }

  private async send(question: Question): Promise<void> {
    const { round } = this;
    this.open++;
    try {
      const answer = await this.ask(question);
      if (answer !== undefined && round === this.round) this.to.got(answer, question);
    } catch (error) {
      if (round === this.round) this.to.failed(error);
    }
    this.open--;
    const { inFull } = this;
    if (inFull === undefined || this.open > 0) return;
    this.inFull = undefined;
    void this.send(inFull);
  }
}
