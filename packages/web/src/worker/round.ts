/** A worker of the round page: the engine, away from the thread that the page lives on. */
import { answerAt, scopePort } from '@leeway/desk';
import type { RoundDesk } from '../round/asks.ts';
import { fetchJson } from './fetched.ts';
import { roundHole } from './roundHole.ts';

const scope = self as unknown as DedicatedWorkerGlobalScope;
const known = new Map<string, Promise<unknown>>();

/** The player's file is the same for all holes. */
const fetchOnce = (url: string): Promise<unknown> => {
  const there = known.get(url) ?? fetchJson(url);
  known.set(url, there);
  return there;
};

answerAt<RoundDesk>(scopePort(scope), { hole: (ask, turn) => roundHole(ask, fetchOnce, turn) });
