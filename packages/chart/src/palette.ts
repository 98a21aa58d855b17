import type { Role } from './marks.ts';

/** The light a sheet is seen in: a page indoors, a page in bright sun, or black ink on white paper. */
export type Light = 'paper' | 'sun' | 'print';

/** The colour of every ink and tint, as `#rrggbb`. */
export type Palette = { readonly [R in Role]: string };

const WHITE = '#FFFFFF';
const BLACK = '#000000';

/** In sun every text and line stands out by 7 : 1 or more; the open dots of the rough carry none. Print has no tints: the hatches tell. */
export const PALETTES: { readonly [L in Light]: Palette } = {
  paper: {
    paper: '#F6F4EC',
    sheet: '#FCFBF6',
    ink: '#14222D',
    'ink-2': '#42525C',
    contour: '#2C6079',
    shore: '#3E7186',
    whins: '#56683F',
    stipple: '#8B7B4A',
    buoy: '#BF3A08',
    rough: '#F0E8CE',
    green: '#DCE7D3',
    sea: '#D3E3E7',
    sand: '#FAF3DF',
    scrub: '#E3E3C4',
  },
  sun: {
    paper: WHITE,
    sheet: WHITE,
    ink: BLACK,
    'ink-2': BLACK,
    contour: '#0E4A63',
    shore: '#0E4A63',
    whins: BLACK,
    stipple: '#777777',
    buoy: '#972A00',
    rough: WHITE,
    green: '#E3EDD9',
    sea: '#D6E6EC',
    sand: WHITE,
    scrub: WHITE,
  },
  print: {
    paper: WHITE,
    sheet: WHITE,
    ink: BLACK,
    'ink-2': '#333333',
    contour: '#222222',
    shore: '#333333',
    whins: '#333333',
    stipple: '#777777',
    buoy: BLACK,
    rough: WHITE,
    green: WHITE,
    sea: WHITE,
    sand: WHITE,
    scrub: WHITE,
  },
};
