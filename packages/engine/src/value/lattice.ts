/**
 * Strokes from one lie, less the baseline, on three meshes that coarsen away from the flag; bicubic (Catmull-Rom) between nodes.
 * Only nodes that some cell of that lie draws on are states of the problem.
 */
export interface Mesh {
  readonly stepM: number;
  /** Index of the first column and row, in steps from the flag. */
  readonly i0: number;
  readonly j0: number;
  readonly columns: number;
  readonly rows: number;
  readonly needed: Uint8Array;
  readonly residual: Float64Array;
}

/** Mesh steps, and how far from the flag (the larger of across and along) each serves. */
const STEPS_M = [3, 7, 15] as const;
const SERVES_M = [27, 63, Infinity] as const;

/** A node of the problem: a place, a lie, and where its value is kept. */
export interface Node {
  readonly u: number;
  readonly v: number;
  readonly distanceM: number;
  readonly lie: number;
  readonly mesh: Mesh;
  readonly at: number;
}

export class Lattice {
  readonly meshes: readonly Mesh[];

  constructor(box: { u0: number; u1: number; v0: number; v1: number }) {
    this.meshes = STEPS_M.map((stepM, k) => {
      const reach = SERVES_M[k]!;
      const low = (x: number): number => Math.floor(Math.max(x, -reach) / stepM) - 2;
      const high = (x: number): number => Math.ceil(Math.min(x, reach) / stepM) + 2;
      const i0 = low(box.u0);
      const j0 = low(box.v0);
      const columns = Math.max(4, high(box.u1) - i0 + 1);
      const rows = Math.max(4, high(box.v1) - j0 + 1);
      return {
        stepM,
        i0,
        j0,
        columns,
        rows,
        needed: new Uint8Array(columns * rows),
        residual: new Float64Array(columns * rows),
      };
    });
  }

  private meshAt(u: number, v: number): Mesh {
    const m = Math.max(Math.abs(u), Math.abs(v));
    return m < SERVES_M[0] ? this.meshes[0]! : m < SERVES_M[1] ? this.meshes[1]! : this.meshes[2]!;
  }

  /** Marks the sixteen nodes that a place draws on. */
  need(u: number, v: number): void {
    const mesh = this.meshAt(u, v);
    const { i, j } = corner(mesh, u, v);
    for (let b = 0; b < 4; b++) for (let a = 0; a < 4; a++) mesh.needed[(j + b) * mesh.columns + i + a] = 1;
  }

  at(u: number, v: number): number {
    const mesh = this.meshAt(u, v);
    const x = u / mesh.stepM - mesh.i0;
    const y = v / mesh.stepM - mesh.j0;
    const i = Math.min(mesh.columns - 4, Math.max(0, Math.floor(x) - 1));
    const j = Math.min(mesh.rows - 4, Math.max(0, Math.floor(y) - 1));
    const fx = x - i - 1;
    const fy = y - j - 1;
    const r = mesh.residual;
    const w = mesh.columns;
    const k = j * w + i;
    const a = cubic(r[k]!, r[k + 1]!, r[k + 2]!, r[k + 3]!, fx);
    const b = cubic(r[k + w]!, r[k + w + 1]!, r[k + w + 2]!, r[k + w + 3]!, fx);
    const c = cubic(r[k + 2 * w]!, r[k + 2 * w + 1]!, r[k + 2 * w + 2]!, r[k + 2 * w + 3]!, fx);
    const d = cubic(r[k + 3 * w]!, r[k + 3 * w + 1]!, r[k + 3 * w + 2]!, r[k + 3 * w + 3]!, fx);
    return cubic(a, b, c, d, fy);
  }

  nodes(lie: number): Node[] {
    return this.meshes.flatMap((mesh) => {
      const out: Node[] = [];
      for (let at = 0; at < mesh.needed.length; at++) {
        if (mesh.needed[at] === 0) continue;
        const u = (mesh.i0 + (at % mesh.columns)) * mesh.stepM;
        const v = (mesh.j0 + Math.floor(at / mesh.columns)) * mesh.stepM;
        out.push({ u, v, distanceM: Math.hypot(u, v), lie, mesh, at });
      }
      return out;
    });
  }
}

function corner(mesh: Mesh, u: number, v: number): { i: number; j: number } {
  return {
    i: Math.min(mesh.columns - 4, Math.max(0, Math.floor(u / mesh.stepM) - mesh.i0 - 1)),
    j: Math.min(mesh.rows - 4, Math.max(0, Math.floor(v / mesh.stepM) - mesh.j0 - 1)),
  };
}

/** Catmull-Rom between b (t = 0) and c (t = 1). */
const cubic = (a: number, b: number, c: number, d: number, t: number): number =>
  b + 0.5 * t * (c - a + t * (2 * a - 5 * b + 4 * c - d + t * (3 * (b - c) + d - a)));
