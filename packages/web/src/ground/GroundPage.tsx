import { Says, Wrong } from '../parts/Says.tsx';
import { Head } from '../shell/Head.tsx';
import { hrefOf, player } from '../shell/place.ts';
import { units } from '../shell/remembered.ts';
import { SHELL } from '../shell/words.ts';
import { MapFile } from './MapFile.tsx';
import { Numbers } from './Numbers.tsx';
import type { GroundState } from './state.ts';
import { GROUND, putsAway } from './words.ts';

/** The coach's courses, and how another comes in: by numbers, or from a map file. */
export function GroundPage({ state }: { readonly state: GroundState }) {
  return (
    <>
      <Head />
      <main class="page two">
        <section>
          <h1>{SHELL.pageNames.ground}</h1>
          <p class="lead">{GROUND.lead}</p>
          <Wrong fault={state.fault} />
          <Says done={state.done} />
          {state.noStore.value ? (
            <div class="nothing">
              <p>{GROUND.noStore}</p>
            </div>
          ) : (
            <Numbers key={units.value} state={state} />
          )}
        </section>
        <section class="aside">
          <h2>{GROUND.courses}</h2>
          <Courses state={state} />
          <h3>{GROUND.file}</h3>
          <MapFile state={state} />
        </section>
      </main>
    </>
  );
}

function Courses({ state }: { readonly state: GroundState }) {
  const { value: courses } = state.courses;
  if (courses === undefined) return <p class="small">{state.noStore.value ? '' : GROUND.fetching}</p>;
  if (courses.length === 0)
    return (
      <div class="nothing">
        <p>{GROUND.noCourses}</p>
        <p>{GROUND.noCoursesWhy}</p>
      </div>
    );
  return (
    <ul class="notes">
      {courses.map((course) => {
        const typed = course.file === 'numbers.geojson';
        return (
          <li key={course.id}>
            <p>
              <a href={hrefOf('plan', player.value, { ground: course.id })}>{course.name}</a>
            </p>
            <p class="small">{typed ? GROUND.typed : course.file}</p>
            <div>
              {typed ? (
                <button type="button" class="link" onClick={() => void state.openCourse(course)}>
                  {GROUND.more}
                </button>
              ) : undefined}{' '}
              <button
                type="button"
                class="link"
                aria-label={putsAway(course.name)}
                onClick={() => void state.putAway(course)}
              >
                {GROUND.remove}
              </button>
            </div>
          </li>
        );
      })}
    </ul>
  );
}
