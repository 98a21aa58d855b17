import type { Line, Xy } from '../marks.ts';
import { apartPx } from './line.ts';
import type { Quad } from './quad.ts';

/** Which px of a sheet carry ink, and whose: a number above 0 for each thing drawn. Asking about a box costs its px, not the number of things. */
export class InkMap {
  readonly #columns: number;
  readonly #rows: number;
  readonly #owner: Int32Array;

  constructor({ widthPx, heightPx }: { readonly widthPx: number; readonly heightPx: number }) {
    this.#columns = Math.ceil(widthPx);
    this.#rows = Math.ceil(heightPx);
    this.#owner = new Int32Array(this.#columns * this.#rows);
  }

  dot({ x, y }: Xy, owner: number): void {
    const [column, row] = [Math.floor(x), Math.floor(y)];
    if (column >= 0 && row >= 0 && column < this.#columns && row < this.#rows)
      this.#owner[row * this.#columns + column] = owner;
  }

  line(line: Line, owner: number): void {
    for (let i = 1; i < line.length; i++) {
      const [a, b] = [line[i - 1]!, line[i]!];
      const steps = Math.max(1, Math.ceil(apartPx(a, b)));
      for (let s = 0; s <= steps; s++)
        this.dot({ x: a.x + ((b.x - a.x) * s) / steps, y: a.y + ((b.y - a.y) * s) / steps }, owner);
    }
  }

  /** Is there ink of anything but `owner` inside a box, looked at each px of it? */
  inkOf(quad: Quad, owner: number): boolean {
    const [a, b, , d] = quad;
    const across = Math.max(1, Math.ceil(apartPx(a, b)));
    const down = Math.max(1, Math.ceil(apartPx(a, d)));
    for (let j = 0; j <= down; j++) {
      for (let i = 0; i <= across; i++) {
        const x = Math.floor(a.x + ((b.x - a.x) * i) / across + ((d.x - a.x) * j) / down);
        const y = Math.floor(a.y + ((b.y - a.y) * i) / across + ((d.y - a.y) * j) / down);
        if (x < 0 || y < 0 || x >= this.#columns || y >= this.#rows) continue;
        const found = this.#owner[y * this.#columns + x]!;
        if (found !== 0 && found !== owner) return true;
      }
    }
    return false;
  }
}
