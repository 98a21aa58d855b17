/** The pages there are, in the order of the running head, and the address of each. The server answers every one of them with the app. */
export const PAGES = ['players', 'carries', 'ground', 'plan'] as const;
export type PageName = (typeof PAGES)[number];

export const PAGE_PATHS: { readonly [P in PageName]: string } = {
  players: '/players',
  carries: '/carries',
  ground: '/ground',
  plan: '/',
};

/** The page at a path; the Plan page at any other. */
export const pageAt = (path: string): PageName => PAGES.find((page) => PAGE_PATHS[page] === path) ?? 'plan';
