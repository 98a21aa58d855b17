import type { Line, Xy } from '../marks.ts';

const between = (a: Xy, b: Xy, t: number): Xy => ({ x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t });
export const apartPx = (a: Xy, b: Xy): number => Math.hypot(b.x - a.x, b.y - a.y);

/** A closed line with its first place again at its end. */
export const shut = (line: Line): Line => (line[0] === undefined ? line : [...line, line[0]]);

/** Length of an open line. */
export const lengthPx = (line: Line): number =>
  line.reduce((sum, p, i) => sum + (i === 0 ? 0 : apartPx(line[i - 1] ?? p, p)), 0);

/** The part of an open line from one length along it to another. */
export function partOf(line: Line, from: number, to: number): Line {
  const found: Xy[] = [];
  let walked = 0;
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1]!, line[i]!];
    const step = apartPx(a, b);
    if (step > 0 && walked + step >= from && walked <= to) {
      if (found.length === 0) found.push(between(a, b, Math.max(0, (from - walked) / step)));
      found.push(between(a, b, Math.min(1, (to - walked) / step)));
    }
    walked += step;
  }
  return found;
}

/** The place at a length along an open line, held at its ends. */
export function placeOn(line: Line, at: number): Xy | undefined {
  let left = Math.max(0, at);
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1]!, line[i]!];
    const step = apartPx(a, b);
    if (step > 0 && left <= step) return between(a, b, left / step);
    left -= step;
  }
  return line.at(-1);
}

/** Cuts an open line into dashes: lengths drawn and left out by turns. */
export function dashed(line: Line, pattern: readonly number[]): Line[] {
  const whole = lengthPx(line);
  const found: Line[] = [];
  let at = 0;
  for (let i = 0; at < whole; i++) {
    const step = pattern[i % pattern.length] ?? whole;
    if (i % 2 === 0) {
      const dash = partOf(line, at, Math.min(whole, at + step));
      if (dash.length > 1) found.push(dash);
    }
    at += step;
  }
  return found;
}

/** The parts of an open line whose places pass a test, looked at each `stepPx`; a part's ends are within a sixteenth of a step of the true ones. */
export function keepWhere(line: Line, keep: (p: Xy) => boolean, stepPx = 1.5): Line[] {
  const runs: Xy[][] = [];
  let last = line[0];
  if (last === undefined) return [];
  let kept = keep(last);
  let run: Xy[] = kept ? [last] : [];
  for (let i = 1; i < line.length; i++) {
    const [a, b] = [line[i - 1]!, line[i]!];
    const steps = Math.max(1, Math.ceil(apartPx(a, b) / stepPx));
    for (let s = 1; s <= steps; s++) {
      const p = s === steps ? b : between(a, b, s / steps);
      const now = keep(p);
      if (now !== kept) {
        run.push(edgeOf(now ? p : last, now ? last : p, keep));
        if (kept) {
          runs.push(run);
          run = [];
        }
      }
      if (now && s === steps) run.push(p);
      kept = now;
      last = p;
    }
  }
  if (kept) runs.push(run);
  return runs.filter((r) => r.length > 1).map((r) => simplified(r));
}

function edgeOf(kept: Xy, left: Xy, keep: (p: Xy) => boolean): Xy {
  let [a, b] = [kept, left];
  for (let i = 0; i < 4; i++) {
    const middle = between(a, b, 0.5);
    if (keep(middle)) a = middle;
    else b = middle;
  }
  return a;
}

/** Fewer places, none of the left out more than `offPx` from the line (Ramer 1972; Douglas and Peucker 1973). */
export function simplified(line: Line, offPx = 0.08): Line {
  const keep = new Uint8Array(line.length);
  if (line.length < 3) return line;
  keep[0] = keep[line.length - 1] = 1;
  const waiting: (readonly [number, number])[] = [[0, line.length - 1]];
  for (let span = waiting.pop(); span !== undefined; span = waiting.pop()) {
    const [from, to] = span;
    let [far, farthest] = [-1, offPx];
    for (let i = from + 1; i < to; i++) {
      const off = offLine(line[i]!, line[from]!, line[to]!);
      if (off > farthest) [far, farthest] = [i, off];
    }
    if (far < 0) continue;
    keep[far] = 1;
    waiting.push([from, far], [far, to]);
  }
  return line.filter((_, i) => keep[i] === 1);
}

/** Distance from a place to a segment. */
export function offLine(p: Xy, a: Xy, b: Xy): number {
  const [x, y] = [b.x - a.x, b.y - a.y];
  const sq = x * x + y * y;
  const t = sq === 0 ? 0 : Math.min(1, Math.max(0, ((p.x - a.x) * x + (p.y - a.y) * y) / sq));
  return Math.hypot(p.x - a.x - t * x, p.y - a.y - t * y);
}

/** A circle as a closed line. */
export const circle = (at: Xy, radius: number, sides = Math.max(12, Math.ceil(radius * 3))): Line =>
  Array.from({ length: sides }, (_, i) => {
    const turn = (2 * Math.PI * i) / sides;
    return { x: at.x + radius * Math.cos(turn), y: at.y + radius * Math.sin(turn) };
  });
