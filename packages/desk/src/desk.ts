import { failureOf, type Call, type Reply } from './messages.ts';
import type { Port } from './port.ts';
import type { About, Answer, Name, Questions } from './questions.ts';

/** The work on one question, as whoever answers it sees it. */
export interface Turn {
  /** A newer question of the same name has come, or this one was withdrawn. */
  readonly passedOver: boolean;
  /** Lets waiting messages in; between pieces of long work. Throws when the question has been passed over, which ends the turn. */
  pause(): Promise<void>;
  /** Names parts of the answer that are moved to the asker rather than copied. */
  move(...things: readonly object[]): void;
}

/** Who answers each kind of question. */
export type Answerers<D extends Questions<D>> = {
  readonly [N in keyof D]: (about: About<D, N>, turn: Turn) => Answer<D, N> | Promise<Answer<D, N>>;
};

interface Question {
  readonly id: number;
  readonly name: string;
  readonly about: unknown;
}

/** A question that waits, and how often it, or the one whose place it took, has been overtaken. */
interface Waiting extends Question {
  overtaken: number;
}

const OVERTAKEN_MOST = 2;

/** Thrown by `pause` to leave a turn. */
class PassedOver extends Error {}

/**
 * Answers the questions that come in at a port: one at a time, in the order they came, a newer one in the place of an older of its name that waits.
 * A question of an `urgent` name goes before the others; these are overtaken twice at the most, so that they have their turn too.
 */
export function answerAt<D extends Questions<D>>(
  port: Port,
  answerers: Answerers<D>,
  urgent: readonly Name<D>[] = [],
): void {
  const desk = new Desk(port, answerers as Answering, urgent);
  port.receive((message) => desk.take(message as Call));
}

type Answering = { readonly [name: string]: (about: unknown, turn: Turn) => unknown };

class Desk {
  private readonly port: Port;
  private readonly answerers: Answering;
  /** One of each name at the most, longest waiting first. */
  private readonly waiting = new Map<string, Waiting>();
  private readonly urgent: readonly string[];
  private current: { readonly question: Question; passedOver: boolean } | undefined;
  private working = false;

  constructor(port: Port, answerers: Answering, urgent: readonly string[]) {
    this.urgent = urgent;
    this.port = port;
    this.answerers = answerers;
  }

  take(call: Call): void {
    if (call.call === 'withdraw') this.withdraw(call.id);
    else this.queue(call);
    if (!this.working) void this.work();
  }

  private queue({ id, name, about }: Question): void {
    const older = this.waiting.get(name);
    if (older !== undefined) this.reply({ reply: 'passed over', id: older.id });
    if (this.current?.question.name === name) this.current.passedOver = true;
    this.waiting.set(name, { id, name, about, overtaken: older?.overtaken ?? 0 });
  }

  /** The asker has forgotten the question, so nothing is said. */
  private withdraw(id: number): void {
    if (this.current?.question.id === id) this.current.passedOver = true;
    for (const [name, question] of this.waiting) if (question.id === id) this.waiting.delete(name);
  }

  private async work(): Promise<void> {
    this.working = true;
    // what has come in together is seen together, so that only the newest of it is answered
    await messagesIn();
    for (let next = this.next(); next !== undefined; next = this.next()) {
      await this.answer(next);
      await messagesIn();
    }
    this.working = false;
  }

  private next(): Question | undefined {
    const all = [...this.waiting.values()];
    const overtakes = (question: Waiting, i: number): boolean =>
      this.urgent.includes(question.name) && all.slice(0, i).every(({ overtaken }) => overtaken < OVERTAKEN_MOST);
    const next = all.find(overtakes) ?? all[0];
    if (next === undefined) return undefined;
    for (const passed of all.slice(0, all.indexOf(next))) passed.overtaken++;
    this.waiting.delete(next.name);
    return next;
  }

  private async answer(question: Question): Promise<void> {
    const { id, name, about } = question;
    const current = (this.current = { question, passedOver: false });
    const moved: object[] = [];
    const turn: Turn = {
      get passedOver() {
        return current.passedOver;
      },
      pause: async () => {
        await messagesIn();
        if (current.passedOver) throw new PassedOver();
      },
      move: (...things) => void moved.push(...things),
    };
    try {
      const answerer = Object.hasOwn(this.answerers, name) ? this.answerers[name] : undefined;
      if (answerer === undefined) throw new RangeError(`this desk answers no "${name}"`);
      const value = await answerer(about, turn);
      this.reply({ reply: 'answer', id, value }, moved);
    } catch (thrown) {
      this.reply(
        thrown instanceof PassedOver
          ? { reply: 'passed over', id }
          : { reply: 'failure', id, failure: failureOf(thrown) },
      );
    }
    this.current = undefined;
  }

  private reply(reply: Reply, moved: readonly object[] = []): void {
    this.port.send(reply, moved);
  }
}

/** Resolves after the messages that have already arrived: it goes to the end of their queue and comes back. */
function messagesIn(): Promise<void> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.addEventListener('message', () => {
      port1.close();
      resolve();
    });
    port1.start();
    port2.postMessage(undefined);
  });
}
