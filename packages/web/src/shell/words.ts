import type { Units } from '@leeway/engine';
import type { PageName } from '../pages.ts';

/** Words that every page shares. Each page has a file of its own for the rest. */
export const SHELL = {
  name: 'Leeway',
  pages: 'Pages',
  pageNames: {
    players: 'Players',
    carries: 'Carries',
    ground: 'Ground',
    plan: 'Plan',
    session: 'Session',
    round: 'Round plan',
    ledger: 'Ledger',
  } satisfies { readonly [P in PageName]: string },
  noPage: 'This page could not be had from the server. Load it again.',
  units: 'Units',
  unitNames: { yd: 'yards', m: 'metres' } satisfies { readonly [U in Units]: string },
  light: 'Light',
  lightNames: { paper: 'paper', sun: 'sun' },
} as const;

export const pageTitle = (page: PageName): string => `${SHELL.pageNames[page]} · ${SHELL.name}`;

const MONTHS = ['January', 'February', 'March', 'April', 'May', 'June'];
const LATER = ['July', 'August', 'September', 'October', 'November', 'December'];

/** "3 June 2025" of an ISO date; anything else as it stands. */
export function dateWords(date: string): string {
  const [, year, month, day] = /^(\d{4})-(\d{2})-(\d{2})/.exec(date) ?? [];
  const name = [...MONTHS, ...LATER][Number(month) - 1];
  return name === undefined ? date : `${Number(day)} ${name} ${year}`;
}

export const ballsWords = (n: number): string => `${n} ball${n === 1 ? '' : 's'}`;
