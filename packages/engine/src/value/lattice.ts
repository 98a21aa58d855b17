import type { Lead } from './arsenal.ts';

/**
 * Strokes from one lie, less the baseline, at nodes on the ground; bicubic (Catmull-Rom) between them. On and round the green the nodes
 * stand on a square mesh; farther out on rings about its middle, close together along the way to the flag, where the gaps of the bag make
 * strokes saw up and down every ten metres or so, and wide apart across it. Only nodes that some cell of that lie draws on are states of
 * the problem. The nodes stay where they are when the flag is moved.
 */
export interface Mesh {
  readonly columns: number;
  readonly needed: Uint8Array;
  readonly residual: Float64Array;
}

interface Square extends Mesh {
  readonly stepM: number;
  /** Index of the first column and row, in steps from the middle. */
  readonly first: number;
}

interface Rings extends Mesh {
  readonly fromM: number;
  readonly toM: number;
  readonly stepM: number;
}

/** What the meshes of a hole stand about: a place of the play frame, and half the side of the square mesh, a multiple of its step. */
export interface Middle {
  readonly u: number;
  readonly v: number;
  readonly halfM: number;
}

export const SQUARE_STEP_M = 3;
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
  readonly lie: number;
  readonly mesh: Mesh;
  readonly at: number;
  /** How far off, across and along the frame, its value can be felt: two steps of the mesh. */
  readonly reachU: number;
  readonly reachV: number;
  /** From the flag. */
  distanceM: number;
  /** Bearing to the flag that its strokes are aimed by. */
  atFlag: number;
  /** How far the flag had gone in all when it was last looked at from scratch. */
  lookedAtM: number;
  /** The strokes that were close to the best when all in range were last tried, and the best of them. */
  leads: readonly Lead[];
  best: Readonly<Lead> | undefined;
  /** How far its value has moved since it was last taken into the sheets. */
  owed: number;
  /** States beside it that are looked at from scratch, so that it need only look at what was found there; none where it is one of these. */
  readonly beside: Node[];
}

export class Lattice {
  private readonly middle: Middle;
  private readonly square: Square;
  private readonly rings: readonly Rings[];

  constructor(middle: Middle) {
    const first = -Math.ceil(middle.halfM / SQUARE_STEP_M) - 2;
    this.middle = middle;
    this.square = { stepM: SQUARE_STEP_M, first, ...blank(1 - 2 * first, 1 - 2 * first) };
    this.rings = RINGS.map(({ toM, stepM, around }, k) => {
      const fromM = k === 0 ? middle.halfM : RINGS[k - 1]!.toM;
      return { fromM, toM, stepM, ...blank(around, Math.ceil((toM - fromM) / stepM) + 3) };
    });
  }

  private ringsAt(radiusM: number): Rings {
    let k = 0;
    while (k + 1 < this.rings.length && radiusM >= this.rings[k]!.toM) k++;
    return this.rings[k]!;
  }

  private inSquare(x: number, y: number): boolean {
    const { halfM } = this.middle;
    return x > -halfM && x < halfM && y > -halfM && y < halfM;
  }

  /** Marks the sixteen nodes that a place draws on, `turn` and `radiusM` about the middle. */
  need(u: number, v: number, radiusM: number, turn: number): void {
    const x = u - this.middle.u;
    const y = v - this.middle.v;
    if (this.inSquare(x, y)) {
      const { needed, columns, stepM, first } = this.square;
      const i = Math.floor(x / stepM) - first - 1;
      const j = Math.floor(y / stepM) - first - 1;
      for (let b = 0; b < 4; b++) needed.fill(1, (j + b) * columns + i, (j + b) * columns + i + 4);
      return;
    }
    const { needed, columns, fromM, stepM } = this.ringsAt(radiusM);
    const j = Math.floor((radiusM - fromM) / stepM);
    const i = Math.floor(turn * columns);
    for (let b = 0; b < 4; b++) {
      for (let a = -1; a < 3; a++) needed[(j + b) * columns + ((i + a + columns) % columns)] = 1;
    }
  }

  /** The residual at a place. */
  at(u: number, v: number): number {
    const x = u - this.middle.u;
    const y = v - this.middle.v;
    if (this.inSquare(x, y)) return this.inside(x, y);
    return this.around(Math.sqrt(x * x + y * y), turnOf(x, y));
  }

  /** The same, for a place whose radius and turn about the middle are known. */
  atPolar(u: number, v: number, radiusM: number, turn: number): number {
    const x = u - this.middle.u;
    const y = v - this.middle.v;
    return this.inSquare(x, y) ? this.inside(x, y) : this.around(radiusM, turn);
  }

  private inside(fromMiddleU: number, fromMiddleV: number): number {
    const { residual: r, columns: w, stepM, first } = this.square;
    const x = fromMiddleU / stepM - first;
    const y = fromMiddleV / stepM - first;
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

  private around(radiusM: number, turn: number): number {
    const { residual: r, columns: w, fromM, stepM } = this.ringsAt(radiusM);
    const y = (radiusM - fromM) / stepM;
    const j = Math.floor(y);
    const x = turn * w;
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

  /** The states of this lie. */
  nodes(lie: number): Node[] {
    const out: Node[] = [];
    const { square, middle } = this;
    square.needed.forEach((needed, at) => {
      if (needed === 0) return;
      const x = (square.first + (at % square.columns)) * square.stepM;
      const y = (square.first + Math.floor(at / square.columns)) * square.stepM;
      const reach = 2 * square.stepM;
      out.push(node(middle.u + x, middle.v + y, lie, square, at, reach, reach));
    });
    for (const mesh of this.rings) {
      mesh.needed.forEach((needed, at) => {
        if (needed === 0) return;
        const radiusM = mesh.fromM + (Math.floor(at / mesh.columns) - 1) * mesh.stepM;
        const turn = (2 * Math.PI * (at % mesh.columns)) / mesh.columns;
        const sin = Math.sin(turn);
        const cos = Math.cos(turn);
        // two steps across bend away from the tangent
        const wide = (4 * Math.PI) / mesh.columns;
        const along = 2 * mesh.stepM + radiusM * (1 - Math.cos(wide));
        const across = radiusM * wide;
        const reachU = Math.abs(sin) * along + Math.abs(cos) * across;
        const reachV = Math.abs(cos) * along + Math.abs(sin) * across;
        out.push(node(middle.u + radiusM * sin, middle.v - radiusM * cos, lie, mesh, at, reachU, reachV));
      });
    }
    this.acquaint(out);
    return out;
  }

  /** Tells every state the ones beside it that stand on even rows and columns of its mesh, if it does not itself. */
  private acquaint(nodes: readonly Node[]): void {
    const even = new Map<Mesh, Map<number, Node>>();
    for (const n of nodes) {
      const row = Math.floor(n.at / n.mesh.columns);
      if (row % 2 !== 0 || (n.at % n.mesh.columns) % 2 !== 0) continue;
      const known = even.get(n.mesh) ?? new Map<number, Node>();
      even.set(n.mesh, known.set(n.at, n));
    }
    for (const n of nodes) {
      const { columns } = n.mesh;
      const row = Math.floor(n.at / columns);
      const column = n.at % columns;
      const rows = row % 2 === 0 ? [row] : [row - 1, row + 1];
      const sides = column % 2 === 0 ? [column] : [column - 1, (column + 1) % columns];
      if (rows.length + sides.length === 2) continue;
      for (const r of rows) {
        for (const c of sides) {
          const other = even.get(n.mesh)?.get(r * columns + c);
          if (other !== undefined) n.beside.push(other);
        }
      }
    }
  }
}

const node = (u: number, v: number, lie: number, mesh: Mesh, at: number, reachU: number, reachV: number): Node => ({
  u,
  v,
  lie,
  mesh,
  at,
  reachU,
  reachV,
  distanceM: 0,
  atFlag: 0,
  lookedAtM: 0,
  leads: [],
  best: undefined,
  owed: 0,
  beside: [],
});

const blank = (columns: number, rows: number): Mesh => ({
  columns,
  needed: new Uint8Array(columns * rows),
  residual: new Float64Array(columns * rows),
});

/** Where a place stands round the middle: 0 on the ball's side, growing to the right, below 1. */
export const turnOf = (u: number, v: number): number => {
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
