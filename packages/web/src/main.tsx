import { effect } from '@preact/signals';
import { openDesk } from './openDesk.ts';
import type { PageName } from './pages.ts';
import { followLinks, page } from './shell/place.ts';
import { light } from './shell/remembered.ts';
import { askFirst } from './state/first.ts';
import { pageTitle, SHELL } from './shell/words.ts';

/** A page's code: puts itself into `root`, and gives what takes it away again. `drop` is for a page that is not opened after all. */
interface PageCode {
  readonly open: (root: HTMLElement) => Promise<() => void>;
  readonly drop?: () => void;
}

/** Each page's code comes when it is turned to. */
const CODE: { readonly [P in PageName]: () => Promise<PageCode> } = {
  players: () => import('./players/open.tsx'),
  carries: () => import('./carries/open.tsx'),
  ground: () => import('./ground/open.tsx'),
  plan: planCode,
  session: () => import('./session/open.tsx'),
  round: () => import('./round/open.tsx'),
  ledger: () => import('./ledger/open.tsx'),
};

/** The worker takes longest, so it is started first, and asked, while the page's own code comes. */
async function planCode(): Promise<PageCode> {
  const opened = openDesk();
  const first = askFirst(opened.desk);
  const { open } = await import('./startPage.tsx');
  return { open: (root) => open(root, opened, first), drop: opened.close };
}

function follow(root: HTMLElement): void {
  let close: () => void = () => undefined;
  let turn = 0;
  const turnTo = async (wanted: PageName): Promise<void> => {
    const now = ++turn;
    try {
      const code = await CODE[wanted]();
      if (now !== turn) {
        code.drop?.();
        return;
      }
      close();
      close = () => undefined;
      const opened = await code.open(root);
      if (now === turn) close = opened;
      else opened();
    } catch {
      if (now === turn) root.textContent = SHELL.noPage;
    }
  };
  effect(() => {
    document.title = pageTitle(page.value);
    void turnTo(page.value);
  });
}

const root = document.getElementById('page');
if (root !== null) {
  effect(() => {
    document.documentElement.dataset['light'] = light.value;
  });
  followLinks();
  follow(root);
}
