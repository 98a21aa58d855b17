import { describe, expect, it } from 'vitest';
import { normalCdf, normalPdf } from '../math/normal.ts';
import { cloudsOf, FINE, WIDTHS_M } from './cloud.ts';
import { pyramidShape, readLevel, WIDE_WIDTHS } from './pyramid.ts';
import { solveHole } from './solve.ts';
import { closedForms } from './testdata/load.ts';
import { pyramidAlone } from './testdata/pyramidAlone.ts';
import { area, box, hole, option, part, player, round } from './testdata/toy.ts';

interface Forms {
  half_plane_water: {
    k: number;
    sigma: number;
    jump: number;
    waterEdge: number;
    linear: { aim: number };
    vee: { aim: number };
    quadratic: { c: number; aim: number };
  }[];
  oblique_edge: { sd_along: number; sd_lateral: number; rho: number; beta_deg: number; sigma_normal: number };
  ob_fixed_point: { p: number; vGood: number; V: number }[];
}
const forms = closedForms() as Forms;

/** Mean cost of a round pattern aimed at x = mu, land costing C(x) left of the edge, water a constant right of it. */
function meanCost(cost: (x: number) => number, edge: number, water: number, sigma: number): (mu: number) => number {
  const base = { u0: -119.5, v0: -99.5, stepM: 1, columns: 240, rows: 200 };
  const p = pyramidAlone(pyramidShape(base, WIDE_WIDTHS));
  for (let i = 0; i < p.cells.length; i++) {
    const x = base.u0 + (i % base.columns);
    // Simpson over the cell
    p.cells[i] = x > edge ? water : (cost(x - 0.5) + 4 * cost(x) + cost(x + 0.5)) / 6;
  }
  p.changed();
  p.refresh();
  const clouds = cloudsOf([part(1, 0, sigma)], FINE);
  const level = Math.max(0, clouds.width[0]! - (WIDTHS_M.length - WIDE_WIDTHS.length));
  const grid = p.shape.grids[level]!;
  return (mu) =>
    clouds.weight.reduce(
      (sum, w, i) => sum + w * readLevel(p.levels[level]!, grid, mu + clouds.acrossM[i]!, clouds.alongM[i]!),
      0,
    );
}

/** E[C] and its minimum in closed form, by the integrals of the normal up to the edge. */
function lowest(f: (mu: number) => number, near: number): { mu: number; cost: number } {
  let best = { mu: near, cost: Infinity };
  for (let mu = near - 8; mu <= near + 8; mu += 0.05) if (f(mu) < best.cost) best = { mu, cost: f(mu) };
  return best;
}

describe('water along a straight edge', () => {
  it.each(forms.half_plane_water)(
    'slope $k, spread $sigma, edge at $waterEdge',
    ({ k, sigma, jump, waterEdge: w, ...aims }) => {
      const below = (mu: number): number => normalCdf((w - mu) / sigma);
      const density = (mu: number): number => normalPdf((w - mu) / sigma);
      const linear = (mu: number): number =>
        -k * (mu * below(mu) - sigma * density(mu)) + (jump - k * w) * (1 - below(mu));
      // E|X| below w: minus the mean of the left half, plus that of the rest
      const upTo = (a: number, mu: number): number =>
        mu * normalCdf((a - mu) / sigma) - sigma * normalPdf((a - mu) / sigma);
      const vee = (mu: number): number => k * (upTo(w, mu) - 2 * upTo(0, mu)) + (jump + k * w) * (1 - below(mu));
      const c = aims.quadratic.c;
      const quadratic = (mu: number): number =>
        c * ((mu * mu + sigma * sigma) * below(mu) - sigma * (mu + w) * density(mu)) +
        (jump + c * w * w) * (1 - below(mu));
      for (const [exact, land, aim] of [
        [linear, (x: number) => -k * x, aims.linear.aim],
        [vee, (x: number) => k * Math.abs(x), aims.vee.aim],
        [quadratic, (x: number) => c * x * x, aims.quadratic.aim],
      ] as const) {
        const ours = meanCost(land, w, land(w) + jump, sigma);
        // the published aim is the bottom of the closed form, ours costs no more by it, and says the same cost
        expect(exact(aim)).toBeLessThan(Math.min(exact(aim - 0.2), exact(aim + 0.2)));
        const found = lowest(ours, aim);
        expect(exact(found.mu) - exact(aim)).toBeLessThan(0.0012);
        expect(Math.abs(found.cost - exact(aim))).toBeLessThan(0.0012);
      }
    },
  );
});

describe('an oblique edge', () => {
  it('feels only the spread square to it', () => {
    const { sd_along, sd_lateral, rho, beta_deg, sigma_normal } = forms.oblique_edge;
    const clouds = cloudsOf(
      [{ weight: 1, alongM: 0, acrossM: 0, sdAlongM: sd_along, sdAcrossM: sd_lateral, corr: rho }],
      FINE,
    );
    const beta = (beta_deg * Math.PI) / 180;
    const spreads = [Math.cos, Math.sin].map((f, i) => {
      const g = i === 0 ? Math.sin : Math.cos;
      const second = clouds.weight.reduce(
        (s, w, n) => s + w * (clouds.alongM[n]! * f(beta) + clouds.acrossM[n]! * g(beta)) ** 2,
        0,
      );
      return Math.sqrt(second + WIDTHS_M[clouds.width[0]!]! ** 2);
    });
    expect(Math.min(...spreads.map((s) => Math.abs(s - sigma_normal)))).toBeLessThan(0.02);
  });
});

describe('out of bounds', () => {
  it.each(forms.ob_fixed_point)('with chance $p costs the fixed point', ({ p, vGood, V }) => {
    const green = area('green', round(0, 100, 12));
    const out = area('out', box(50, -60, 100, 180));
    const wild = part(p, 0, 1, 75);
    const one = player([option('only', [part(1 - p, 100, 1), wild])], vGood);
    const solution = solveHole(hole([0, 100], [green, area('fairway', box(-80, -30, 80, 180)), green, out]), one);
    const from = { at: solution.ground.ball, lie: 'tee' as const };
    const straight = solution.strokesOf(from, { option: one.options[0]!, bearingRad: 0 });
    // the one-deviation form at the best is the fixed point itself
    expect(solution.best(from)[0]!.strokes).toBeLessThan(V + 0.002);
    expect(Math.abs(straight - V)).toBeLessThan(0.0012);
  });
});

describe('next to no spread', () => {
  const solved = (d: number, carriesM: readonly number[]): { strokes: number; turnDeg: number } => {
    const ground = hole([0, d], [area('fairway', box(-260, -120, 260, d + 260)), area('green', round(0, d, 12))]);
    const clubs = carriesM.map((c) => option(`${c}`, [part(1, c, 1)]));
    const solution = solveHole(ground, player(clubs, 1));
    const [best] = solution.best({ at: solution.ground.ball, lie: 'tee' });
    const turn = ((best!.bearingRad * 180) / Math.PI + 180) % 360;
    return { strokes: best!.strokes - 1, turnDeg: Math.abs(turn - 180) };
  };
  // strokes are steps here, which lattices and blur round off a little
  it.each([
    [[100], 100, 1],
    [[100], 60, 2],
    [[100], 150, 2],
    [[100], 180, 2],
    [[100], 250, 3],
    [[100], 300, 3],
    [[100, 150], 250, 2],
    [[100, 150], 230, 2],
    [[100, 150], 325, 3],
  ] as const)('clubs of %j m reach %d m in %d', (carries, d, n) => {
    expect(Math.abs(solved(d, carries).strokes - n)).toBeLessThan(0.15);
  });
  it('goes round by the base angle acos(d / 2D), within what the green allows', () => {
    expect(Math.abs(solved(150, [100]).turnDeg - 41.41)).toBeLessThan(12);
    expect(Math.abs(solved(60, [100]).turnDeg - 72.54)).toBeLessThan(12);
  });
});
