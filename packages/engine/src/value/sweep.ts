import type { HoleGround } from '../ground/hole.ts';
import { distanceM as betweenM } from '../geometry/segment.ts';
import { reachDown, widestOf, type Lead, type Weapon } from './arsenal.ts';
import type { Patch } from './blur.ts';
import { Evaluator } from './evaluate.ts';
import type { Field } from './field.ts';
import type { Node } from './lattice.ts';
import { note } from './pyramid.ts';
import { Relief } from './relief.ts';
import {
  AGAIN,
  closest,
  FULL,
  leadsBeside,
  leadsOf,
  QUICK,
  TURNED,
  worthTryingFrom,
  type Effort,
  type Found,
} from './search.ts';
import type { SolveStatus } from './solution.ts';
import { mayBeUnplayable, unplayable } from './unplayable.ts';
import { held } from './way.ts';

/** A state may cost this much more than the baseline at most; beyond, it is ground that nobody plays from. */
const MOST_OVER_BASELINE = 2.5;
/** The same for a state that a way of playing leaves no choice: some ways are dear. */
const MOST_HELD = 8;
/** A state whose best stroke costs what it did, give or take so much, keeps it; one that moves by more among its leads is looked at from scratch. */
const STEADY = 0.002;
/** The same while a flag is followed, for states far from it: their strokes have turned with the flag, and the last of a stroke's cost is not sought. */
const STEADY_FAR = 0.01;
const MOVED_MUCH = 0.02;
/** The same for states far from a flag that has been moved. */
const MOVED_FAR = 0.06;
/** A state that is dearer, over the baseline, than all those beside it by more than this is looked at from scratch too. */
const DEARER = 0.008;
/** Far edges of the bands that are worked from the flag outwards; then every 108 m. */
const BANDS_M = [9, 20, 40, 74, 130, 216];
/** How far beyond a band its strokes finish, metres, without water and with drops that go back. */
const OVERSHOOT_M = 40;
const DROPS_BACK_M = 190;
/** Without water, the share of a stroke's balls that may finish in a band farther from the flag than it was played from. */
const PAST_SHARE = 0.4;
/** Of a band's states, the part that moved most: a stroke's balls feel their mean, not the worst of them. */
const MOVED_MOST_SHARE = 0.05;
/** What is taken into the sheets after a band: states that have moved by this share of the tolerance, drawn together by direction. */
const OWED_SHARE = 0.05;
const FOLLOWING_OWED_SHARE = 0.5;
/** After a short move they are taken at the far edges of two bands and at the end: with one alone, the tee of a long hole drifted by 0.015. */
const TAKEN_AT_M: readonly number[] = [40, 130];
const SECTORS = 12;
/** After the flag has been moved, states as near as this are looked at from scratch; those farther out among the strokes they know. */
const WIDE_M = 60;
/** A stroke that comes this near the flag, or past it, is aimed by it, and turns with it. */
const AIMED_BY_FLAG_M = 25;
/** A flag that has been moved less since states near it were last looked at from scratch is followed among the strokes they know. */
const SHORT_MOVE_M = 3.5;
/** A flag that has been moved farther at once is followed by two sweeps. */
const LONG_MOVE_M = 10;

/** When to stop: no state moves by more than `tolerance` strokes in a sweep, or after `most` sweeps. */
export interface Patience {
  readonly tolerance: number;
  readonly most: number;
}

/** What prices strokes on a hole that has been solved. */
export interface Solving {
  readonly evaluator: Evaluator;
  readonly relief: Relief | undefined;
}
export interface Solved extends Solving {
  readonly status: SolveStatus;
}

interface Band {
  readonly fromM: number;
  readonly toM: number;
  readonly nodes: readonly Node[];
  /** For each run class the widest cloud that its states read. */
  readonly widest: Int8Array;
  /** How much of what it leads to has moved since it was last worked. */
  stale: number;
}

/**
 * How hard a sweep looks: at everything; at everything near a flag that has been moved; among the strokes known near a flag that has hardly
 * moved; among known strokes; among those again.
 */
type Look = 'open' | 'moved' | 'followed' | 'known' | 'again';

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
  /** How far the flag was moved last, and in all since states near it were looked at from scratch. */
  private movedM = 0;
  private sinceWideM = 0;
  /** Whether the drops are those for the flag where it was before. */
  private dropsBehind = false;

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
    this.begin();
    this.relief?.refresh(0, Infinity);
  }

  /** The states, with the strokes that are played from them. */
  get states(): readonly Node[] {
    return this.nodes;
  }

  /** Takes the flag where the field has it: bands about it, and everything composed. */
  private begin(): void {
    for (const node of this.nodes) node.distanceM = this.field.distanceM(node.u, node.v);
    this.nodes.sort((a, b) => a.distanceM - b.distanceM);
    this.bands = bandsOf(this.field, this.nodes);
    this.field.composeForFlag();
  }

  /**
   * Takes a flag that has been moved, on ground that is otherwise the same. Values keep what they had over the baseline, which goes with
   * the flag, and strokes that were aimed by it turn with it; `follow` or `solve` then work them again.
   */
  moveFlag(ground: HoleGround): void {
    const { field } = this;
    const before = Float64Array.from(this.nodes, ({ u, v }) => field.bearingToFlag(u, v));
    this.movedM = betweenM(field.ground.flag, ground.flag);
    this.sinceWideM += this.movedM;
    field.putFlag(ground);
    this.nodes.forEach((node, i) => {
      const atFlag = field.bearingToFlag(node.u, node.v);
      const turn = atFlag - before[i]!;
      const aimed = ({ weapon }: Found): boolean => reachDown(weapon, atFlag) > node.distanceM - AIMED_BY_FLAG_M;
      for (const lead of node.leads) if (aimed(lead)) lead.bearing += turn;
      if (node.best && aimed(node.best)) node.best = { ...node.best, bearing: node.best.bearing + turn };
    });
    this.dropsBehind = true;
    this.next = 'moved';
    this.begin();
  }

  /** Finds and prices the drops for the flag as it stands. */
  private moveDrops(): void {
    if (this.dropsBehind) {
      this.relief?.flagMoved();
      this.relief?.refresh(0, Infinity);
    }
    this.dropsBehind = false;
  }

  /**
   * Works the states that a ball at so many metres from the flag may come to once after a move, and once more after a long one: good enough
   * to follow a finger. States farther out keep what they cost over the baseline, and after a short move drops cost what they did.
   */
  follow({ tolerance }: Patience, fromM: number): SolveStatus {
    const sweeps = this.movedM > LONG_MOVE_M ? 2 : 1;
    if (this.next === 'moved' && this.sinceWideM < SHORT_MOVE_M) this.next = 'followed';
    else this.moveDrops();
    const reached = this.bands.filter((band) => band.fromM <= fromM);
    for (let sweep = 1; sweep <= sweeps; sweep++) {
      if (this.next === 'moved') this.sinceWideM = 0;
      for (const band of reached) {
        this.spoil(this.bands.indexOf(band), this.work(band, this.next));
        if (this.next === 'followed' && !TAKEN_AT_M.includes(band.toM) && band !== reached.at(-1)) continue;
        this.take(tolerance * FOLLOWING_OWED_SHARE, this.next !== 'followed');
      }
      this.next = 'known';
    }
    return this.status(sweeps, tolerance);
  }

  /** Sweeps until nothing that a band leads to has moved. */
  solve({ tolerance, most }: Patience): SolveStatus {
    let sweeps = 0;
    if (this.sinceWideM > 0) this.next = 'moved';
    this.moveDrops();
    while (sweeps < most && this.residual() > tolerance) {
      sweeps++;
      for (const [k, band] of this.bands.entries()) {
        if (band.stale <= tolerance / 2) continue;
        this.spoil(k, this.work(band, this.next));
        if (this.next === 'open') this.expect(k);
        this.take(tolerance * OWED_SHARE);
      }
      this.sinceWideM = 0;
      this.next = this.next === 'open' || this.next === 'moved' ? 'known' : 'again';
    }
    return this.status(sweeps, tolerance);
  }

  private residual(): number {
    return Math.max(0, ...this.bands.map((b) => b.stale));
  }

  private status(sweeps: number, tolerance: number): SolveStatus {
    this.field.ready();
    const residual = this.residual();
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
    const moves = Float64Array.from(band.nodes, (node) =>
      improve(this.field, this.evaluator, node, look, this.held),
    ).sort();
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

/** How hard each look tries the leads that it knows. */
const EFFORTS: Readonly<Record<Look, Effort>> = {
  open: QUICK,
  moved: TURNED,
  followed: TURNED,
  known: FULL,
  again: AGAIN,
};

/**
 * Sets one state to its cheapest stroke; gives how far it moved. The first sweep looks at everything in range, but quickly; later ones
 * at the best stroke, among those that were close to it if that has moved, and at everything again where that moves the state much.
 */
function improve(
  field: Field,
  evaluator: Evaluator,
  node: Node,
  look: Look,
  heldTo: ReadonlyMap<Node, readonly Lead[]>,
): number {
  const { u, v, mesh, at, distanceM } = node;
  const base = field.baselineFrom(node.lie, distanceM);
  const before = mesh.residual[at]!;
  const fromHere = base + before;
  const allowed = heldTo.get(node);
  if (allowed !== undefined) return settle(field, node, base, held(evaluator, node, allowed, fromHere), MOST_HELD);
  let strokes = Infinity;
  const wide = look === 'open' || (look === 'moved' && distanceM <= WIDE_M);
  if (node.best !== undefined) {
    const { weapon, bearing } = node.best;
    strokes = evaluator.always(weapon, weapon.fine, u, v, bearing, fromHere);
    const steady = look === 'followed' && distanceM > WIDE_M ? STEADY_FAR : STEADY;
    if (!wide && Math.abs(strokes - fromHere) > steady) {
      node.best = closest(evaluator, node.leads, u, v, fromHere, EFFORTS[look]);
      strokes = node.best.strokes;
    }
  }
  const take = (leads: readonly Lead[], effort: Effort): void => {
    const found = closest(evaluator, leads, u, v, fromHere, effort);
    if (found.strokes >= strokes && node.leads.length > 0) return;
    node.leads = leads;
    node.best = found;
    strokes = found.strokes;
  };
  const free = heldTo.size === 0 || !node.beside.some((other) => heldTo.has(other));
  const beside = wide && free ? leadsBeside(evaluator, node.beside, u, v) : [];
  if (beside.length > 0) take(beside, QUICK);
  const dearest = beside.length > 0 ? dearestOf(node.beside) + DEARER : wide ? -Infinity : Infinity;
  const movedMuch = !(
    Math.abs(strokes - fromHere) <= (look === 'moved' || look === 'followed' ? MOVED_FAR : MOVED_MUCH)
  );
  if (strokes - base > dearest || (!wide && movedMuch)) {
    const weapons = worthTryingFrom(field, node.lie, distanceM, field.bearingToFlag(u, v));
    take(leadsOf(evaluator, weapons, u, v, fromHere), wide ? QUICK : FULL);
  }
  return settle(field, node, base, strokes, MOST_OVER_BASELINE);
}

/** Sets one state to what its stroke costs, or to the relief of Rule 19 where that is cheaper; gives how far it moved. */
function settle(field: Field, node: Node, base: number, played: number, mostOver: number): number {
  const { u, v, mesh, at } = node;
  const before = mesh.residual[at]!;
  let strokes = played;
  if (mayBeUnplayable(field, node.lie, u, v, strokes)) {
    const dropped = unplayable(field, node.lie, u, v);
    if (dropped !== undefined) strokes = Math.min(strokes, dropped.penaltyStrokes + dropped.strokes);
  }
  const after = Math.min(mostOver, strokes - base);
  mesh.residual[at] = after;
  node.owed += Math.abs(after - before);
  return Math.abs(after - before);
}

/** The most that any of these states costs over the baseline. */
const dearestOf = (nodes: readonly Node[]): number =>
  nodes.reduce((most, { mesh, at }) => Math.max(most, mesh.residual[at]!), -Infinity);

function bandsOf(field: Field, nodes: readonly Node[]): Band[] {
  const bands: Band[] = [];
  let fromM = 0;
  let k = 0;
  for (let i = 0; i < nodes.length; k++) {
    const toM = k < BANDS_M.length ? BANDS_M[k]! : BANDS_M.at(-1)! + 108 * (k - BANDS_M.length + 1);
    const inside: Node[] = [];
    while (i < nodes.length && nodes[i]!.distanceM <= toM) inside.push(nodes[i++]!);
    // those that others ask come first
    inside.sort((a, b) => Math.min(1, a.beside.length) - Math.min(1, b.beside.length));
    const played = new Set<Weapon>();
    for (const { lie, distanceM, u, v } of inside) {
      for (const w of worthTryingFrom(field, lie, distanceM, field.bearingToFlag(u, v))) played.add(w);
    }
    bands.push({ fromM, toM, nodes: inside, widest: widestOf(played, field.classes), stale: Infinity });
    fromM = toM;
  }
  return bands;
}

const joined = (a: Patch, b: Patch): Patch => ({
  c0: Math.min(a.c0, b.c0),
  c1: Math.max(a.c1, b.c1),
  r0: Math.min(a.r0, b.r0),
  r1: Math.max(a.r1, b.r1),
});
