import { planSchema, shotSchema } from '@leeway/contract';
import { describe, expect, test } from 'vitest';
import { COMMON_OPTIONS, parseArguments } from './arguments.ts';
import type { Command } from './command.ts';
import { Usage } from './command.ts';
import { plan } from './plan.ts';
import { shot } from './shot.ts';
import { HOLE, planFiles } from './testdata/planFiles.ts';

interface Ran {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}

async function run(command: Command, ...args: string[]): Promise<Ran> {
  let out = '';
  let err = '';
  const io = { out: (text: string) => void (out += text), err: (text: string) => void (err += text) };
  const code = await command.run(parseArguments(args, { ...command.options, ...COMMON_OPTIONS }), io);
  return { code, out, err };
}

const made = planFiles();
const files = ['--ground', made.ground, '--player', made.player];

/** The plan that several tests look at. */
const planned = run(plan, ...files, '--hole', HOLE, '--json');

describe('plan', () => {
  test('writes a caddie’s note: the club and spot, the price, the distances, the chances, how sure', async () => {
    const { code, out } = await run(plan, ...files, '--hole', HOLE);
    expect(code).toBe(0);
    const order = ['Tee shot', 'Spot', 'Carries', 'Of 100 balls', 'Room', 'How sure', 'Nobody in range'];
    const places = order.map((word) => out.indexOf(word));
    expect(places.every((at) => at >= 0)).toBe(true);
    expect(places).toEqual(places.toSorted((a, b) => a - b));
    expect(out).toMatch(/\d yd/);
    expect(out).not.toMatch(/NaN|undefined|Infinity|null/);
  });

  test('gives one JSON document of its schema, the same bytes each time, a clock in it only when asked', async () => {
    const first = await planned;
    const again = await run(plan, ...files, '--hole', HOLE, '--json', '--seed', '3', '--timings');
    expect(first.code).toBe(0);
    expect(first.out).not.toContain('milliseconds');
    expect(again.out.replace(/,"milliseconds":[\d.]+/, '')).toBe(first.out);
    const document = planSchema.parse(JSON.parse(first.out));
    expect(document.holes.map((h) => h.hole)).toEqual([HOLE]);
    for (const s of document.holes.flatMap((h) => h.shots)) {
      expect(Object.values(s.chances).reduce((a, b) => a + b)).toBeCloseTo(1, 5);
    }
    expect(planSchema.parse(JSON.parse(again.out)).holes[0]?.solver.milliseconds).toBeGreaterThan(0);
  });

  test('prices a named stroke beside the answer', async () => {
    const { out } = await run(plan, ...files, '--hole', HOLE, '--also', '7-iron@10,8R', '--json');
    const [tee] = planSchema.parse(JSON.parse(out)).holes[0]?.shots ?? [];
    expect(tee?.named).toHaveLength(1);
    expect(tee?.named?.[0]?.expectedStrokes).toBeGreaterThanOrEqual(tee?.expectedStrokes ?? 0);
  });

  test.each([
    [['--hole', '99'], /99/],
    [['--hole', HOLE, '--also', 'spade@10,8R'], /spade/],
    [['--hole', HOLE, '--flag', '90,7R'], /90|paces|green/],
    [['--hole', HOLE, '--player', '/nowhere/nobody.json'], /nobody\.json/],
  ])('%j is refused in one line', async (more, says) => {
    const given = more.includes('--player') ? ['--ground', made.ground, ...more] : [...files, ...more];
    const { code, out, err } = await run(plan, ...given);
    expect(code).toBe(1);
    expect(out).toBe('');
    const refusals = err.split('\n').filter((line) => says.test(line));
    expect(refusals).toHaveLength(1);
    expect(err).not.toMatch(/at .*\.ts:\d+/);
  });

  test.each([[['--wind', '12']], [['--flag', '16,7R']], [['--also', '7i@16,7R']], [['--units', 'furlongs']]])(
    '%j is wrong usage',
    async (more) => {
      await expect(run(plan, ...files, ...more)).rejects.toThrow(Usage);
    },
  );
});

describe('shot', () => {
  const hole = async () => {
    const [first] = planSchema.parse(JSON.parse((await planned).out)).holes;
    if (first === undefined) throw new Error('no hole');
    return first;
  };
  const at = (p: { lon: number; lat: number }): string => `${p.lon},${p.lat}`;

  test('from the spot of the tee shot gives the plan’s second shot; a stated lie wins over the map', async () => {
    const [first, second] = (await hole()).shots;
    if (first === undefined || second === undefined) throw new Error('too few shots');
    const from = ['--hole', HOLE, '--from', at(first.spot), '--json'];
    const mapped = shotSchema.parse(JSON.parse((await run(shot, ...files, ...from)).out));
    const stated = shotSchema.parse(JSON.parse((await run(shot, ...files, ...from, '--lie', 'rough')).out));
    expect(mapped.lie).toBe(second.lie);
    expect(mapped.option).toEqual(second.option);
    expect(mapped.expectedStrokes).toBeCloseTo(second.expectedStrokes, 3);
    expect(stated.lie).toBe('rough');
    expect(stated.expectedStrokes).toBeGreaterThan(mapped.expectedStrokes);
  });

  test('a place far from the hole, and one on the green, are refused in one line', async () => {
    const far = await run(shot, ...files, '--hole', HOLE, '--from', '0,0');
    expect(far.code).toBe(1);
    expect(far.err.trim().split('\n').at(-1)).toMatch(/--from: found a place .* from hole/);
    const green = await run(shot, ...files, '--hole', HOLE, '--from', at((await hole()).flag));
    expect(green.code).toBe(1);
    expect(green.err).toMatch(/mapped as green/);
  });

  test.each([[[]], [['--from', '1,2,3']], [['--from', '-3.1,54.2', '--lie', 'gravel']]])(
    '%j is wrong usage',
    async (more) => {
      await expect(run(shot, ...files, '--hole', HOLE, ...more)).rejects.toThrow(Usage);
    },
  );
});
