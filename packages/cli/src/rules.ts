import type { RulesInForce } from '@leeway/engine';
import type { Given, OptionSpec } from './command.ts';
import { parseNumber } from './quantities.ts';

/** What is settled about the Rules before a round. */
export const RULES_OPTIONS = {
  e5: {
    kind: 'flag',
    help: 'Model Local Rule E-5 is in force: out of bounds or lost, on from the nearest fairway for two strokes',
  },
  'lost-in-trees': { kind: 'text', value: 'PERCENT', help: 'balls in trees that are never found; 0 unless said' },
  'lost-in-rough': { kind: 'text', value: 'PERCENT', help: 'balls in rough that are never found; 0 unless said' },
} as const satisfies { readonly [name: string]: OptionSpec };

/** The Rules as the options state them. Throws `Usage`. */
export function readRules(given: Given): RulesInForce {
  const share = (name: 'lost-in-trees' | 'lost-in-rough'): number => {
    const text = given.text(name);
    return text === undefined ? 0 : parseNumber(name, text.replace(/%$/, ''), [0, 90]) / 100;
  };
  const lost = { recovery: share('lost-in-trees'), rough: share('lost-in-rough') };
  return { ...(given.flag('e5') ? { e5: true } : {}), ...(lost.recovery + lost.rough > 0 ? { lost } : {}) };
}
