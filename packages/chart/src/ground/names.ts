import { boxOf } from '@leeway/engine';
import type { Labels } from '../labels.ts';
import type { Mark, Text, Xy } from '../marks.ts';
import { inRect } from '../plane/quad.ts';
import type { Sheet } from '../sheet.ts';
import { italic } from '../text/fonts.ts';
import { boxOfText, widthPx } from '../text/measure.ts';
import type { Cover } from './cover.ts';

const SIZES_PX = [19, 16, 13.5, 12];
const TRACKING = 0.12;
const TURNS = [0, -15, 15, -30, 30, -45, 45, -58, 58].map((deg) => (deg * Math.PI) / 180);
const STEP_PX = 11;

/** Names of water and ground, written inside them where they fit: as large and as level as may be, away from the edges. Each name once. */
export function areaNames(sheet: Sheet, cover: Cover, labels: Labels): Mark[] {
  const found: Text[] = [];
  const named = new Set<string>();
  for (const [index, { name }] of cover.areas.entries()) {
    if (name === undefined || named.has(name)) continue;
    for (const size of SIZES_PX) {
      const text = bestPlace(name, size, index, { sheet, cover, labels });
      if (!text) continue;
      labels.place([text]);
      named.add(name);
      found.push(text);
      break;
    }
  }
  return found;
}

interface Where {
  readonly sheet: Sheet;
  readonly cover: Cover;
  readonly labels: Labels;
}

function bestPlace(name: string, sizePx: number, index: number, where: Where): Text | undefined {
  const { sheet, cover, labels } = where;
  const outer = cover.areas[index]?.polygon.outer.map((p) => sheet.toPaper(p)) ?? [];
  const box = boxOf(outer.map((q) => ({ eastM: q.x, northM: q.y })));
  const font = italic(sizePx, TRACKING * sizePx);
  const width = widthPx(name, font);
  let best: { readonly text: Text; readonly cost: number } | undefined;
  for (let y = Math.max(box.southM, sheet.inner.top); y <= Math.min(box.northM, sheet.inner.bottom); y += STEP_PX) {
    for (let x = Math.max(box.westM, sheet.inner.left); x <= Math.min(box.eastM, sheet.inner.right); x += STEP_PX) {
      if (!isOn({ x, y }, index, where)) continue;
      for (const turnRad of TURNS) {
        const foot = 0.3 * sizePx;
        const text: Text = {
          kind: 'text',
          layer: 'names',
          role: 'ink',
          text: name,
          font,
          at: { x: x - Math.sin(turnRad) * foot, y: y + Math.cos(turnRad) * foot },
          anchor: 'middle',
          turnRad,
          haloPx: 0,
        };
        if (!fits(text, width, index, where) || !labels.isFree(boxOfText(text))) continue;
        const cost = Math.abs(turnRad) * 40 - clearance(text, width, index, where);
        if (best === undefined || cost < best.cost) best = { text, cost };
      }
    }
  }
  return best?.text;
}

const isOn = (q: Xy, index: number, { sheet, cover }: Where): boolean =>
  inRect(q, sheet.inner) && cover.topAt(q) === index && cover.isCharted(q);

/** The area lies under the whole of a text, and a little beyond. */
const fits = (text: Text, width: number, index: number, where: Where): boolean =>
  around(text, width, 2).every((q) => isOn(q, index, where));

/** How much farther the area reaches on all sides of a text, in steps. */
function clearance(text: Text, width: number, index: number, where: Where): number {
  for (const px of [5, 9, 14, 20, 28]) {
    if (!around(text, width, px).every((q) => isOn(q, index, where))) return px;
  }
  return 36;
}

function around(text: Text, width: number, rim: number): Xy[] {
  const [sin, cos] = [Math.sin(text.turnRad), Math.cos(text.turnRad)];
  const { sizePx } = text.font;
  return [-0.5, -0.25, 0, 0.25, 0.5].flatMap((share) =>
    [-0.76 * sizePx - rim, 0.24 * sizePx + rim].map((y) => {
      const x = share * (width + 2 * rim);
      return { x: text.at.x + x * cos - y * sin, y: text.at.y + x * sin + y * cos };
    }),
  );
}
