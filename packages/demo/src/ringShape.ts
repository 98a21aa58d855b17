import { boxOf, type Ring, signedAreaSqM } from '@leeway/engine';

/** How far a ring's corners stray from the ellipse of its own moments: root mean square, as a share of the ellipse's radius. An ellipse gives 0. */
export function strayFromEllipse(ring: Ring): number {
  const n = ring.length;
  const [east, north] = [mean(ring.map((p) => p.eastM)), mean(ring.map((p) => p.northM))];
  const [ee, nn, en] = ring.reduce<readonly [number, number, number]>(
    ([xx, yy, xy], p) => {
      const [x, y] = [p.eastM - east, p.northM - north];
      return [xx + (x * x) / n, yy + (y * y) / n, xy + (x * y) / n];
    },
    [0, 0, 0],
  );
  // d' C^-1 d is the same at all corners of an ellipse, up to where on it they stand.
  const det = ee * nn - en * en;
  const radii = ring.map((p) => {
    const [x, y] = [p.eastM - east, p.northM - north];
    return Math.sqrt((nn * x * x - 2 * en * x * y + ee * y * y) / det);
  });
  const meanRadius = mean(radii);
  return Math.sqrt(mean(radii.map((r) => (r / meanRadius - 1) ** 2)));
}

/** The share of the least box round a ring that the ring fills, over boxes along each of its sides: 1 for a rectangle. */
export function shareOfBox(ring: Ring): number {
  const boxes = ring.map((p, i) => {
    const next = ring[(i + 1) % ring.length] ?? p;
    const turn = Math.atan2(next.northM - p.northM, next.eastM - p.eastM);
    const [sin, cos] = [Math.sin(turn), Math.cos(turn)];
    const box = boxOf(
      ring.map((q) => ({ eastM: q.eastM * cos + q.northM * sin, northM: q.northM * cos - q.eastM * sin })),
    );
    return (box.eastM - box.westM) * (box.northM - box.southM);
  });
  return Math.abs(signedAreaSqM(ring)) / Math.min(...boxes);
}

const mean = (xs: readonly number[]): number => xs.reduce((sum, x) => sum + x, 0) / xs.length;
