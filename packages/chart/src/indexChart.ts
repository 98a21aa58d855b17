import type { Area, PlanePoint } from '@leeway/engine';
import { bearingRad, distanceToLineM, offsetOf, placeAt } from '@leeway/engine';
import type { Charted } from './charted.ts';
import { indexWords } from './describe.ts';
import type { Line, Mark, Role, Scene, Xy } from './marks.ts';
import { quadOf } from './plane/quad.ts';
import type { Size, Units } from './sheet.ts';
import { sans } from './text/fonts.ts';

const MARGIN_PX = 14;
/** Ground shown round the hole's line, and round what lies near it. */
const BESIDE_M = 40;
const FIGURE_PX = 11.5;
const DOT_PX = 1.8;
const FLAG_PX = 8;

const TINTS: { readonly [S in Area['surface']]: Role } = {
  rough: 'rough',
  recovery: 'scrub',
  fairway: 'sheet',
  green: 'green',
  tee: 'sheet',
  bunker: 'sand',
  penalty: 'sea',
  out: 'paper',
};

/** A small chart of the hole, its flag straight up: ground by its tints alone, the shots numbered where they finish, the shown one in bold. */
export function indexChart(charted: Charted, size: Size, units: Units): Scene {
  const { ground, choices } = charted;
  const { toPaper, ...placing } = placed(charted, size);
  const paper = (points: readonly PlanePoint[]): Line => points.map(toPaper);
  const sheet = quadOf({ left: 0, top: 0, right: size.widthPx, bottom: size.heightPx });
  const marks: Mark[] = [
    { kind: 'fill', layer: 'tint', role: 'rough', rings: [sheet] },
    ...ground.areas.flatMap(({ surface, polygon }): Mark[] => {
      const rings = [polygon.outer, ...polygon.inner].map(paper);
      return [
        { kind: 'fill', layer: 'tint', role: TINTS[surface], rings },
        { kind: 'stroke', layer: 'tint', role: 'ink-2', lines: rings, closed: true, widthPx: 0.4 },
      ];
    }),
    ...choices.flatMap(({ from, answer }, i) =>
      shotMarks(toPaper(from.at), toPaper(answer.spot), i, (charted.shot ?? 0) === i),
    ),
    ...flag(toPaper(ground.flag)),
    { kind: 'stroke', layer: 'frame', role: 'ink', lines: [sheet], closed: true, widthPx: 1.8 },
  ];
  return { ...size, placing, ...indexWords(charted, units), marks };
}

function shotMarks(from: Xy, spot: Xy, index: number, present: boolean): Mark[] {
  const right = spot.x >= from.x ? 1 : -1;
  const at = { x: spot.x + right * 5, y: spot.y + 4 };
  const font = sans(FIGURE_PX, present ? 700 : 400);
  const anchor = right > 0 ? 'start' : 'end';
  const text = { kind: 'text', layer: 'names', role: 'ink', text: `${index + 1}`, font, at, anchor } as const;
  const line = { kind: 'stroke', layer: 'lines', role: 'ink', lines: [[from, spot]], closed: false } as const;
  return [
    { ...line, widthPx: present ? 1.8 : 0.8 },
    { kind: 'dots', layer: 'signs', role: 'ink', at: [spot], radiusPx: DOT_PX },
    { ...text, turnRad: 0, haloPx: 2.4 },
  ];
}

function flag(at: Xy): Mark[] {
  const top = { x: at.x, y: at.y - FLAG_PX };
  const pennant = [top, { x: at.x + 5, y: top.y + 2 }, { x: at.x, y: top.y + 4 }];
  return [
    { kind: 'stroke', layer: 'signs', role: 'ink', lines: [[at, top]], closed: false, widthPx: 1 },
    { kind: 'fill', layer: 'signs', role: 'ink', rings: [pennant] },
  ];
}

/** How the hole lies on so small a sheet. */
function placed(
  { ground, choices }: Charted,
  { widthPx, heightPx }: Size,
): Scene['placing'] & { readonly toPaper: (p: PlanePoint) => Xy } {
  const upRad = bearingRad(ground.ball, ground.flag);
  const origin = { eastM: 0, northM: 0 };
  const near = ground.areas
    .filter(({ surface }) => surface === 'fairway' || surface === 'green' || surface === 'bunker')
    .flatMap(({ polygon }) => polygon.outer)
    .filter((p) => distanceToLineM(p, ground.line) < BESIDE_M);
  const play = choices.flatMap(({ from, answer }) => [from.at, answer.spot]);
  const shown = [...ground.line, ground.ball, ground.flag, ...near, ...play].map((p) => offsetOf(p, origin, upRad));
  const along = shown.map((p) => p.alongM);
  const across = shown.map((p) => p.acrossM);
  const [low, high, left, right] = [Math.min(...along), Math.max(...along), Math.min(...across), Math.max(...across)];
  const pxPerM = Math.min((widthPx - 2 * MARGIN_PX) / (right - left), (heightPx - 2 * MARGIN_PX) / (high - low));
  const middle = placeAt(origin, upRad, (low + high) / 2, (left + right) / 2);
  const toPaper = (p: PlanePoint): Xy => {
    const { alongM, acrossM } = offsetOf(p, middle, upRad);
    return { x: widthPx / 2 + acrossM * pxPerM, y: heightPx / 2 - alongM * pxPerM };
  };
  return { origin: toPaper(origin), pxPerM, upRad, toPaper };
}
