import type { Shelf } from '@leeway/contract';
import { openDesk } from './openDesk.ts';
import { startPage } from './startPage.tsx';
import { WORDS } from './words.ts';

/** Headings are set in this; the page waits a little for it, so that nothing moves when it comes. */
const FIRST_FONTS = [`400 37px 'Libre Caslon Text'`, `600 46px 'Barlow Semi Condensed'`];
const FONTS_MS = 400;

async function open(page: HTMLElement): Promise<void> {
  const desk = openDesk();
  const fonts = Promise.all(FIRST_FONTS.map((font) => document.fonts.load(font)));
  const patience = new Promise((then) => setTimeout(then, FONTS_MS));
  const response = await fetch('/api/shelf');
  if (!response.ok) throw new Error(WORDS.noShelf);
  const shelf = (await response.json()) as Shelf;
  await startPage(page, desk, shelf, Promise.race([fonts, patience]));
}

const page = document.getElementById('page');
if (page !== null) {
  open(page).catch(() => {
    page.textContent = WORDS.noShelf;
  });
}
