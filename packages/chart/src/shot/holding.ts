import { offsetOf } from '@leeway/engine';
import { density, HELD, heldLines } from '../above/heldLines.ts';
import type { Mark } from '../marks.ts';
import { keepWhere } from '../plane/line.ts';
import { inRect } from '../plane/quad.ts';
import type { Sheet } from '../sheet.ts';
import { runOf, type ShotMarks } from './shotMarks.ts';

/** The lines that hold 50, 80 and 95 balls in 100 of the pattern's own mixture, on the sheet of its shot. */
export function holdingLines(sheet: Sheet, { choice }: ShotMarks): Mark[] {
  const { priced } = choice.answer;
  const { inner } = sheet;
  const runM = runOf(choice);
  const levels = heldLines(inner, sheet.pxPerM, (p) => {
    const { alongM, acrossM } = offsetOf(sheet.toPlane(p), choice.from.at, priced.bearingRad);
    return density(priced.pattern.parts, alongM - runM, acrossM);
  });
  return levels.map(({ lines }, i): Mark => ({
    kind: 'stroke',
    layer: 'pattern',
    role: 'ink',
    lines: lines.flatMap((l) => keepWhere(l, (q) => inRect(q, inner))),
    closed: false,
    widthPx: HELD[i]?.[1] ?? 1,
  }));
}
