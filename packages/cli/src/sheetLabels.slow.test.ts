import { readPlayer } from '@leeway/contract';
import { DEMO, DEMO_PLAYERS } from '@leeway/demo';
import { planHole, playerModel, solveHole } from '@leeway/engine';
import { readGround } from '@leeway/formats';
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { alike, cutOff, drawPlan, FORMATS, onBlocks, overlaps } from './testdata/sheetChecks.ts';

const holes = readGround(readFileSync(DEMO.ground, 'utf8'), DEMO.ground).value?.holes ?? [];
const thorough = process.env['LEEWAY_THOROUGH'] !== undefined;
const formats = Object.keys(FORMATS) as (keyof typeof FORMATS)[];

test('the demo has its holes', () => {
  expect(holes).toHaveLength(18);
});

describe.each(DEMO_PLAYERS.slice(0, 2))('sheets of $name', ({ player: file }) => {
  const read = readPlayer(readFileSync(file, 'utf8'), file).value;
  // two of the second player's holes, and all of them by `npm run thorough`
  const drawn = holes.filter((_, i) => thorough || file === DEMO_PLAYERS[0]?.player || i % 9 === 0);
  test.each(drawn)(
    'of hole $hole: no label stands on another or on a block, none is cut off, and ground is told without colour',
    (ground) => {
      if (!read) throw new Error(`${file} is not a player`);
      const model = playerModel(read);
      const solution = solveHole(ground, model);
      const plan = planHole(solution, model);
      for (const format of formats) {
        for (const { scene } of drawPlan(solution, plan, format).sheets) {
          const faults = { overlaps, cutOff, onBlocks, alike };
          for (const [fault, found] of Object.entries(faults))
            expect({ fault, found: found(scene) }).toEqual({ fault, found: [] });
        }
      }
    },
  );
});
