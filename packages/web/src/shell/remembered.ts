import type { Units } from '@leeway/engine';
import { signal } from '@preact/signals';
import type { Light } from '../state/open.ts';

/** How this browser likes its pages; nothing about any player. */
const KEY = 'leeway-pages';

interface Liked {
  readonly units: Units;
  readonly light: Light;
  /** Without the made-up course and players. */
  readonly clean: boolean;
}

function liked(): Liked {
  try {
    const kept = JSON.parse(localStorage.getItem(KEY) ?? '{}') as {
      units?: unknown;
      light?: unknown;
      clean?: unknown;
    };
    return {
      units: kept.units === 'm' ? 'm' : 'yd',
      light: kept.light === 'sun' ? 'sun' : 'paper',
      clean: kept.clean === true,
    };
  } catch {
    return { units: 'yd', light: 'paper', clean: false };
  }
}

export const units = signal<Units>(liked().units);
export const light = signal<Light>(liked().light);
export const clean = signal(liked().clean);

/** Keeps them for the next page, as far as the browser lets. */
export function remember(next: Partial<Liked>): void {
  units.value = next.units ?? units.peek();
  light.value = next.light ?? light.peek();
  clean.value = next.clean ?? clean.peek();
  try {
    localStorage.setItem(KEY, JSON.stringify({ units: units.peek(), light: light.peek(), clean: clean.peek() }));
  } catch {
    // a browser that keeps nothing shows the usual next time
  }
}
