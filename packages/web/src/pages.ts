/** The pages of the running head, in its order. */
export const HEAD_PAGES = ['players', 'carries', 'ground', 'plan'] as const;
/** All pages there are, and the address of each. The server answers every one of them with the app. */
export const PAGES = [...HEAD_PAGES, 'session'] as const;
export type PageName = (typeof PAGES)[number];

export const PAGE_PATHS: { readonly [P in PageName]: string } = {
  players: '/players',
  carries: '/carries',
  ground: '/ground',
  plan: '/',
  session: '/session',
};

/** The page at a path; the Plan page at any other. */
export const pageAt = (path: string): PageName => PAGES.find((page) => PAGE_PATHS[page] === path) ?? 'plan';
