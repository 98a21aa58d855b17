import { readFileSync } from 'node:fs';
import { planSchema, shotSchema } from '@leeway/contract';
import { DEMO } from '@leeway/demo';
import { describe, expect, test } from 'vitest';
import { COMMON_OPTIONS, parseArguments } from './arguments.ts';
import type { Command } from './command.ts';
import { Usage } from './command.ts';
import { plan } from './plan.ts';
import { shot } from './shot.ts';

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

const files = ['--ground', DEMO.ground, '--player', DEMO.player];
const ground: unknown = JSON.parse(readFileSync(DEMO.ground, 'utf8'));
const HOLE = /"ref":\s*"(\w+)"/.exec(JSON.stringify(ground))?.[1] ?? '';

describe('plan', () => {
  test('writes a caddie’s note: the club and spot, the price, the distances, the chances, how sure', async () => {
    const { code, out } = await run(plan, ...files, '--hole', HOLE);
    expect(code).toBe(0);
    const order = ['Tee shot', 'Spot', 'strokes', 'Carries', 'Of 100 balls', 'Room', 'How sure', 'Nobody in range'];
    const places = order.map((word) => out.indexOf(word));
    expect(places.every((at) => at >= 0)).toBe(true);
    expect(places).toEqual(places.toSorted((a, b) => a - b));
    expect(out).toMatch(/\d yd/);
    expect(out).not.toMatch(/NaN|undefined|Infinity|null/);
  });

  test('gives one JSON document of its schema, the same bytes each time, no clock in it', async () => {
    const first = await run(plan, ...files, '--hole', HOLE, '--json', '--seed', '3');
    const again = await run(plan, ...files, '--hole', HOLE, '--json', '--seed', '3');
    expect(first.code).toBe(0);
    expect(again.out).toBe(first.out);
    const document = planSchema.parse(JSON.parse(first.out));
    expect(document.holes.map((h) => h.hole)).toEqual([HOLE]);
    expect(first.out).not.toContain('milliseconds');
    for (const s of document.holes.flatMap((h) => h.shots)) {
      expect(Object.values(s.chances).reduce((a, b) => a + b)).toBeCloseTo(1, 5);
    }
  });

  test('tells how long the solver took when asked', async () => {
    const { out } = await run(plan, ...files, '--hole', HOLE, '--json', '--timings');
    expect(planSchema.parse(JSON.parse(out)).holes[0]?.solver.milliseconds).toBeGreaterThan(0);
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
    const given = more.includes('--player') ? ['--ground', DEMO.ground, ...more] : [...files, ...more];
    const { code, out, err } = await run(plan, ...given);
    expect(code).toBe(1);
    expect(out).toBe('');
    const refusals = err.split('\n').filter((line) => says.test(line));
    expect(refusals).toHaveLength(1);
    expect(err).not.toMatch(/at .*\.ts:\d+/);
  });

  test.each([[['--wind', '12@270']], [['--flag', '16,7R']], [['--also', '7i@16,7R']], [['--units', 'furlongs']]])(
    '%j is wrong usage',
    async (more) => {
      await expect(run(plan, ...files, ...more)).rejects.toThrow(Usage);
    },
  );
});

describe('shot', () => {
  const tee = async () => {
    const { out } = await run(plan, ...files, '--hole', HOLE, '--json');
    const [first] = planSchema.parse(JSON.parse(out)).holes[0]?.shots ?? [];
    if (first === undefined) throw new Error('no shot');
    return first;
  };
  const at = (p: { lon: number; lat: number }): string => `${p.lon},${p.lat}`;

  test('from the spot of the tee shot gives the plan’s second shot', async () => {
    const first = await tee();
    const { code, out } = await run(shot, ...files, '--hole', HOLE, '--from', at(first.spot), '--json');
    expect(code).toBe(0);
    const second = shotSchema.parse(JSON.parse(out));
    expect(second.toFlagM).toBeCloseTo(Math.hypot(first.spot.beyondFlagM, first.spot.rightOfFlagM), 2);
  });

  test('a stated lie wins over the map', async () => {
    const first = await tee();
    const from = ['--hole', HOLE, '--from', at(first.spot)];
    const mapped = shotSchema.parse(JSON.parse((await run(shot, ...files, ...from, '--json')).out));
    const stated = shotSchema.parse(JSON.parse((await run(shot, ...files, ...from, '--lie', 'bunker', '--json')).out));
    expect(mapped.lie).not.toBe('bunker');
    expect(stated.lie).toBe('bunker');
    expect(stated.expectedStrokes).toBeGreaterThan(mapped.expectedStrokes);
  });

  test('a place far from the hole, and one on the green, are refused in one line', async () => {
    const far = await run(shot, ...files, '--hole', HOLE, '--from', '0,0');
    expect(far.code).toBe(1);
    expect(far.err.trim().split('\n').at(-1)).toMatch(/--from: found a place .* from hole/);
    const first = await tee();
    const flag = planSchema.parse(JSON.parse((await run(plan, ...files, '--hole', HOLE, '--json')).out)).holes[0]?.flag;
    const green = await run(shot, ...files, '--hole', HOLE, '--from', at(flag ?? first.from));
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
