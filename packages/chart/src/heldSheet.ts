import type { HoleGround } from '@leeway/engine';
import { type ContourGrid, contourGrid } from './contour/lieGrid.ts';
import { findRoom, type Room, roomHides, type Wanted } from './frame/room.ts';
import { type Cover, coverOf } from './ground/cover.ts';
import { groundMarks } from './ground/groundMarks.ts';
import type { Mark, Xy } from './marks.ts';
import type { Sheet } from './sheet.ts';

/** A sheet with all that does not depend on flag and choice: how its ground is covered, its marks, the grid of its contours, and its blocks. */
export class HeldSheet {
  readonly sheet: Sheet;
  readonly cover: Cover;
  /** The marks of the ground alone. */
  readonly ground: readonly Mark[];
  #grid: ContourGrid | undefined;
  #room: { readonly found: Room; readonly wanted: Wanted } | undefined;

  constructor(ground: HoleGround, sheet: Sheet) {
    this.sheet = sheet;
    this.cover = coverOf(ground, sheet);
    this.ground = groundMarks(sheet, this.cover);
  }

  get grid(): ContourGrid {
    return (this.#grid ??= contourGrid(this.sheet, this.cover));
  }

  /** Where title block and rose stand: where they stood before, unless a line of the play has come under one of them or they have grown. */
  roomFor(play: { readonly lines: readonly Xy[]; readonly balls: readonly Xy[] }, wanted: Wanted): Room {
    const held = this.#room;
    const same = held !== undefined && JSON.stringify(held.wanted) === JSON.stringify(wanted);
    if (same && !play.lines.some((q) => roomHides(held.found, q))) return held.found;
    const found = findRoom(this.sheet, this.cover, [...play.lines, ...play.balls], wanted);
    this.#room = { found, wanted };
    return found;
  }
}
