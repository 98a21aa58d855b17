/** The pages of the running head, in its order. */
export const HEAD_PAGES = ['players', 'carries', 'ground', 'plan', 'ledger'] as const;
/** All pages there are, and the address of each. The server answers every one of them with the app. */
export const PAGES = [...HEAD_PAGES, 'session', 'round'] as const;
export type PageName = (typeof PAGES)[number];

/** The page of the running head that another stands under: it is turned to from there. */
export const UNDER: { readonly [P in PageName]?: (typeof HEAD_PAGES)[number] } = { session: 'carries', round: 'plan' };

export const PAGE_PATHS: { readonly [P in PageName]: string } = {
  players: '/players',
  carries: '/carries',
  ground: '/ground',
  plan: '/',
  session: '/session',
  round: '/round',
  ledger: '/ledger',
};

/** The page at a path; the Plan page at any other. */
export const pageAt = (path: string): PageName => PAGES.find((page) => PAGE_PATHS[page] === path) ?? 'plan';
