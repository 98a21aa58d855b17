import { Head } from '../shell/Head.tsx';
import { hrefOf } from '../shell/place.ts';
import { clean, remember } from '../shell/remembered.ts';
import { WORDS } from '../words.ts';

/** The Plan page before there is a player and a course: what to do next. */
export const NothingToPlan = () => (
  <>
    <Head />
    <main class="page">
      <h1>{WORDS.plan}</h1>
      <div class="nothing">
        <p>{WORDS.nothing}</p>
        <p>{WORDS.nothingWhy}</p>
        <div class="row">
          <a class="act first" href={hrefOf('players', undefined)}>
            {WORDS.toPlayers}
          </a>
          <a class="act" href={hrefOf('ground', undefined)}>
            {WORDS.toGround}
          </a>
        </div>
        {clean.value ? (
          <div class="row">
            <button
              type="button"
              class="link"
              onClick={() => {
                remember({ clean: false });
                location.assign('/');
              }}
            >
              {WORDS.madeUpBack}
            </button>
          </div>
        ) : undefined}
      </div>
    </main>
  </>
);

/** One click from the made-up course to a start with nothing but one's own. */
export const StartClean = () =>
  clean.value ? null : (
    <a class="link" href={hrefOf('players', undefined)} onClick={() => remember({ clean: true })}>
      {WORDS.startClean}
    </a>
  );
