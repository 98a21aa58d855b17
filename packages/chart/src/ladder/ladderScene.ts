import type { Mark, Scene, Text, Xy } from '../marks.ts';
import { inOrder } from '../marks.ts';
import { italic, sans, serif } from '../text/fonts.ts';
import { widthPx } from '../text/measure.ts';
import { type CarryScale, carryScale } from './carryScale.ts';
import { gapMarks } from './gapMarks.ts';
import { type Ladder, rowsOf, shortName } from './ladder.ts';
import { claimMarks, rowMarks } from './rungMarks.ts';

const WIDTH_PX = 860;
const LEFT_PX = 150;
const RIGHT_PX = WIDTH_PX - 32;
const SIDE_PX = 28;
const TOP_PX = 142;
const ROW_PX = 48;
/** Below the last row: the bar, its figures, the gaps and the key. */
const FOOT_PX = 136;
const BAR_PX = 7;

/**
 * The ladder of carries as a sheet: a row a club, longest first; a box says how sure a carry is, with the balls as dots behind it, mishits as rings, a claim as a
 * diamond; shafts of slant hatches are stretches that no carry reaches. As high as its rows need.
 */
export function ladderScene(ladder: Ladder): Scene {
  const rows = rowsOf(ladder);
  const scale = carryScale(ladder, LEFT_PX, RIGHT_PX);
  const footPx = TOP_PX + ROW_PX * rows.length;
  const marks: Mark[] = [
    ...heading(ladder),
    ...grid(scale, rows.length, footPx),
    ...gapMarks(ladder.gaps, scale, { topPx: TOP_PX, bottomPx: footPx }),
    ...rows.flatMap((row, i) => {
      const y = TOP_PX + ROW_PX * (i + 0.5);
      return [
        words(row.club, { x: SIDE_PX, y: y + 6 }, serif(17)),
        words(`${row.balls}`, { x: LEFT_PX - 12, y: y + 5 }, sans(14), 'end', 'ink-2'),
        ...rowMarks(row, y, scale),
      ];
    }),
    ...key(footPx + 110),
  ];
  const heightPx = footPx + FOOT_PX;
  const paper = { x: 0, y: 0 };
  const sheet = [paper, { x: WIDTH_PX, y: 0 }, { x: WIDTH_PX, y: heightPx }, { x: 0, y: heightPx }];
  return {
    widthPx: WIDTH_PX,
    heightPx,
    placing: { origin: paper, pxPerM: 1, upRad: 0 },
    title: `The ladder of carries of ${ladder.player}`,
    description: described(ladder, scale.unitM),
    marks: inOrder([{ kind: 'fill', layer: 'tint', role: 'paper', rings: [sheet] }, ...marks]),
  };
}

function words(
  text: string,
  at: Xy,
  font: Text['font'],
  anchor: Text['anchor'] = 'start',
  role: Text['role'] = 'ink',
): Text {
  return { kind: 'text', layer: 'names', role, text, font, at, anchor, turnRad: 0, haloPx: 0 };
}

const unitWord = ({ units }: Ladder): string => (units === 'yd' ? 'yards' : 'metres');

const heading = (ladder: Ladder): readonly Mark[] => [
  words('The ladder of carries', { x: SIDE_PX, y: 46 }, serif(30)),
  words(
    `${ladder.player}. Carry in ${unitWord(ladder)}, from level ground on a calm day at 20 °C.`,
    { x: SIDE_PX, y: 75 },
    serif(16),
    'start',
    'ink-2',
  ),
  words('club', { x: SIDE_PX, y: TOP_PX - 16 }, italic(15)),
  words('balls', { x: LEFT_PX - 12, y: TOP_PX - 16 }, sans(13), 'end', 'ink-2'),
];

function grid(scale: CarryScale, rows: number, footPx: number): readonly Mark[] {
  const x = (unit: number): number => scale.x(unit * scale.unitM);
  const hair = (lines: readonly (readonly Xy[])[]): Mark => ({
    kind: 'stroke',
    layer: 'tint',
    role: 'ink-2',
    opacity: 0.35,
    lines,
    closed: false,
    widthPx: 0.6,
  });
  const across = Array.from({ length: rows + 1 }, (_, i) => TOP_PX + ROW_PX * i).map((y) => [
    { x: SIDE_PX, y },
    { x: RIGHT_PX, y },
  ]);
  const down = scale.twenties.map((u) => [
    { x: x(u), y: TOP_PX },
    { x: x(u), y: footPx },
  ]);
  return [
    hair([...across, ...down]),
    ...rule(scale, TOP_PX - BAR_PX - 3, TOP_PX - BAR_PX - 8),
    ...rule(scale, footPx + 3, footPx + BAR_PX + 17),
  ];
}

/** A black and white bar of ten units a piece, and its figures. */
function rule(scale: CarryScale, y: number, figuresY: number): readonly Mark[] {
  const x = (unit: number): number => scale.x(unit * scale.unitM);
  const box = (from: number, to: number): readonly Xy[] => [
    { x: x(from), y },
    { x: x(to), y },
    { x: x(to), y: y + BAR_PX },
    { x: x(from), y: y + BAR_PX },
  ];
  const black = scale.tens.filter((u) => u % 20 === 0 && u < scale.to).map((u) => box(u, Math.min(scale.to, u + 10)));
  return [
    { kind: 'fill', layer: 'frame', role: 'ink', rings: black },
    {
      kind: 'stroke',
      layer: 'frame',
      role: 'ink',
      lines: [box(scale.from, scale.to)],
      closed: true,
      widthPx: 0.8,
    },
    ...scale.twenties.map((u) => words(`${u}`, { x: x(u), y: figuresY }, sans(13, 500), 'middle')),
  ];
}

/** What the marks mean, on one line. */
function key(y: number): readonly Mark[] {
  const font = sans(13.5);
  const marks: Mark[] = [];
  let x = SIDE_PX;
  const entry = (signPx: number, sign: (at: number) => readonly Mark[], text: string): void => {
    marks.push(...sign(x), words(text, { x: x + signPx + 7, y: y + 4.5 }, font, 'start', 'ink-2'));
    x += signPx + 7 + widthPx(text, font) + 24;
  };
  const dots = { kind: 'dots', layer: 'signs', role: 'ink' } as const;
  entry(24, (at) => keyBox(at, y), 'carry, and where it lies four times in five');
  entry(12, (at) => claimMarks(at + 6, y), 'claimed');
  entry(
    22,
    (at) => [{ ...dots, at: [0, 7, 13, 20].map((d, i) => ({ x: at + d, y: y + (i % 2) * 3 - 1 })), radiusPx: 1.1 }],
    'single balls',
  );
  entry(6, (at) => [{ ...dots, at: [{ x: at + 3, y }], radiusPx: 2.2, lineWidthPx: 0.8 }], 'mishits');
  return marks;
}

function keyBox(x: number, y: number): readonly Mark[] {
  const box = [
    { x, y: y - 5.5 },
    { x: x + 24, y: y - 5.5 },
    { x: x + 24, y: y + 5.5 },
    { x, y: y + 5.5 },
  ];
  const mean = [
    { x: x + 12, y: y - 8 },
    { x: x + 12, y: y + 8 },
  ];
  const line = { kind: 'stroke', layer: 'signs', role: 'ink' } as const;
  return [
    { ...line, lines: [box], closed: true, widthPx: 1.3 },
    { ...line, lines: [mean], closed: false, widthPx: 3 },
  ];
}

function described(ladder: Ladder, unitM: number): string {
  const whole = (m: number): string => (m / unitM).toFixed(0);
  const rungs = ladder.rungs
    .toSorted((a, b) => b.carryM - a.carryM)
    .map((r) => `${r.club}${r.full ? '' : ` ${shortName(r)}`} ${whole(r.carryM)}`);
  const gaps = ladder.gaps.map(({ fromM, toM }) => `${whole(fromM)} to ${whole(toM)}`);
  const none = gaps.length === 0 ? 'No gaps.' : `Gaps: ${gaps.join(', ')}.`;
  return `Carries in ${unitWord(ladder)}: ${rungs.join(', ')}. ${none}`;
}
