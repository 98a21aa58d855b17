import { flySchema } from '@leeway/contract';
import { describe, expect, test } from 'vitest';
import { main } from './main.ts';

async function run(...args: readonly string[]): Promise<{ code: number; out: string; err: string }> {
  let [out, err] = ['', ''];
  const code = await main(['fly', ...args], { out: (text) => void (out += text), err: (text) => void (err += text) });
  return { code, out, err };
}

const DRIVE = ['--units', 'm', '--speed', '70', '--launch', '12', '--spin', '2600', '--temperature', '15'];
const IRON = ['--units', 'm', '--speed', '52', '--launch', '17', '--spin', '6000'];

async function flown(...args: readonly string[]) {
  const { code, out, err } = await run(...args, '--json');
  expect({ code, err }).toEqual({ code: 0, err: '' });
  return flySchema.parse(JSON.parse(out));
}

describe('fly', () => {
  test('tells in words where the ball lands, how, and what was assumed', async () => {
    const { code, out } = await run(...DRIVE, '--axis', '5');
    expect(code).toBe(0);
    expect(out).toMatch(/^Carries 2\d\d\.\d m, \d+\.\d m right\.\n/);
    expect(out).toMatch(/Apex 2\d\.\d m at 14\d\.\d m; 6\.\d s in the air\./);
    expect(out).toMatch(/Runs 1\d\.\d m on fairway, .*Assumed: a fairway, normal firmness\.\n$/);
    expect(out).not.toMatch(/NaN|undefined/);
  });

  test('gives one document of its schema, the same bytes each time', async () => {
    const first = await run(...DRIVE, '--json');
    expect((await run(...DRIVE, '--json')).out).toBe(first.out);
    const d = flySchema.parse(JSON.parse(first.out));
    expect(d.carryM).toBeCloseTo(230.94, 2);
    expect(d.apexM).toBeCloseTo(28.75, 2);
    expect(d.apexAtM).toBeCloseTo(148.67, 2);
    expect(d.timeS).toBeCloseTo(6.455, 3);
    expect(d.descentDeg).toBeCloseTo(37.71, 2);
    expect(d.landingSpeedMps).toBeCloseTo(28.8, 2);
    expect(Math.round(d.landingSpinRpm)).toBe(2067);
    expect(Object.is(d.sideM, 0)).toBe(true);
    expect(d.assumed).toEqual(['surface', 'firmness']);
  });

  test('the wind is where it blows from, against the bearing of the target line', async () => {
    const head = await flown(...IRON, '--temperature', '25', '--wind', '5@90', '--bearing', '90');
    const tail = await flown(...IRON, '--temperature', '25', '--wind', '5mps@270', '--bearing', '90');
    const left = await flown(...IRON, '--temperature', '25', '--wind', '5@0', '--bearing', '90');
    expect(head.carryM).toBeCloseTo(127.81, 1);
    expect(tail.carryM).toBeCloseTo(156.4, 1);
    expect(left.sideM).toBeGreaterThan(10);
  });

  test('a bare figure is in the units; a suffix wins; a felt wind at 2 m counts for more', async () => {
    const struck = ['--launch', '17', '--spin', '6000'];
    const bare = await flown(...struck, '--speed', '120', '--wind', '10@0', '--temperature', '59');
    const said = await flown(...struck, '--speed', '53.6448mps', '--wind', '4.4704mps@0', '--temperature', '15C');
    expect(said.carryM).toBe(bare.carryM);
    const forecast = ['--speed', '120', '--wind', '10@0', '--temperature', '59'];
    const felt = await flown(...struck, ...forecast, '--wind-height', '2');
    expect(felt.carryM).toBeLessThan(bare.carryM - 5);
  });

  test('pressure as reported and as measured, altitude and humidity make the air', async () => {
    const up = await flown(...IRON, '--altitude', '1000');
    expect(up.day.pressureHpa).toBeCloseTo(898.75, 1);
    const measured = await flown(...IRON, '--altitude', '1000', '--station-pressure', '898.7457');
    expect(measured.carryM).toBeCloseTo(up.carryM, 2);
    const low = await flown(...IRON, '--pressure', '993.25');
    const reference = await flown(...IRON);
    expect(reference.day.densityKgM3).toBeCloseTo(1.1993, 4);
    expect(low.carryM).toBeGreaterThan(reference.carryM);
    expect((await flown(...IRON, '--humidity', '100')).carryM).toBeGreaterThan(reference.carryM);
  });

  test('height of the target, direction, tilt and surface', async () => {
    const g = ['--units', 'm', '--speed', '46', '--launch', '21', '--spin', '7500', '--temperature', '15'];
    expect((await flown(...g, '--target-height', '10')).carryM).toBeCloseTo(106.71, 2);
    expect((await flown(...g, '--target-height', '-10')).carryM).toBeCloseTo(123.99, 2);
    const turned = await flown(...g, '--azimuth=-3');
    expect(turned.sideM).toBeLessThan(-5);
    expect((await flown(...g, '--axis', '-4')).sideM).toBeLessThan(-3);
    const sand = await flown(...g, '--surface', 'bunker');
    expect(sand).toMatchObject({ runM: 0, surface: 'bunker' });
    const soft = await flown(...DRIVE, '--surface', 'green', '--firmness', 'soft', '--green-speed', '9');
    const firm = await flown(...DRIVE, '--surface', 'green', '--firmness', 'firm', '--green-speed', '9');
    expect(soft.runM).toBeLessThan(firm.runM);
    expect(firm.assumed).toEqual([]);
    expect((await flown(...DRIVE, '--wet')).runM).toBeLessThan((await flown(...DRIVE)).runM);
  });
});

describe('what cannot be is refused by name', () => {
  test.each([
    [['--speed', '-5'], '--speed: found -5; expected 1 to 120 m/s [impossible]\n'],
    [['--launch', '95'], '--launch: found 95; expected 0.1 to 89 degrees [impossible]\n'],
    [['--spin', '-100'], '--spin: found -100; expected 0 to 15000 turns a minute [impossible]\n'],
    [['--wind', '300kmh@20'], '--wind: found 300kmh; expected 0 to 40 m/s [impossible]\n'],
    [['--humidity', '140'], '--humidity: found 140; expected 0 to 100 % [impossible]\n'],
    [['--temperature', '400C'], '--temperature: found 400C; expected -30 to 50 °C [impossible]\n'],
    [['--pressure', '101325'], '--pressure: found 101325; expected 870 to 1090 hPa [impossible]\n'],
    [['--roughness', '0'], '--roughness: found 0; expected 0.0001 to 2 m [impossible]\n'],
  ])('%j', async (given, said) => {
    const others = ['--speed', '60', '--launch', '12', '--spin', '3000'];
    const kept = others.flatMap((word, i) => (i % 2 === 0 && word !== given[0] ? [word, others[i + 1] ?? ''] : []));
    expect(await run('--units', 'm', ...kept, ...given)).toEqual({ code: 1, out: '', err: said });
  });

  test('several at once, one line each', async () => {
    const { code, err } = await run('--speed', '-5', '--launch', '12', '--spin', '90000', '--wind', '99mps@0');
    expect(code).toBe(1);
    expect(err.split('\n').map((line) => line.split(':')[0])).toEqual(['--speed', '--spin', '--wind', '']);
  });

  test('ground that the ball does not rise to', async () => {
    const { code, err } = await run(...DRIVE, '--target-height', '60');
    expect({ code, err }).toEqual({
      code: 1,
      err: '--target-height: found a ball that rises 28.8 m; expected one that comes down on ground 60.0 m up [never-there]\n',
    });
  });

  test.each([
    [['--speed', 'NaN', '--launch', '12', '--spin', '3000'], /--speed: found "NaN"; expected a speed/],
    [['--speed', '60', '--launch', '12'], /--spin is needed/],
    [[...DRIVE, '--wind', '12'], /--wind: found "12"; expected SPEED@FROM/],
    [[...DRIVE, '--pressure', '1000', '--station-pressure', '990'], /two ways to say one thing/],
    [[...DRIVE, '--surface', 'lava'], /--surface: found "lava"; expected one of rough/],
    [[...DRIVE, '--firmness', 'hard'], /--firmness: found "hard"; expected one of soft, normal, firm/],
    [[...DRIVE, '--wind', '5@0', '--gusts', '3'], /--gusts: expected at least/],
  ])('wrong usage: %j', async (args, said) => {
    const { code, err } = await run(...args);
    expect(code).toBe(2);
    expect(err).toMatch(said);
    expect(err.trim().split('\n')).toHaveLength(1);
  });
});
