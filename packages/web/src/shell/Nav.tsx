import { HEAD_PAGES, UNDER } from '../pages.ts';
import { SpotMark } from '../view/Sign.tsx';
import { hrefOf, page, player } from './place.ts';
import { SHELL } from './words.ts';

export const Brand = () => (
  <p class="brand">
    <SpotMark line="ink" />
    {SHELL.name}
  </p>
);

/** The pages, the present one upright over a bar. The player goes along. */
export const Nav = () => (
  <nav id="pages" aria-label={SHELL.pages}>
    <ul>
      {HEAD_PAGES.map((name) => (
        <li key={name}>
          <a
            href={hrefOf(name, player.value)}
            aria-current={name === page.value ? 'page' : name === UNDER[page.value] ? 'true' : undefined}
          >
            {SHELL.pageNames[name]}
          </a>
        </li>
      ))}
    </ul>
  </nav>
);
