import type { Lead } from './arsenal.ts';

/**
 * Strokes from one lie, less the baseline, at nodes on the ground; bicubic (Catmull-Rom) between them. Round the flag the nodes stand
 * on a square mesh; farther out on rings, close together along the way to the flag, where the gaps of the bag make strokes saw up
 * and down every ten metres or so, and wide apart across it. Only nodes that some cell of that lie draws on are states of the problem.
 */
export interface Mesh {
  readonly columns: number;
  readonly needed: Uint8Array;
  readonly residual: Float64Array;
}

interface Square extends Mesh {
  readonly kind: 'square';
  readonly stepM: number;
  readonly halfM: number;
  /** Index of the first column and row, in steps from the flag. */
  readonly first: number;
}

interface Rings extends Mesh {
  readonly kind: 'rings';
  readonly fromM: number;
  readonly toM: number;
  readonly stepM: number;
}

/** Half the side of the square mesh, and its step. */
const SQUARE_M = 27;
const SQUARE_STEP_M = 3;
/** Rings up to a distance, the step between them, and the nodes on each whole ring. */
const RINGS: readonly { readonly toM: number; readonly stepM: number; readonly around: number }[] = [
  { toM: 54, stepM: 3, around: 24 },
  { toM: 108, stepM: 3, around: 40 },
  { toM: 216, stepM: 5, around: 64 },
  { toM: 432, stepM: 8, around: 96 },
  { toM: 864, stepM: 12, around: 144 },
  { toM: 1728, stepM: 18, around: 300 },
];

/** A node of the problem: a place, a lie, and where its value is kept. */
export interface Node {
  readonly u: number;
  readonly v: number;
  readonly distanceM: number;
  readonly lie: number;
  readonly mesh: Mesh;
  readonly at: number;
  /** The strokes that were close to the best when all in range were last tried. */
  leads: readonly Lead[];
}

export class Lattice {
  private readonly square: Square;
  private readonly rings: readonly Rings[];

  constructor() {
    const first = -Math.ceil(SQUARE_M / SQUARE_STEP_M) - 2;
    this.square = {
      kind: 'square',
      stepM: SQUARE_STEP_M,
      halfM: SQUARE_M,
      first,
      ...blank(1 - 2 * first, 1 - 2 * first),
    };
    this.rings = RINGS.map(({ toM, stepM, around }, k) => {
      const fromM = k === 0 ? SQUARE_M : RINGS[k - 1]!.toM;
      return { kind: 'rings', fromM, toM, stepM, ...blank(around, Math.ceil((toM - fromM) / stepM) + 3) };
    });
  }

  private ringsAt(distanceM: number): Rings {
    let k = 0;
    while (k + 1 < this.rings.length && distanceM >= this.rings[k]!.toM) k++;
    return this.rings[k]!;
  }

  /** Marks the sixteen nodes that a place draws on. */
  need(u: number, v: number): void {
    if (inSquare(u, v)) {
      const { needed, columns, stepM, first } = this.square;
      const i = Math.floor(u / stepM) - first - 1;
      const j = Math.floor(v / stepM) - first - 1;
      for (let b = 0; b < 4; b++) needed.fill(1, (j + b) * columns + i, (j + b) * columns + i + 4);
      return;
    }
    const d = Math.sqrt(u * u + v * v);
    const { needed, columns, fromM, stepM } = this.ringsAt(d);
    const j = Math.floor((d - fromM) / stepM);
    const i = Math.floor(turnOf(u, v) * columns);
    for (let b = 0; b < 4; b++) {
      for (let a = -1; a < 3; a++) needed[(j + b) * columns + ((i + a + columns) % columns)] = 1;
    }
  }

  /** The residual at a place, given its distance from the flag. */
  at(u: number, v: number, distanceM: number): number {
    if (inSquare(u, v)) {
      const { residual: r, columns: w, stepM, first } = this.square;
      const x = u / stepM - first;
      const y = v / stepM - first;
      const i = Math.floor(x);
      const j = Math.floor(y);
      const k = (j - 1) * w + i - 1;
      const t = x - i;
      const smooth = cubic(
        cubic(r[k]!, r[k + 1]!, r[k + 2]!, r[k + 3]!, t),
        cubic(r[k + w]!, r[k + w + 1]!, r[k + w + 2]!, r[k + w + 3]!, t),
        cubic(r[k + 2 * w]!, r[k + 2 * w + 1]!, r[k + 2 * w + 2]!, r[k + 2 * w + 3]!, t),
        cubic(r[k + 3 * w]!, r[k + 3 * w + 1]!, r[k + 3 * w + 2]!, r[k + 3 * w + 3]!, t),
        y - j,
      );
      return between(smooth, r[k + w + 1]!, r[k + w + 2]!, r[k + 2 * w + 1]!, r[k + 2 * w + 2]!);
    }
    const { residual: r, columns: w, fromM, stepM } = this.ringsAt(distanceM);
    const y = (distanceM - fromM) / stepM;
    const j = Math.floor(y);
    const x = turnOf(u, v) * w;
    const i = Math.floor(x);
    const t = x - i;
    const k = j * w;
    const a = i === 0 ? w - 1 : i - 1;
    const b = i >= w ? i - w : i;
    const c = i + 1 >= w ? i + 1 - w : i + 1;
    const d = i + 2 >= w ? i + 2 - w : i + 2;
    const smooth = cubic(
      cubic(r[k + a]!, r[k + b]!, r[k + c]!, r[k + d]!, t),
      cubic(r[k + w + a]!, r[k + w + b]!, r[k + w + c]!, r[k + w + d]!, t),
      cubic(r[k + 2 * w + a]!, r[k + 2 * w + b]!, r[k + 2 * w + c]!, r[k + 2 * w + d]!, t),
      cubic(r[k + 3 * w + a]!, r[k + 3 * w + b]!, r[k + 3 * w + c]!, r[k + 3 * w + d]!, t),
      y - j,
    );
    return between(smooth, r[k + w + b]!, r[k + w + c]!, r[k + 2 * w + b]!, r[k + 2 * w + c]!);
  }

  nodes(lie: number): Node[] {
    const out: Node[] = [];
    const { square } = this;
    square.needed.forEach((needed, at) => {
      if (needed === 0) return;
      const u = (square.first + (at % square.columns)) * square.stepM;
      const v = (square.first + Math.floor(at / square.columns)) * square.stepM;
      out.push({ u, v, distanceM: Math.hypot(u, v), lie, mesh: square, at, leads: [] });
    });
    for (const mesh of this.rings) {
      mesh.needed.forEach((needed, at) => {
        if (needed === 0) return;
        const distanceM = mesh.fromM + (Math.floor(at / mesh.columns) - 1) * mesh.stepM;
        const turn = (2 * Math.PI * (at % mesh.columns)) / mesh.columns;
        out.push({
          u: distanceM * Math.sin(turn),
          v: -distanceM * Math.cos(turn),
          distanceM,
          lie,
          mesh,
          at,
          leads: [],
        });
      });
    }
    return out;
  }
}

const blank = (columns: number, rows: number): Mesh => ({
  columns,
  needed: new Uint8Array(columns * rows),
  residual: new Float64Array(columns * rows),
});

const inSquare = (u: number, v: number): boolean => u > -SQUARE_M && u < SQUARE_M && v > -SQUARE_M && v < SQUARE_M;

/** Where a place stands round the flag: 0 on the ball's side, growing to the right, below 1. */
const turnOf = (u: number, v: number): number => {
  const turn = Math.atan2(u, -v) / (2 * Math.PI);
  return turn < 0 ? turn + 1 : turn;
};

/** A smooth value may pass the four nodes about it by so many strokes: enough for a crest, too little for the lobes beside a step. */
const LOBE = 0.02;

const between = (smooth: number, a: number, b: number, c: number, d: number): number =>
  Math.min(Math.max(a, b, c, d) + LOBE, Math.max(Math.min(a, b, c, d) - LOBE, smooth));

/** Catmull-Rom between b (t = 0) and c (t = 1). */
const cubic = (a: number, b: number, c: number, d: number, t: number): number =>
  b + 0.5 * t * (c - a + t * (2 * a - 5 * b + 4 * c - d + t * (3 * (b - c) + d - a)));
