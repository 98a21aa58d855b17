import type { Text } from './marks.ts';
import { inRect, type Quad, quadOf, quadsMeet, type Rect } from './plane/quad.ts';
import { boxOfText } from './text/measure.ts';

/** Which room on a sheet is taken. What is placed first has it. */
export class Labels {
  readonly #inner: Rect;
  readonly #taken: Quad[] = [];

  constructor(inner: Rect) {
    this.#inner = inner;
  }

  take(quad: Quad): void {
    this.#taken.push(quad);
  }

  takeRect(rect: Rect): void {
    this.#taken.push(quadOf(rect));
  }

  isFree(quad: Quad): boolean {
    return quad.every((p) => inRect(p, this.#inner)) && !this.#taken.some((other) => quadsMeet(quad, other));
  }

  /** Takes the room of some texts that belong together if all of it is free, and says whether it was. */
  place(texts: readonly Text[]): boolean {
    const quads = texts.map((t) => boxOfText(t));
    if (!quads.every((q) => this.isFree(q))) return false;
    this.#taken.push(...quads);
    return true;
  }

  /** The first of some candidates that finds room. */
  first<T extends readonly Text[]>(candidates: Iterable<T>): T | undefined {
    for (const texts of candidates) if (this.place(texts)) return texts;
    return undefined;
  }
}
