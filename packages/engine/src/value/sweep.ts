import type { HoleGround } from '../ground/hole.ts';
import { distanceM as betweenM } from '../geometry/segment.ts';
import { reachDown, type Lead } from './arsenal.ts';
import { bandsOf, type Band } from './bands.ts';
import type { Patch } from './blur.ts';
import { Evaluator } from './evaluate.ts';
import type { Field } from './field.ts';
import { improve, WIDE_M, type Look } from './improve.ts';
import type { Node } from './lattice.ts';
import { note } from './pyramid.ts';
import { Relief } from './relief.ts';
import type { Box } from './raster.ts';
import type { Found } from './search.ts';
import type { SolveStatus } from './solution.ts';

/** How far beyond a band its strokes finish, metres, without water and with drops that go back. */
const OVERSHOOT_M = 40;
const DROPS_BACK_M = 190;
/** Without water, the share of a stroke's balls that may finish in a band farther from the flag than it was played from. */
const PAST_SHARE = 0.4;
/** Of a band's states, the part that moved most: a stroke's balls feel their mean, not the worst of them. */
const MOVED_MOST_SHARE = 0.05;
/** What is taken into the sheets after a band: states that have moved by this share of the tolerance, drawn together by direction. */
const OWED_SHARE = 0.05;
const FOLLOWING_OWED_SHARE = 1;
/** After a short move they are taken at the far edges of two bands and at the end: with one alone, the tee of a long hole drifted by 0.015. */
const TAKEN_AT_M: readonly number[] = [40, 130];
const SECTORS = 12;
/** A stroke that comes this near the flag, or past it, is aimed by it, and turns with it. */
const AIMED_BY_FLAG_M = 25;
/**
 * A followed flag that is moved farther at once has all states near it looked at from scratch; after shorter moves, so many of those for which it has gone
 * so far since they were, and drops are found again when it has gone so far since the last were. A flag that is moved much farther takes two sweeps.
 */
const SHORT_MOVE_M = 6;
const AGAIN_A_MOVE = 80;
const LONG_MOVE_M = 10;
/**
 * A followed flag's states and ground are those in a box about the ball and the flag, so much wider on all sides: few balls of a stroke at the flag come to
 * rest beyond. What lies outside goes with the flag only when it has gone so far.
 */
const BESIDE_M = 60;
const OUTSIDE_BEHIND_M = 10;
const SAME_BANDS_M = 3;

/** When to stop: no state moves by more than `tolerance` strokes in a sweep, or after `most` sweeps. */
export interface Patience {
  readonly tolerance: number;
  readonly most: number;
}

/** A place of the play frame. */
interface Place {
  readonly u: number;
  readonly v: number;
}

/** What prices strokes on a hole that has been solved. */
export interface Solving {
  readonly evaluator: Evaluator;
  readonly relief: Relief | undefined;
}
export interface Solved extends Solving {
  readonly status: SolveStatus;
}

/**
 * Value iteration from the flag outwards, band by band: a band's states see the new values of all nearer bands. Repeated until no
 * state moves, because misses, drops and lay-ups lead outwards too.
 */
export class Sweeps implements Solving {
  readonly evaluator: Evaluator;
  readonly relief: Relief | undefined;
  private readonly field: Field;
  private readonly nodes: Node[];
  private bands: readonly Band[] = [];
  private next: Look = 'open';
  /** How far the flag was moved last, and in all. */
  private movedM = 0;
  private wentM = 0;
  /** How far it had gone in all when all bands and ground were taken for where it was, when the drops were, and when the hole was solved. */
  private begunAtM = 0;
  private dropsAtM = 0;
  private solvedAtM = 0;
  /** The bands that were last followed, and how far the flag had gone in all. */
  private followed:
    { readonly from: Place | undefined; readonly atM: number; readonly bands: readonly Band[] } | undefined;

  /** States that a way of playing leaves no free choice, with what it allows; `allowed` gives it for any state. */
  private readonly held = new Map<Node, readonly Lead[]>();

  constructor(field: Field, allowed?: (lie: number, u: number, v: number) => readonly Lead[] | undefined) {
    this.field = field;
    this.nodes = field.nodes();
    for (const node of allowed === undefined ? [] : this.nodes) {
      const leads = allowed!(node.lie, node.u, node.v);
      if (leads !== undefined && leads.length > 0) this.held.set(node, leads);
    }
    this.relief = field.water ? new Relief(field) : undefined;
    this.evaluator = new Evaluator(field, this.relief);
    for (const node of this.nodes) {
      node.distanceM = field.distanceM(node.u, node.v);
      node.atFlag = field.bearingToFlag(node.u, node.v);
    }
    this.begin();
    this.relief?.refresh(0, Infinity);
  }

  /** The states, with the strokes that are played from them. */
  get states(): readonly Node[] {
    return this.nodes;
  }

  /** Takes the flag where the field has it: bands about it, and everything composed. */
  private begin(): void {
    this.nodes.sort((a, b) => a.distanceM - b.distanceM);
    for (const node of this.nodes) turn(this.field, node);
    this.bands = bandsOf(this.field, this.nodes);
    this.field.composeForFlag();
    this.begunAtM = this.wentM;
  }

  /**
   * Takes a flag that has been moved, on ground that is otherwise the same. Values keep what they had over the baseline, which goes with
   * the flag, and strokes that were aimed by it turn with it; `follow` or `solve` then work them again.
   */
  moveFlag(ground: HoleGround): void {
    const { field } = this;
    this.movedM = betweenM(field.ground.flag, ground.flag);
    this.wentM += this.movedM;
    field.putFlag(ground);
    for (const node of this.nodes) node.distanceM = field.distanceM(node.u, node.v);
    this.next = 'moved';
  }

  /** Finds and prices the drops for the flag as it stands. */
  private moveDrops(): void {
    if (this.dropsAtM === this.wentM) return;
    this.relief?.flagMoved();
    this.relief?.refresh(0, Infinity);
    this.dropsAtM = this.wentM;
  }

  /**
   * Works the states that a ball at a place of the play frame may come to on its way to the flag (all states without a place), once after a move, and once more
   * after a long one: good enough to follow a finger. The others keep what they cost over the baseline, and after a short move drops cost what they did.
   */
  follow({ tolerance }: Patience, from?: Place): SolveStatus {
    const { field } = this;
    if (this.wentM - this.begunAtM > OUTSIDE_BEHIND_M) this.begin();
    else field.composeForFlag(from && boxAhead(from, field.flag));
    if (this.wentM - this.dropsAtM > SHORT_MOVE_M) this.moveDrops();
    const sweeps = this.movedM > LONG_MOVE_M ? 2 : 1;
    if (this.next === 'moved' && this.movedM < SHORT_MOVE_M) this.next = 'followed';
    let again = AGAIN_A_MOVE;
    const bands = this.bandsFrom(from);
    let moved = 0;
    for (let sweep = 1; sweep <= sweeps; sweep++) {
      moved = 0;
      for (const band of bands) {
        if (this.next === 'followed') again = this.lookAgain(band, again);
        moved = Math.max(moved, this.work(band, this.next));
        if (this.next === 'followed' && !TAKEN_AT_M.includes(band.toM) && band !== bands.at(-1)) continue;
        this.take(tolerance * FOLLOWING_OWED_SHARE, this.next !== 'followed');
      }
      this.next = 'known';
    }
    for (const band of this.bands) band.stale = Infinity;
    return this.status(sweeps, moved, tolerance);
  }

  /** Marks the states of a band that have not been looked at from scratch for too long, so many at the most; gives how many more may be. */
  private lookAgain({ nodes }: Band, most: number): number {
    let left = most;
    for (const node of nodes) {
      if (left === 0) break;
      if (node.distanceM > WIDE_M || this.wentM - node.lookedAtM < SHORT_MOVE_M) continue;
      node.lookedAtM = this.wentM;
      left--;
    }
    return left;
  }

  /** Bands of the states that are followed from a place, their strokes turned with the flag. They are drawn up anew only when the flag has gone some way. */
  private bandsFrom(from: Place | undefined): readonly Band[] {
    const { field, wentM } = this;
    const known = this.followed;
    if (known !== undefined && samePlace(known.from, from) && wentM - known.atM < SAME_BANDS_M) {
      for (const { nodes } of known.bands) for (const node of nodes) turn(field, node);
      return known.bands;
    }
    const box = from && boxAhead(from, field.flag);
    const withinM = from === undefined ? Infinity : field.distanceM(from.u, from.v);
    const nodes: Node[] = [];
    for (const node of this.nodes) {
      const { u, v, distanceM } = node;
      if (distanceM > withinM || (box && (u < box.u0 || u > box.u1 || v < box.v0 || v > box.v1))) continue;
      turn(field, node);
      nodes.push(node);
    }
    nodes.sort((a, b) => a.distanceM - b.distanceM);
    const bands = bandsOf(field, nodes);
    this.followed = { from, atM: wentM, bands };
    return bands;
  }

  /** Sweeps until nothing that a band leads to has moved. */
  solve({ tolerance, most }: Patience): SolveStatus {
    let sweeps = 0;
    if (this.wentM > this.solvedAtM) this.next = 'moved';
    if (this.wentM > this.begunAtM) this.begin();
    this.moveDrops();
    while (sweeps < most && this.residual() > tolerance) {
      sweeps++;
      for (const [k, band] of this.bands.entries()) {
        if (band.stale <= tolerance / 2) continue;
        this.spoil(k, this.work(band, this.next));
        if (this.next === 'open') this.expect(k);
        this.take(tolerance * OWED_SHARE);
      }
      this.next = this.next === 'open' || this.next === 'moved' ? 'known' : 'again';
    }
    this.solvedAtM = this.wentM;
    return this.status(sweeps, this.residual(), tolerance);
  }

  private residual(): number {
    return Math.max(0, ...this.bands.map((b) => b.stale));
  }

  private status(sweeps: number, residual: number, tolerance: number): SolveStatus {
    this.field.ready();
    return {
      states: this.nodes.length,
      options: this.field.player.options.length,
      sweeps,
      residual,
      converged: residual <= tolerance,
    };
  }

  /** Sets every state of a band to its cheapest stroke; gives how far they moved. */
  private work(band: Band, look: Look): number {
    this.field.ready(band.widest);
    const { nodes } = band;
    const moves = new Float64Array(nodes.length);
    for (let i = 0; i < nodes.length; i++) {
      const node = nodes[i]!;
      if (look === 'open' || look === 'moved') node.lookedAtM = this.wentM;
      const open = look === 'followed' && node.lookedAtM === this.wentM;
      moves[i] = improve(this.field, this.evaluator, node, open ? 'moved' : look, this.held);
    }
    moves.sort();
    const from = Math.min(moves.length - 1, Math.floor(moves.length * (1 - MOVED_MOST_SHARE)));
    return moves.subarray(from).reduce((sum, m) => sum + m, 0) / Math.max(1, moves.length - from);
  }

  /** Notes for every band what it leads to that has moved with band k. */
  private spoil(k: number, moved: number): void {
    const band = this.bands[k]!;
    const wet = this.relief !== undefined;
    band.stale = 0;
    this.bands.forEach((other, j) => {
      if (band.fromM > other.toM + (wet ? DROPS_BACK_M : OVERSHOOT_M) || other.stale === Infinity) return;
      other.stale = Math.max(other.stale, moved * (!wet && j < k ? PAST_SHARE : 1));
    });
  }

  /** Before the next band is worked for the first time: it is expected to cost as much over the baseline as the last one did, from each lie. */
  private expect(k: number): void {
    const means = new Map<number, { sum: number; n: number }>();
    for (const { lie, mesh, at } of this.bands[k]!.nodes) {
      const mean = means.get(lie) ?? { sum: 0, n: 0 };
      means.set(lie, { sum: mean.sum + mesh.residual[at]!, n: mean.n + 1 });
    }
    for (const node of this.bands[k + 1]?.nodes ?? []) {
      const mean = means.get(node.lie);
      if (mean !== undefined) node.owed += Math.abs((node.mesh.residual[node.at] = mean.sum / mean.n));
    }
  }

  /** Takes states that have moved into the sheets and the table of drops. */
  private take(owed: number, drops = true): void {
    const { field } = this;
    const pieces: Patch[] = [];
    const bySector = new Map<number, Patch>();
    let [nearest, farthest] = [Infinity, 0];
    for (const node of this.nodes) {
      if (node.owed <= owed) continue;
      node.owed = 0;
      const sector = Math.floor((field.bearingToFlag(node.u, node.v) / (2 * Math.PI) + 0.5) * SECTORS);
      const patch = field.patchOf(node);
      const known = bySector.get(sector);
      bySector.set(sector, known === undefined ? patch : joined(known, patch));
      const reach = Math.max(node.reachU, node.reachV);
      nearest = Math.min(nearest, node.distanceM - reach);
      farthest = Math.max(farthest, node.distanceM + reach);
    }
    for (const patch of bySector.values()) note(pieces, patch);
    if (pieces.length === 0) return;
    field.compose(pieces);
    if (drops) this.relief?.refresh(nearest, farthest);
  }
}

/** One hole solved from scratch. */
export function solveField(field: Field, patience: Patience): Solved {
  const sweeps = new Sweeps(field);
  const status = sweeps.solve(patience);
  return { status, evaluator: sweeps.evaluator, relief: sweeps.relief };
}

/** Turns a state's strokes that are aimed by the flag with it. */
function turn(field: Field, node: Node): void {
  const atFlag = field.bearingToFlag(node.u, node.v);
  const by = atFlag - node.atFlag;
  node.atFlag = atFlag;
  const aimed = ({ weapon }: Found): boolean => reachDown(weapon, atFlag) > node.distanceM - AIMED_BY_FLAG_M;
  for (const lead of node.leads) if (aimed(lead)) lead.bearing += by;
  if (node.best && aimed(node.best)) node.best = { ...node.best, bearing: node.best.bearing + by };
}

function boxAhead(from: Place, flag: Place): Box {
  return {
    u0: Math.min(from.u, flag.u) - BESIDE_M,
    u1: Math.max(from.u, flag.u) + BESIDE_M,
    v0: Math.min(from.v, flag.v) - BESIDE_M,
    v1: Math.max(from.v, flag.v) + BESIDE_M,
  };
}

const samePlace = (a: Place | undefined, b: Place | undefined): boolean => a?.u === b?.u && a?.v === b?.v;

const joined = (a: Patch, b: Patch): Patch => ({
  c0: Math.min(a.c0, b.c0),
  c1: Math.max(a.c1, b.c1),
  r0: Math.min(a.r0, b.r0),
  r1: Math.max(a.r1, b.r1),
});
