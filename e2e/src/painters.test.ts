import type { Mark, Role, Scene } from '@leeway/chart';
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

const SHEETS = [
  'the specimen',
  'the sheet of hole 7',
  'the last shot of hole 7',
  'the sheet of hole 12',
  'the last shot of hole 12',
] as const;
type SheetName = (typeof SHEETS)[number];

/** Solved once, when the first test wants them: the file is read for its names by every run. */
let solved: { readonly [N in SheetName]?: Scene } = {};
let studio: Studio;
test.beforeAll(async ({ browser }) => {
  const [seventh, twelfth] = [sheetsOf('7'), sheetsOf('12')];
  solved = {
    'the specimen': specimen(),
    'the sheet of hole 7': seventh.hole,
    'the last shot of hole 7': seventh.shot,
    'the sheet of hole 12': twelfth.hole,
    'the last shot of hole 12': twelfth.shot,
  };
  studio = await openStudio(browser, Object.values(solved));
});
test.afterAll(() => studio.close());

function sheet(name: SheetName): Scene {
  const scene = solved[name];
  if (!scene) throw new Error(`no ${name}`);
  return scene;
}

const small = async (painter: Painter, scene: Scene): Promise<PNG> => reduced(await painter(scene, 'paper'), RATIO);

for (const name of SHEETS) {
  test(`${name} looks the same by SVG, canvas and PDF`, async () => {
    const scene = sheet(name);
    const { svg, canvas, pdf } = studio.painters;
    const [bySvg, byCanvas, byPdf] = [await small(svg, scene), await small(canvas, scene), await small(pdf, scene)];
    const differences = [compare(bySvg, byCanvas), compare(bySvg, byPdf), compare(byCanvas, byPdf)];
    test.info().annotations.push({ type: 'differences', description: JSON.stringify(differences) });
    expect(differences.filter((d) => !isWithin(d, TOLERANCE))).toEqual([]);
  });
}

/** Faults planted in the last shot of hole 7: the first mark that answers is left out, or drawn in another role. */
const FAULTS: readonly (readonly [name: string, is: (mark: Mark) => boolean, role?: Role])[] = [
  ['a figure of a contour left out', (m) => m.kind === 'text' && m.layer === 'contours'],
  ['the dots of a sand left out', (m) => m.kind === 'dots' && m.layer === 'sand'],
  ['the rough dots left out', (m) => m.kind === 'dots' && m.role === 'stipple' && m.at.length > 1000],
  ['water in the tint of the green', (m) => m.role === 'sea', 'green'],
  ['a sand in the tint of the rough', (m) => m.role === 'sand', 'rough'],
  ['the spot in ink', (m) => m.kind === 'stroke' && m.role === 'buoy' && m.layer === 'signs', 'ink'],
];

function planted(scene: Scene, [name, is, role]: (typeof FAULTS)[number]): Scene {
  const index = scene.marks.findIndex(is);
  const mark = scene.marks[index];
  if (!mark) throw new Error(`no mark on the sheet for ${name}`);
  return { ...scene, marks: scene.marks.toSpliced(index, 1, ...(role ? [{ ...mark, role }] : [])) };
}

let right: PNG | undefined;
for (const fault of FAULTS) {
  test(`tells ${fault[0]} from agreement, whichever painter does it`, async () => {
    const scene = sheet('the last shot of hole 7');
    const { svg, canvas, pdf } = studio.painters;
    right ??= await small(svg, scene);
    for (const painter of [canvas, pdf]) {
      const difference = compare(right, await small(painter, planted(scene, fault)));
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
