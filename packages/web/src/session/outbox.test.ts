import { describe, expect, it } from 'vitest';
import { Refused } from '../shell/api.ts';
import { Outbox, type Shelf } from './outbox.ts';

/** Keeps as a browser's storage does, its keys in no order that counts. */
function shelfOf(kept = new Map<string, string>()): Shelf {
  return {
    get length() {
      return kept.size;
    },
    key: (i) => [...kept.keys()].toReversed()[i] ?? null,
    getItem: (key) => kept.get(key) ?? null,
    setItem: (key, value) => void kept.set(key, value),
    removeItem: (key) => void kept.delete(key),
  };
}

/** A server that keeps each id once, and a line to it that can be cut before or after it has kept. */
function line() {
  const kept: string[] = [];
  const state = { cut: '' as '' | 'before' | 'after', asked: 0 };
  const send = (path: string, records: readonly object[]): Promise<void> => {
    state.asked++;
    if (state.cut === 'before') return Promise.reject(new TypeError('no line'));
    for (const record of records) {
      const name = `${path} ${(record as { id: string }).id}`;
      if (!kept.includes(name)) kept.push(name);
    }
    return state.cut === 'after' ? Promise.reject(new TypeError('no line')) : Promise.resolve();
  };
  return { kept, state, send };
}

const ball = (id: number): object => ({ id: `ball ${id}` });

describe('what the server has yet to keep', () => {
  it('goes in the order it was made in, what belongs together at once', async () => {
    const { kept, state, send } = line();
    const outbox = new Outbox(shelfOf(), send);
    outbox.add('sessions', { id: 'a' });
    for (let i = 0; i < 3; i++) outbox.add('shots', ball(i));
    outbox.add('withdrawals', { id: 'b' });
    outbox.add('shots', ball(3));
    expect(await outbox.flush()).toBe(true);
    expect(kept).toEqual([
      'sessions a',
      'shots ball 0',
      'shots ball 1',
      'shots ball 2',
      'withdrawals b',
      'shots ball 3',
    ]);
    expect(state.asked).toBe(4);
    expect(outbox.waiting.value).toBe(0);
  });

  it('outlives a lost line and a closed page, and is kept once though it was sent twice', async () => {
    const { kept, state, send } = line();
    const browser = new Map<string, string>();
    const before = new Outbox(shelfOf(browser), send);
    state.cut = 'after';
    before.add('shots', ball(0));
    expect(await before.flush()).toBe(false);
    state.cut = 'before';
    before.add('shots', ball(1));
    expect(await before.flush()).toBe(false);
    expect(before.waiting.value).toBe(2);

    const later = new Outbox(shelfOf(browser), send);
    expect(later.waiting.value).toBe(2);
    state.cut = '';
    expect(await later.flush()).toBe(true);
    expect(kept).toEqual(['shots ball 0', 'shots ball 1']);
    expect(browser.size).toBe(0);
  });

  it('is not dropped when the server refuses it, and says why', async () => {
    const fault = {
      code: 'record',
      level: 'refused',
      file: 'request',
      found: 'a carry of 900',
      expected: '0 to 500',
    } as const;
    const outbox = new Outbox(shelfOf(), () => Promise.reject(new Refused(422, [fault])));
    outbox.add('shots', ball(0));
    expect(await outbox.flush()).toBe(false);
    expect(outbox.refused.value).toBe('found a carry of 900, expected 0 to 500');
    expect(outbox.waiting.value).toBe(1);
  });

  it('is held while the page is open when the browser writes nothing down', async () => {
    const full: Shelf = {
      ...shelfOf(),
      setItem: () => {
        throw new Error('full');
      },
    };
    const { kept, send } = line();
    const outbox = new Outbox(full, send);
    outbox.add('shots', ball(0));
    expect(outbox.written.value).toBe(false);
    expect(outbox.waiting.value).toBe(1);
    expect(await outbox.flush()).toBe(true);
    expect(kept).toEqual(['shots ball 0']);
  });
});
