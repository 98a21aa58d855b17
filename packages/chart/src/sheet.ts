import type { HoleGround, PlanePoint, Ring } from '@leeway/engine';
import { bearingRad, distanceM, distanceToLineM, placeAt, YARD_M } from '@leeway/engine';
import type { Placing, Xy } from './marks.ts';
import type { Rect } from './plane/quad.ts';
import type { ShotMarks } from './shot/shotMarks.ts';

export type Units = 'yd' | 'm';

export interface Size {
  readonly widthPx: number;
  readonly heightPx: number;
}

/** What a sheet is made for. */
export interface Format {
  readonly size: Size;
  readonly units: Units;
  /** A phone's sheet: cropped to the end of the shot, larger figures, nothing on it that is not needed there. */
  readonly phone: boolean;
}

/** How a piece of ground lies on paper. */
export interface Sheet extends Format {
  readonly kind: 'hole' | 'shot' | 'index';
  /** Metres of one unit. */
  readonly unitM: number;
  /** Inside the frame. */
  readonly inner: Rect;
  readonly pxPerM: number;
  /** The bearing that is straight up. */
  readonly upRad: number;
  readonly ball: PlanePoint;
  readonly placing: Placing;
  readonly toPaper: (p: PlanePoint) => Xy;
  readonly toPlane: (p: Xy) => PlanePoint;
}

/** From the edge of the paper to the ground: frame, bar and neat lines. */
const FRAME_PX = 13;
/** Room kept round what must be on the sheet: left, right, above, below. */
const MARGIN = { sidePx: 46, topPx: 48, bottomPx: 56 };
const NO_MARGIN = { sidePx: 0, topPx: 0, bottomPx: 0 };
const PHONE_MARGIN = { sidePx: 34, topPx: 40, bottomPx: 24 };
/** A hole sheet shows the areas of this many metres round the line. */
const BESIDE_M = 55;
/** No sheet is drawn larger than this. */
const LARGEST_PX_PER_M = 5;
/** Ground shown either side of a shot's end, at least. */
const BESIDE_SHOT_M = 45;
/** An index shows this much ground before the tee and beyond the flag, and beside the line. */
const INDEX_BEYOND_M = 32;
const INDEX_BESIDE_M = 60;
/** On a phone: ground shown round the spot, at least. */
const ROUND_SPOT_M = 26;
/** On a phone a shot longer than this is shown from the ball on. */
const PHONE_WHOLE_SHOT_M = 180;

/** The sheet of a whole hole, tee below, straight up to the flag. */
export function holeSheet(ground: HoleGround, format: Format): Sheet {
  const near = (ring: Ring): PlanePoint[] => ring.filter((p) => distanceToLineM(p, ground.line) < BESIDE_M);
  const shown = ground.areas.flatMap((a) => [...near(a.polygon.outer), ...a.polygon.inner.flatMap(near)]);
  const up = bearingRad(ground.ball, ground.flag);
  return fitted('hole', format, up, ground.ball, [...ground.line, ground.ball, ground.flag, ...shown]);
}

/** The small sheet of an index: the hole as it is charted, without a frame. */
export function indexSheet(ground: HoleGround, size: Size): Sheet {
  const up = bearingRad(ground.ball, ground.flag);
  const ends = [-1, 1].map((side) => placeAt(side < 0 ? ground.ball : ground.flag, up, side * INDEX_BEYOND_M));
  const sides = ground.line.flatMap((p) => [-1, 1].map((side) => placeAt(p, up, 0, side * INDEX_BESIDE_M)));
  return fitted('index', { size, units: 'yd', phone: false }, up, ground.ball, [...ends, ...sides]);
}

/** The sheet of one shot, straight up: to the flag if the shot goes near it, with all of the green, else to the spot. */
export function shotSheet(ground: HoleGround, shot: ShotMarks, format: Format): Sheet {
  const from = shot.choice.from.at;
  const { spot } = shot.choice.answer;
  const toFlag = distanceM(spot, ground.flag) < 0.35 * distanceM(from, ground.flag);
  const end = toFlag ? ground.flag : spot;
  const up = bearingRad(from, end);
  const green = toFlag ? ground.areas.filter((a) => a.surface === 'green').flatMap((a) => a.polygon.outer) : [];
  const arms = shot.arms.map((arm) => placeAt(spot, arm.bearingRad, (arm.ticksM.at(-1) ?? 0) + 5));
  const round = format.phone
    ? [0, 1, 2, 3].map((i) => placeAt(spot, up + (i * Math.PI) / 2, ROUND_SPOT_M))
    : [from, ...[-BESIDE_SHOT_M, BESIDE_SHOT_M].map((m) => placeAt(end, up, 25, m))];
  return fitted('shot', format, up, from, [spot, end, ...green, ...arms, ...round]);
}

/** The sheet of a shot that is not chosen yet, straight up to the flag; nothing on it tells where the choice lies. */
export function unchosenSheet(ground: HoleGround, from: PlanePoint, format: Format): Sheet {
  const { flag } = ground;
  const up = bearingRad(from, flag);
  const near = format.phone && distanceM(from, flag) < PHONE_WHOLE_SHOT_M;
  const green = ground.areas.filter((a) => a.surface === 'green').flatMap((a) => a.polygon.outer);
  const beside = [-BESIDE_SHOT_M, BESIDE_SHOT_M].map((m) => placeAt(flag, up, 0, m));
  return fitted('shot', format, up, from, [
    flag,
    placeAt(flag, up, ROUND_SPOT_M),
    ...green,
    ...beside,
    ...(near ? [placeAt(flag, up, -BESIDE_SHOT_M)] : [from]),
  ]);
}

function fitted(
  kind: Sheet['kind'],
  format: Format,
  upRad: number,
  ball: PlanePoint,
  shown: readonly PlanePoint[],
): Sheet {
  const { size, units, phone } = format;
  const margin = kind === 'index' ? NO_MARGIN : phone ? PHONE_MARGIN : MARGIN;
  const framePx = kind === 'index' ? 1 : FRAME_PX;
  const inner = { left: framePx, top: framePx, right: size.widthPx - framePx, bottom: size.heightPx - framePx };
  const [sin, cos] = [Math.sin(upRad), Math.cos(upRad)];
  const along = shown.map((p) => p.eastM * sin + p.northM * cos);
  const across = shown.map((p) => p.eastM * cos - p.northM * sin);
  const [low, high] = [Math.min(...along), Math.max(...along)];
  const [left, right] = [Math.min(...across), Math.max(...across)];
  const pxPerM = Math.min(
    LARGEST_PX_PER_M,
    (inner.right - inner.left - 2 * margin.sidePx) / (right - left),
    (inner.bottom - inner.top - margin.topPx - margin.bottomPx) / (high - low),
  );
  const middleX = (inner.left + inner.right) / 2;
  const middleY = (inner.top + margin.topPx + inner.bottom - margin.bottomPx) / 2;
  const [midAlong, midAcross] = [(low + high) / 2, (left + right) / 2];
  const toPaper = (p: PlanePoint): Xy => ({
    x: middleX + (p.eastM * cos - p.northM * sin - midAcross) * pxPerM,
    y: middleY - (p.eastM * sin + p.northM * cos - midAlong) * pxPerM,
  });
  return {
    kind,
    size,
    units,
    phone,
    unitM: units === 'yd' ? YARD_M : 1,
    inner,
    pxPerM,
    upRad,
    ball,
    placing: { origin: toPaper({ eastM: 0, northM: 0 }), pxPerM, upRad },
    toPaper,
    toPlane: (q) => {
      const acrossM = (q.x - middleX) / pxPerM + midAcross;
      const alongM = (middleY - q.y) / pxPerM + midAlong;
      return { eastM: acrossM * cos + alongM * sin, northM: alongM * cos - acrossM * sin };
    },
  };
}
