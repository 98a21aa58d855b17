import type { Shelf } from '@leeway/contract';
import type { PlanePoint } from '@leeway/engine';
import type { HoleAnswer, Picture, PlanDesk } from '../asks.ts';
import type { Clock } from '../state/clock.ts';
import { shotOf } from './shot.ts';

const at = (eastM: number, northM: number): PlanePoint => ({ eastM, northM });

/** A desk that answers when it is told to, and remembers what it was asked. */
export class SlowDesk implements PlanDesk {
  readonly asked: { readonly what: keyof PlanDesk; readonly ask: unknown; answer(value: unknown): Promise<void>; fail(line: string): Promise<void> }[] = [];

  private put<Answer>(what: keyof PlanDesk, ask: unknown): Promise<Answer> {
    return new Promise((resolve, reject) => {
      const turn = async (): Promise<void> => {
        for (let i = 0; i < 6; i++) await Promise.resolve();
      };
      this.asked.push({
        what,
        ask,
        answer: (value) => (resolve(value as Answer), turn()),
        fail: (line) => (reject(new Error(line)), turn()),
      });
    });
  }

  readonly open: PlanDesk['open'] = (ask) => this.put('open', ask);
  readonly moveFlag: PlanDesk['moveFlag'] = (ask) => this.put('moveFlag', ask);
  readonly spot: PlanDesk['spot'] = (ask) => this.put('spot', ask);
  readonly options: PlanDesk['options'] = (ask) => this.put('options', ask);
  readonly scores: PlanDesk['scores'] = (ask) => this.put('scores', ask);
  readonly keep: PlanDesk['keep'] = (ask) => this.put('keep', ask);
  readonly draw: PlanDesk['draw'] = (ask) => this.put('draw', ask);
  readonly foresee: PlanDesk['foresee'] = () => Promise.resolve(true);
  readonly drawIndex: PlanDesk['drawIndex'] = (ask) => this.put('drawIndex', ask);
  readonly behind: PlanDesk['behind'] = (ask) => this.put('behind', ask);

  /** What was asked of one kind, in order. */
  of(what: keyof PlanDesk): SlowDesk['asked'] {
    return this.asked.filter((one) => one.what === what);
  }
}

/** Time that passes when a test says so. */
export class HandClock implements Clock {
  private frames: (() => void)[] = [];
  private timers: { readonly act: () => void; readonly atMs: number }[] = [];
  private nowMs = 0;

  frame(then: () => void): void {
    this.frames.push(then);
  }

  after(ms: number, then: () => void): () => void {
    const timer = { act: then, atMs: this.nowMs + ms };
    this.timers.push(timer);
    return () => (this.timers = this.timers.filter((one) => one !== timer));
  }

  paint(): void {
    const due = this.frames;
    this.frames = [];
    for (const then of due) then();
  }

  pass(ms: number): void {
    this.nowMs += ms;
    const due = this.timers.filter(({ atMs }) => atMs <= this.nowMs);
    this.timers = this.timers.filter(({ atMs }) => atMs > this.nowMs);
    for (const { act } of due) act();
  }
}

const HOLES = [
  { hole: '1', par: 4, url: '/1' },
  { hole: '2', name: 'Gap', par: 3, url: '/2' },
];

export const SHELF: Shelf = {
  grounds: [{ id: 'g', course: 'Made Up', prepared: [],
  holes: HOLES }],
  players: [
    { id: 'p', name: 'Pat', url: '/p', ballUrls: [] },
    { id: 'q', name: 'Quin', url: '/q', ballUrls: [] },
  ],
  opening: { ground: 'g', hole: '1', player: 'p' },
};

/** A hole of two shots straight north to a square green round 0, 300; the first shot does not go for the flag. */
export function holeAnswer(flag = at(0, 300)): HoleAnswer {
  const shot = shotOf();
  const { atFlag: _, ...tee } = { ...shot, lie: 'tee' as const, toFlagM: 300 };
  return {
    plan: {
      hole: '1',
      par: 4,
      lengthM: 300,
      flag: { lon: 0, lat: 0, from: 'pin' },
      expectedStrokes: 4.2,
      doubt: shot.doubt,
      solver: { states: 1, options: 1, sweeps: 1, residual: 0, converged: true },
      shots: [tee, shot],
    },
    flag,
    green: [{ outer: [at(-10, 290), at(10, 290), at(10, 310), at(-10, 310)], inner: [] }],
    shots: [
      { ball: at(0, 0), spot: at(5, 180) },
      { ball: at(5, 180), spot: at(-2, 298) },
    ],
  };
}

export const pictureOf = (): Picture => ({
  bitmap: { width: 1, height: 1, close: () => undefined },
  placing: { origin: { x: 200, y: 400 }, pxPerM: 1, upRad: 0 },
  title: 'A hole',
  description: 'Told in words.',
});
