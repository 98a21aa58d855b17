import { mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { COMMON_OPTIONS, parseArguments } from './arguments.ts';
import { chart } from './chart.ts';
import { Usage } from './command.ts';
import { HOLE, planFiles } from './testdata/planFiles.ts';
import { contourErrors, cutOff, drawAll, overlaps } from './testdata/sheetChecks.ts';

const files = planFiles();
const drawn = drawAll(files, HOLE);
let folder = '';
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), 'leeway-chart-'));
});
afterAll(async () => {
  await rm(folder, { recursive: true });
});

async function run(...args: string[]): Promise<{ code: number; out: string; err: string }> {
  let out = '';
  let err = '';
  const io = { out: (text: string) => void (out += text), err: (text: string) => void (err += text) };
  const code = await chart.run(parseArguments(args, { ...chart.options, ...COMMON_OPTIONS }), io);
  return { code, out, err };
}
const ground = ['--ground', files.ground, '--hole', HOLE];
const player = ['--player', files.player];

describe('leeway chart', () => {
  test('without a player draws the ground alone, and tells it in words', async () => {
    const out = join(folder, 'ground.svg');
    const done = await run(...ground, '--out', out);
    expect(done.code).toBe(0);
    expect(done.out).toMatch(/^Chart of Hole 4\nHole 4, par 4, 252 yards\. On it: 1 bunker, Mill Water\.\n$/);
    const svg = await readFile(out, 'utf8');
    expect(svg).toContain('<g class="water">');
    expect(svg).not.toContain('<g class="contours">');
  });

  test('with a player draws the shot asked for, in the units asked for, the same bytes each time', async () => {
    const [one, two] = [join(folder, 'one.svg'), join(folder, 'two.svg')];
    const args = [...ground, ...player, '--shot', '2', '--units', 'm'];
    const done = await run(...args, '--out', one, '--json');
    expect(done.code).toBe(0);
    expect(JSON.parse(done.out)).toMatchObject({ file: one, title: 'Hole 4, shot 2' });
    await run(...args, '--out', two);
    const svg = await readFile(one, 'utf8');
    expect(await readFile(two, 'utf8')).toBe(svg);
    for (const layer of ['contours', 'pattern', 'arms', 'signs']) expect(svg).toContain(`<g class="${layer}">`);
    expect(svg).toContain('>metres</text>');
  });

  test('the rose tells a wind; one that cannot be is refused by name', async () => {
    const windy = join(folder, 'windy.svg');
    expect((await run(...ground, '--wind', '15mph@300', '--out', windy)).code).toBe(0);
    expect(await readFile(windy, 'utf8')).toContain('15 mph');
    const wrong = await run(...ground, '--wind', '300kmh@20', '--out', join(folder, 'wrong.svg'));
    expect(wrong.code).toBe(1);
    expect(wrong.err).toContain('--wind: found 300kmh; expected 0 to 40 m/s');
  });

  test('writes a PDF by its ending, in print unless another light is asked for', async () => {
    const [print, sun] = [join(folder, 'ground.PDF'), join(folder, 'sun.pdf')];
    expect((await run(...ground, '--out', print)).out).toMatch(/^Chart of Hole 4\n/);
    await run(...ground, '--out', sun, '--light', 'sun');
    const bytes = await readFile(print);
    expect(bytes.subarray(0, 5).toString()).toBe('%PDF-');
    expect(bytes.equals(await readFile(sun))).toBe(false);
  });

  test('writes an SVG with its fonts inside, on paper unless another light is asked for', async () => {
    const [paper, print] = [join(folder, 'paper.svg'), join(folder, 'print.svg')];
    await run(...ground, '--out', paper);
    await run(...ground, '--out', print, '--light', 'print');
    const text = await readFile(paper, 'utf8');
    expect(text).toContain(`@font-face{font-family:'Libre Caslon Text'`);
    expect(text).toContain('stroke="#2C6079"');
    expect(await readFile(print, 'utf8')).not.toContain('#2C6079');
  });

  test('leaves an existing file alone unless forced', async () => {
    const out = join(folder, 'kept.svg');
    await writeFile(out, 'mine');
    const refused = await run(...ground, '--out', out);
    expect(refused.code).toBe(1);
    expect(refused.err).toMatch(/--force/);
    expect(await readFile(out, 'utf8')).toBe('mine');
    expect((await run(...ground, '--out', out, '--force')).code).toBe(0);
    expect(await readFile(out, 'utf8')).toMatch(/^<svg/);
  });

  test('refuses a hole or a shot that is not there, naming those that are', async () => {
    const out = join(folder, 'none.svg');
    const hole = await run('--ground', files.ground, '--hole', '11', '--out', out);
    expect([hole.code, hole.err]).toEqual([1, expect.stringMatching(/11.*4/)]);
    const shot = await run(...ground, ...player, '--shot', '9', '--out', out);
    expect([shot.code, shot.err]).toEqual([1, expect.stringMatching(/shot 9 of a plan of \d/)]);
    await expect(readFile(out)).rejects.toThrow(/ENOENT/);
  });

  test('says what a wrong usage lacks', async () => {
    await expect(run('--ground', files.ground, '--out', 'x.svg')).rejects.toThrow(new Usage('--hole is needed'));
    await expect(run(...ground)).rejects.toThrow(new Usage('--out is needed'));
    await expect(run(...ground, '--out', 'x.png')).rejects.toThrow(
      new Usage('--out: found "x.png"; expected a name that ends in .svg or .pdf'),
    );
    await expect(run(...ground, '--out', 'x.svg', '--light', 'dark')).rejects.toThrow(
      new Usage('--light: found "dark"; expected paper, sun or print'),
    );
    await expect(run(...ground, '--shot', '2', '--out', 'x.svg')).rejects.toThrow(Usage);
  });
});

describe('its sheets', () => {
  test('no label stands on another, and none is cut off', () => {
    for (const { scene } of drawn.sheets) {
      expect(overlaps(scene)).toEqual([]);
      expect(cutOff(scene)).toEqual([]);
    }
  });

  test('the contours tell the truth: half of 60 places within 0.02 of the strokes there', () => {
    for (const sheet of drawn.sheets) expect(contourErrors(drawn, sheet, 60)[30]).toBeLessThan(0.02);
  });
});
