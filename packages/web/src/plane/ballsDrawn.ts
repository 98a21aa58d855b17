import { type Units, YARD_M } from '@leeway/engine';
import type { Behind } from '../asks.ts';

/** Balls laid out on a small sheet: carry to the right, left up; both on one scale where that leaves room. */
export interface BallsDrawn {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly middleY: number;
  readonly dots: readonly { readonly x: number; readonly y: number; readonly mishit: boolean }[];
  /** The margin rule in bars of 10 units, every second inked, with figures where there is room. */
  readonly rule: readonly {
    readonly x: number;
    readonly widthPx: number;
    readonly inked: boolean;
    readonly figureX: number;
    readonly figure?: string;
  }[];
}

const WIDTH_PX = 484;
const FRAME_PX = 12;
const MARGIN_PX = 16;
const FOOT_PX = 18;
const LEAST_HALF_PX = 42;
const MOST_HALF_PX = 110;
const FIGURES_PX = 44;
const BAR = 10;

/** A ball whose side was not measured lies on the middle line. */
export function ballsDrawn(balls: Behind['balls'], units: Units): BallsDrawn {
  const barM = BAR * (units === 'yd' ? YARD_M : 1);
  const carries = balls.map((b) => b.carryM);
  const fromBar = Math.floor(Math.min(...carries) / barM);
  const toBar = Math.max(fromBar + 2, Math.ceil(Math.max(...carries) / barM));
  const [left, right] = [FRAME_PX, WIDTH_PX - FRAME_PX];
  const pxPerM = (right - left - 2 * MARGIN_PX) / ((toBar - fromBar) * barM);
  const widestM = Math.max(...balls.map((b) => Math.abs(b.sideM ?? 0)), 0);
  const halfPx = Math.min(MOST_HALF_PX, Math.max(LEAST_HALF_PX, widestM * pxPerM + 8));
  const acrossPxPerM = Math.min(pxPerM, (halfPx - 8) / Math.max(widestM, 1e-9));
  const middleY = FRAME_PX + halfPx;
  const atX = (m: number): number => left + MARGIN_PX + (m - fromBar * barM) * pxPerM;
  const every = Math.ceil(FIGURES_PX / (barM * pxPerM));
  const rule = Array.from({ length: toBar - fromBar + 1 }, (_, i) => {
    const bar = fromBar + i;
    const last = bar === toBar;
    return {
      x: atX(bar * barM),
      widthPx: last ? 0 : barM * pxPerM,
      inked: bar % 2 === 0 && !last,
      figureX: atX(bar * barM),
      ...(bar % every === 0 ? { figure: String(bar * BAR) } : {}),
    };
  });
  return {
    widthPx: WIDTH_PX,
    heightPx: middleY + halfPx + FOOT_PX + FRAME_PX,
    middleY,
    dots: balls.map((b) => ({ x: atX(b.carryM), y: middleY + (b.sideM ?? 0) * acrossPxPerM, mishit: b.mishit })),
    rule,
  };
}
