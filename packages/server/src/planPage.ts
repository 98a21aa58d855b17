import type { HoleDocument, PlanDocument } from '@leeway/contract';
import { lengthWords, strokesWords } from '@leeway/engine';
import { html, type Html } from './html.ts';
import { shotSection, sureWords } from './shotSection.ts';

/** A plan as a page that needs no script: a title block, then the shots in the order they are played. Yards, as in `leeway plan`. */
export function planPage(plan: PlanDocument): string {
  const page = html`<!doctype html>
    <html lang="en">
      <head>
        <meta charset="utf-8" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <title>Leeway: plan for ${plan.player.name}</title>
        <link rel="icon" href="/mark.svg" />
        <link rel="stylesheet" href="/style.css" />
      </head>
      <body>
        <header>
          <p class="name"><img src="/mark.svg" alt="" />Leeway</p>
          <p>${plan.player.name} <span class="small">calm air, level ground, ${plan.day.temperatureC} °C</span></p>
        </header>
        <main>${plan.holes.map((hole) => holeArticle(hole, plan.course))}</main>
        <footer class="small">
          <p>
            Nobody in range before you play; shout at once when a ball goes astray; off the course when lightning is
            about. Warm up, and stop at pain. The committee, its local rules and the Rules of Golf come first.
          </p>
          <p>${plan.attribution ?? 'The hole and the player are made up.'}</p>
        </footer>
      </body>
    </html> `;
  return page.markup;
}

function holeArticle(hole: HoleDocument, course: string | undefined): Html {
  const heading = hole.name ?? `Hole ${hole.hole}`;
  return html`<article>
    <div class="title">
      ${course === undefined ? undefined : html`<p class="course">${course}</p>`}
      <h1>${heading}</h1>
      <p>
        Hole ${hole.hole}, par ${hole.par}${hole.parGuessed === true ? ' (from its length)' : ''},
        ${lengthWords(hole.lengthM, 'yd')}
      </p>
      <p class="figure">
        ${strokesWords(hole.expectedStrokes)} strokes expected${sureWords(hole.expectedStrokes, hole.doubt)}
      </p>
    </div>
    <div class="shots">${hole.shots.map((shot, i) => shotSection(shot, i))}</div>
    ${hole.endsEarly === undefined ? undefined : html`<p>The plan ends here: ${hole.endsEarly}.</p>`}
  </article>`;
}
