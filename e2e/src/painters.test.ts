import type { Mark, Scene } from '@leeway/chart';
import { specimen } from '@leeway/chart/specimen';
import { expect, test } from '@playwright/test';
import type { PNG } from 'pngjs';
import { compare, type Difference, isWithin, reduced } from './painters/compare.ts';
import { matchGolden } from './painters/golden.ts';
import { sheetsOf, unsolvedSheet } from './painters/sheets.ts';
import { openStudio, type Painter, RATIO, type Studio } from './painters/studio.ts';

/**
 * How far two painters may be apart, of 255 steps of colour, at one pixel to a px: each places letters to a fraction of a pixel in its own
 * way. Measured: 20, 4.6 and 0.21 at most. A figure of a contour left out makes 55 and more of the first.
 */
const TOLERANCE: Difference = { fine: 40, broad: 6, whole: 0.3 };

const sevenths = sheetsOf('7');
const others = sheetsOf('12');
const SHEETS: readonly (readonly [string, Scene])[] = [
  ['the specimen', specimen()],
  ['the sheet of hole 7', sevenths.hole],
  ['the last shot of hole 7', sevenths.shot],
  ['the sheet of hole 12', others.hole],
  ['the last shot of hole 12', others.shot],
];

let studio: Studio;
test.beforeAll(async ({ browser }) => {
  studio = await openStudio(
    browser,
    SHEETS.map(([, scene]) => scene),
  );
});
test.afterAll(() => studio.close());

const small = async (painter: Painter, scene: Scene): Promise<PNG> => reduced(await painter(scene, 'paper'), RATIO);

for (const [name, scene] of SHEETS) {
  test(`${name} looks the same by SVG, canvas and PDF`, async () => {
    const { svg, canvas, pdf } = studio.painters;
    const [bySvg, byCanvas, byPdf] = [await small(svg, scene), await small(canvas, scene), await small(pdf, scene)];
    const differences = [compare(bySvg, byCanvas), compare(bySvg, byPdf), compare(byCanvas, byPdf)];
    test.info().annotations.push({ type: 'differences', description: JSON.stringify(differences) });
    expect(differences.filter((d) => !isWithin(d, TOLERANCE))).toEqual([]);
  });
}

/** A scene with the first mark that answers changed. */
function planted(scene: Scene, is: (mark: Mark) => boolean, change: (mark: Mark) => readonly Mark[]): Scene {
  const index = scene.marks.findIndex(is);
  const mark = scene.marks[index];
  if (!mark) throw new Error('the sheet has no such mark');
  return { ...scene, marks: scene.marks.toSpliced(index, 1, ...change(mark)) };
}

const FAULTS: readonly (readonly [string, Scene])[] = [
  [
    'a figure of a contour left out',
    planted(
      sevenths.shot,
      (m) => m.kind === 'text' && m.layer === 'contours',
      () => [],
    ),
  ],
  [
    'the dots of a sand left out',
    planted(
      sevenths.shot,
      (m) => m.kind === 'dots' && m.layer === 'sand',
      () => [],
    ),
  ],
  [
    'the rough dots left out',
    planted(
      sevenths.shot,
      (m) => m.kind === 'dots' && m.role === 'stipple' && m.at.length > 1000,
      () => [],
    ),
  ],
  [
    'water in the tint of the green',
    planted(
      sevenths.shot,
      (m) => m.role === 'sea',
      (m) => [{ ...m, role: 'green' }],
    ),
  ],
  [
    'a sand in the tint of the rough',
    planted(
      sevenths.shot,
      (m) => m.kind === 'fill' && m.role === 'sand',
      (m) => [{ ...m, role: 'rough' }],
    ),
  ],
  [
    'the spot in ink',
    planted(
      sevenths.shot,
      (m) => m.kind === 'stroke' && m.role === 'buoy' && m.layer === 'signs',
      (m) => [{ ...m, role: 'ink' }],
    ),
  ],
];

let right: PNG | undefined;
for (const [name, faulty] of FAULTS) {
  test(`tells ${name} from agreement, whichever painter does it`, async () => {
    const { svg, canvas, pdf } = studio.painters;
    right ??= await small(svg, sevenths.shot);
    for (const painter of [canvas, pdf]) {
      const difference = compare(right, await small(painter, faulty));
      expect(isWithin(difference, TOLERANCE), JSON.stringify(difference)).toBe(false);
    }
  });
}

/** Pictures that were looked at, made small. `npm run golden` makes them anew, to be looked at again. */
test('the specimen on paper is as it was seen', async () => {
  matchGolden('specimen-paper', reduced(await studio.painters.svg(specimen(), 'paper'), RATIO));
});
test('the specimen in print is as it was seen', async () => {
  matchGolden('specimen-print', reduced(await studio.painters.pdf(specimen(), 'print'), RATIO));
});
test('the ground of hole 7 is as it was seen', async () => {
  matchGolden('ground', reduced(await studio.painters.canvas(unsolvedSheet('7'), 'paper'), 2 * RATIO));
});
