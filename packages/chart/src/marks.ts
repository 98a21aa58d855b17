/** A place on the sheet, px from its upper left corner, y down. */
export interface Xy {
  readonly x: number;
  readonly y: number;
}

/** A line of places; closed ones do not repeat the first. */
export type Line = readonly Xy[];

/** What a mark is drawn in: the name of an ink or tint. A painter says which colour that is. */
export type Role =
  | 'paper'
  | 'sheet'
  | 'ink'
  | 'ink-2'
  | 'contour'
  | 'shore'
  | 'whins'
  | 'stipple'
  | 'buoy'
  | 'rough'
  | 'green'
  | 'sea'
  | 'sand'
  | 'scrub';

/** The layers of a sheet in the order they are drawn. The ground's own paint order is settled before: its areas do not overlap. */
export const LAYERS = [
  'tint',
  'trees',
  'fairway',
  'green',
  'tee',
  'sand',
  'water',
  'bounds',
  'contours',
  'flagline',
  'lines',
  'pattern',
  'arms',
  'signs',
  'names',
  'frame',
] as const;
export type Layer = (typeof LAYERS)[number];

interface Inked {
  readonly layer: Layer;
  readonly role: Role;
  /** 1 unless said. */
  readonly opacity?: number;
}

/** Closed rings filled by the even-odd rule. */
export interface Fill extends Inked {
  readonly kind: 'fill';
  readonly rings: readonly Line[];
}

/** Lines with round caps and joins. Dashes and gaps are already cut out of them. */
export interface Stroke extends Inked {
  readonly kind: 'stroke';
  readonly lines: readonly Line[];
  readonly closed: boolean;
  readonly widthPx: number;
  /** On a contour: the expected strokes to hole out along it. */
  readonly strokes?: number;
}

/** Solid dots, or open rings where `lineWidthPx` is given. */
export interface Dots extends Inked {
  readonly kind: 'dots';
  readonly at: readonly Xy[];
  readonly radiusPx: number;
  readonly lineWidthPx?: number;
}

export interface Font {
  readonly face: 'serif' | 'sans';
  readonly weight: 400 | 500 | 600 | 700;
  readonly italic: boolean;
  readonly sizePx: number;
  /** Extra space after each letter. */
  readonly trackingPx: number;
}

/** One line of words, its middle or its end at `at` on the base line, turned clockwise by `turnRad` about it. */
export interface Text extends Inked {
  readonly kind: 'text';
  readonly text: string;
  readonly font: Font;
  readonly at: Xy;
  readonly anchor: 'start' | 'middle' | 'end';
  readonly turnRad: number;
  /** Width of a rim of the sheet's colour round the letters. */
  readonly haloPx: number;
}

export type Mark = Fill | Stroke | Dots | Text;

/** How ground lies on a sheet: where the origin of its plane is, the scale, and the bearing that is straight up. */
export interface Placing {
  readonly origin: Xy;
  readonly pxPerM: number;
  readonly upRad: number;
}

/** A drawn sheet: its marks in the order of `LAYERS`, and the same told in words. */
export interface Scene {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly placing: Placing;
  /** Where the middle of the rose stands, and how large it is against a full-sized one; not on the small chart of a hole. */
  readonly rose?: { readonly at: Xy; readonly scale: number };
  /**
   * The first layer that may differ from the scene made before it by the same drawing: `contours` while its sheet is held, since the marks of the ground come
   * first and stay; else, and where it is not said, the first of all.
   */
  readonly changedFrom?: Layer;
  readonly title: string;
  readonly description: string;
  readonly marks: readonly Mark[];
}

/** Marks in the order that their layers are drawn; within a layer as they came. */
export const inOrder = (marks: readonly Mark[]): Mark[] =>
  marks.toSorted((a, b) => LAYERS.indexOf(a.layer) - LAYERS.indexOf(b.layer));
