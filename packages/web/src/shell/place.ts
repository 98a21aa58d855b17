import { computed, signal } from '@preact/signals';
import { PAGE_PATHS, pageAt, PAGES, type PageName } from '../pages.ts';

/** What is open in the browser: path and search of its address. */
const address = signal({ path: location.pathname, search: location.search });

export const page = computed<PageName>(() => pageAt(address.value.path));
/** The player that the address names. */
export const player = computed(() => new URLSearchParams(address.value.search).get('player') ?? undefined);

const read = (): void => {
  address.value = { path: location.pathname, search: location.search };
};

/** The address of a page, for a player when there is one. */
export const hrefOf = (to: PageName, of: string | undefined, more: { readonly [key: string]: string } = {}): string => {
  const asked = new URLSearchParams({ ...(of === undefined ? {} : { player: of }), ...more }).toString();
  return `${PAGE_PATHS[to]}${asked === '' ? '' : `?${asked}`}`;
};

/** Turns to an address of the app without loading anything anew. */
export function go(href: string, how: 'push' | 'replace' = 'push'): void {
  if (how === 'push') history.pushState(null, '', href);
  else history.replaceState(null, '', href);
  read();
}

/** Follows the browser's own back and forward, and plain clicks on links between pages. */
export function followLinks(): void {
  addEventListener('popstate', read);
  document.addEventListener('click', (e) => {
    const link = e.target instanceof Element ? e.target.closest('a') : null;
    if (link === null || e.defaultPrevented || e.button !== 0 || e.metaKey || e.ctrlKey || e.shiftKey || e.altKey)
      return;
    const to = new URL(link.href);
    const ours = PAGES.some((name) => PAGE_PATHS[name] === to.pathname);
    if (to.origin !== location.origin || !ours || link.target !== '' || link.hasAttribute('download')) return;
    e.preventDefault();
    go(`${to.pathname}${to.search}`);
    scrollTo({ top: 0 });
  });
}
