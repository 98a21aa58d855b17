import { describe } from 'vitest';
import { answerAt } from './desk.ts';
import { scopePort } from './browser.ts';
import { keepsProtocol } from './testdata/keepsProtocol.ts';
import { type Trial, trial } from './testdata/trial.ts';

describe('over ports of the browser’s shape', () => {
  keepsProtocol(() => {
    const { port1, port2 } = new MessageChannel();
    for (const port of [port1, port2]) port.start();
    answerAt<Trial>(scopePort(port2), trial(), ['urgent']);
    return scopePort(port1);
  });
});
