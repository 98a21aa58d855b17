/**
 * Distance from each cell of a raster to the nearest cell where `mask` is not 0, in cells; infinite where there is none. Exact for cell
 * middles: the lower envelope of parabolas along the columns and then along the rows (Felzenszwalb and Huttenlocher 2012).
 */
export function distancesTo(mask: Uint8Array, columns: number, rows: number): Float64Array {
  const sq = new Float64Array(mask.length).fill(Infinity);
  if (!mask.includes(1)) return sq;
  for (let i = 0; i < mask.length; i++) if (mask[i] !== 0) sq[i] = 0;
  const most = Math.max(columns, rows);
  const work: Envelope = { from: new Float64Array(most), at: new Int32Array(most), bound: new Float64Array(most + 1) };
  for (let c = 0; c < columns; c++) lower(sq, c, columns, rows, work);
  for (let r = 0; r < rows; r++) lower(sq, r * columns, 1, columns, work);
  for (let i = 0; i < sq.length; i++) sq[i] = Math.sqrt(sq[i]!);
  return sq;
}

/** Room for one row or column: its values, and the parabolas of the envelope with the bounds between them. */
interface Envelope {
  readonly from: Float64Array;
  readonly at: Int32Array;
  readonly bound: Float64Array;
}

/** Squared distances along one row or column of `n` cells, in place. */
function lower(sq: Float64Array, first: number, stride: number, n: number, { from, at, bound }: Envelope): void {
  let k = -1;
  for (let i = 0; i < n; i++) {
    const f = sq[first + i * stride]!;
    from[i] = f;
    if (f === Infinity) continue;
    let meets = -Infinity;
    while (k >= 0) {
      const j = at[k]!;
      meets = (f + i * i - from[j]! - j * j) / (2 * (i - j));
      if (meets > bound[k]!) break;
      k--;
      meets = -Infinity;
    }
    at[++k] = i;
    bound[k] = meets;
  }
  if (k < 0) return;
  const last = k;
  k = 0;
  for (let i = 0; i < n; i++) {
    while (k < last && bound[k + 1]! < i) k++;
    const j = at[k]!;
    sq[first + i * stride] = (i - j) ** 2 + from[j]!;
  }
}
