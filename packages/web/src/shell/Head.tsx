import { useSignal } from '@preact/signals';
import type { ComponentChildren } from 'preact';
import { OneOf } from '../view/OneOf.tsx';
import { Brand, Nav } from './Nav.tsx';
import { page } from './place.ts';
import { light, remember, units } from './remembered.ts';
import { SHELL } from './words.ts';

/** The running head of a page of words: whose page it is stands at the right. On a phone the pages are behind a pull on the title. */
export function Head({ children }: { readonly children?: ComponentChildren }) {
  const pulled = useSignal(false);
  return (
    <header class="head" data-pulled={pulled.value}>
      <Brand />
      <p class="title">
        <button
          type="button"
          aria-expanded={pulled.value}
          aria-controls="pages"
          onClick={() => (pulled.value = !pulled.value)}
        >
          <i>{SHELL.pageNames[page.value]}</i>
        </button>
        <span>{children}</span>
      </p>
      <Nav />
      <div class="choices">
        <p class="whose">{children}</p>
        <OneOf
          name="units"
          legend={SHELL.units}
          of={SHELL.unitNames}
          value={units.value}
          choose={(next) => remember({ units: next })}
        />
        <OneOf
          name="light"
          legend={SHELL.light}
          of={SHELL.lightNames}
          value={light.value}
          choose={(next) => remember({ light: next })}
        />
      </div>
    </header>
  );
}
