import type { HoleGround } from '@leeway/engine';
import type { Charted } from './charted.ts';
import { HeldSheet } from './heldSheet.ts';
import { inOrder, LAYERS, type Scene } from './marks.ts';
import { sceneOn } from './sceneOn.ts';
import { type Format, holeSheet, type Sheet, shotSheet, type Size, type Units, unchosenSheet } from './sheet.ts';
import { type ShotMarks, shotMarks } from './shot/shotMarks.ts';

/** How a drawing is made, where it is not the plain sheet. */
export interface DrawingOptions {
  /** A phone's sheet: cropped to the end of the shot, larger figures, no title block, no rule on the right. */
  readonly phone?: boolean;
}

/**
 * The sheets of one hole at one size, held so that a moved flag or another choice costs less than a sheet drawn afresh: what depends on the ground and
 * the placing alone is worked out once a sheet. A sheet stays where it is as long as its ball does, wherever the flag goes.
 */
export class Drawing {
  readonly #areas: HoleGround['areas'];
  readonly #format: Format;
  readonly #held = new Map<number | 'unchosen' | undefined, HeldSheet>();
  #last: HeldSheet | undefined;

  constructor(ground: HoleGround, size: Size, units: Units, options: DrawingOptions = {}) {
    this.#areas = ground.areas;
    this.#format = { size, units, phone: options.phone ?? false };
  }

  /**
   * A hole, or one shot of it, as a sheet: plain marks in px of paper, in the order they are drawn. The chosen shot lies straight up. The same input
   * gives the same marks, but for where a held sheet lies. Throws a RangeError when `shot` is not one of the choices, or when the ground is
   * another than the drawing was made for.
   */
  scene(charted: Charted): Scene {
    if (charted.ground.areas !== this.#areas) throw new RangeError('this drawing is of another ground');
    const shots = charted.choices.map(shotMarks);
    const shown = shots[charted.shot ?? 0];
    if (charted.shot !== undefined && !shown) throw new RangeError(`no shot ${charted.shot} in this plan`);
    const held = this.#hold(charted, shown);
    const changedFrom = this.#last === held ? 'contours' : LAYERS[0];
    this.#last = held;
    const { marks, rose, words } = sceneOn(held, charted, shots, shown);
    const { placing } = held.sheet;
    return {
      ...this.#format.size,
      placing,
      changedFrom,
      ...(rose && { rose }),
      ...words,
      marks: inOrder([...held.ground, ...marks]),
    };
  }

  #hold({ ground, shot, chooseFrom }: Charted, shown: ShotMarks | undefined): HeldSheet {
    const key = chooseFrom === undefined ? shot : 'unchosen';
    const held = this.#held.get(key);
    const ball = chooseFrom?.at ?? (shot === undefined || !shown ? ground.ball : shown.choice.from.at);
    if (held && held.sheet.ball.eastM === ball.eastM && held.sheet.ball.northM === ball.northM) return held;
    const made = new HeldSheet(ground, this.#sheet({ ground, shot, chooseFrom }, shown));
    this.#held.set(key, made);
    return made;
  }

  #sheet(
    {
      ground,
      shot,
      chooseFrom,
    }: Pick<Charted, 'ground'> & {
      readonly shot: number | undefined;
      readonly chooseFrom: Charted['chooseFrom'] | undefined;
    },
    shown: ShotMarks | undefined,
  ): Sheet {
    if (chooseFrom !== undefined) return unchosenSheet(ground, chooseFrom.at, this.#format);
    return shot === undefined || !shown ? holeSheet(ground, this.#format) : shotSheet(ground, shown, this.#format);
  }
}
