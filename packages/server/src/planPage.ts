import { setTimeout as after } from 'node:timers/promises';
import type { HoleDocument, PlanDocument } from '@leeway/contract';
import { lengthWords, strokesWords } from '@leeway/engine';
import { html, type Html } from './html.ts';
import { shotSection, sureWords } from './shotSection.ts';

/** A plan that takes longer than this is announced before it comes. */
const PATIENCE_MS = 150;

/**
 * The page of a plan in the pieces that are sent as they are ready: what can be shown at once, a word that the hole is being solved if that takes
 * a while (the style hides it when the plan follows), and the plan: a title block, then the shots in the order they are played. Yards, as in
 * `leeway plan`. It needs no script. When the plan fails the page says so; what went wrong goes to `told`.
 */
export async function* planPage(plan: Promise<PlanDocument>, told: (error: unknown) => void): AsyncGenerator<string> {
  yield OPENING;
  const early = await Promise.race([plan.catch(() => undefined), after(PATIENCE_MS)]);
  if (early === undefined) yield WAITING.markup;
  try {
    yield body(await plan).markup;
  } catch (error) {
    told(error);
    yield FAILED.markup;
  }
}

/** The end tags of body and html may be left out, so the page is whole at every piece. */
const OPENING = `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8" />
<meta name="viewport" content="width=device-width, initial-scale=1" />
<title>Leeway: the plan of a hole</title>
<link rel="icon" href="/mark.svg" />
<link rel="stylesheet" href="/style.css" />
</head>
<body>
`;

const WAITING = html`<p class="waiting" role="status">
  Solving the hole. The plan appears here as soon as it is ready.
</p>`;

const FAILED = html`<header><p class="name">Leeway</p></header>
  <main><p>The plan could not be made.</p></main>`;

const body = (plan: PlanDocument): Html => html`
  <header>
    <p class="name"><img src="/mark.svg" alt="" />Leeway</p>
    <p>${plan.player.name} <span class="small">calm air, level ground, ${plan.day.temperatureC} °C</span></p>
  </header>
  <main>${plan.holes.map((hole) => holeArticle(hole, plan.course))}</main>
  <footer class="small">
    <p>
      Nobody in range before you play; shout at once when a ball goes astray; off the course when lightning is about.
      Warm up, and stop at pain. The committee, its local rules and the Rules of Golf come first.
    </p>
    <p>${plan.attribution ?? 'The hole and the player are made up.'}</p>
  </footer>
`;

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
