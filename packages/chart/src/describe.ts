import type { Choice, HoleGround } from '@leeway/engine';
import { lengthM, YARD_M } from '@leeway/engine';
import type { Charted } from './charted.ts';
import type { Contour } from './contour/contours.ts';
import type { Title } from './frame/title.ts';
import type { Units } from './sheet.ts';

const unitWords = (units: Units): string => (units === 'yd' ? 'yards' : 'metres');
const whole = (metres: number, units: Units): number => Math.round(metres / (units === 'yd' ? YARD_M : 1));

const nameOf = (ground: HoleGround): string => ground.name ?? `Hole ${ground.hole}`;

const holeLine = (ground: HoleGround, units: Units): string =>
  `Hole ${ground.hole}, par ${ground.par}, ${whole(lengthM(ground.line), units)} ${unitWords(units)}`;

/** The words of the title block. */
export function titleOf(charted: Charted, units: Units): Title {
  const { ground } = charted;
  return {
    course: charted.course,
    name: nameOf(ground),
    hole: holeLine(ground, units),
    notes: [
      ...(charted.strokesAtRest === undefined ? [] : ['Contours: expected strokes to hole out']),
      ...(charted.choices.length === 0 ? [] : [`Arms: room in ${unitWords(units)}, to lose 0.1 · 0.25`]),
      ...(charted.attribution === undefined ? [] : [charted.attribution]),
    ],
  };
}

/** The sheet told in words, for whoever cannot see it: the same facts in the same order as the plan gives them. */
export function describe(
  charted: Charted,
  contours: readonly Contour[],
  units: Units,
): { readonly title: string; readonly description: string } {
  const { ground, choices } = charted;
  const on = charted.course === undefined ? '' : ` of ${charted.course}`;
  const shown = choices.flatMap((choice, i) =>
    charted.shot === undefined || charted.shot === i ? [shotWords(choice, i, units)] : [],
  );
  const strokes = contours.filter((c) => c.weight !== 'hair').map((c) => c.strokes);
  const lines =
    strokes.length === 0
      ? []
      : [
          `Contours of expected strokes to hole out run from ${Math.min(...strokes).toFixed(1)} to ${Math.max(...strokes).toFixed(1)}.`,
        ];
  const sheet =
    charted.shot === undefined ? `Chart of ${nameOf(ground)}` : `${nameOf(ground)}, shot ${charted.shot + 1}`;
  return {
    title: `${sheet}${on}`,
    description: [`${holeLine(ground, units)}.`, ...groundWords(ground), ...shown, ...lines, ...creditOf(charted)].join(
      ' ',
    ),
  };
}

/** The index chart told in words. */
export function indexWords(charted: Charted, units: Units): { readonly title: string; readonly description: string } {
  const { ground, choices, shot = 0 } = charted;
  const finishes = choices.map((choice, i) => `shot ${i + 1} finishes ${whole(choice.finishesM, units)} ${units} on`);
  const shown = choices.length > 1 ? `; shot ${shot + 1} is the one shown` : '';
  return {
    title: `${nameOf(ground)}, all shots`,
    description:
      choices.length === 0 ? holeLine(ground, units) : `${holeLine(ground, units)}: ${finishes.join(', ')}${shown}.`,
  };
}

const creditOf = (charted: Charted): string[] => (charted.attribution === undefined ? [] : [charted.attribution]);

const KINDS = [
  ['bunker', 'bunker'],
  ['penalty', 'water'],
  ['recovery', 'trees or scrub'],
] as const;

/** What lies on the hole: "On it: 4 bunkers, Tolvane Creek." */
function groundWords(ground: HoleGround): string[] {
  const found = KINDS.flatMap(([surface, word]) => {
    const areas = ground.areas.filter((a) => a.surface === surface);
    const names = [...new Set(areas.flatMap((a) => (a.name === undefined ? [] : [a.name])))];
    const unnamed = areas.filter((a) => a.name === undefined).length;
    const counted = word === 'bunker' ? `${unnamed} ${unnamed === 1 ? 'bunker' : 'bunkers'}` : word;
    return [...names, ...(unnamed === 0 ? [] : [counted])];
  });
  return found.length === 0 ? [] : [`On it: ${found.join(', ')}.`];
}

function shotWords(choice: Choice, index: number, units: Units): string {
  const { option } = choice.answer.priced;
  const unit = units;
  const [first, second] = choice.room;
  const arm = (word: string, key: 'leftM' | 'rightM' | 'shortM' | 'longM'): string[] => {
    const near = first?.[key];
    if (near === undefined || near === null) return [];
    const far = second?.[key];
    return [`${word} ${whole(near, units)}${far === null || far === undefined ? '' : ` and ${whole(far, units)}`}`];
  };
  const arms = [...arm('left', 'leftM'), ...arm('right', 'rightM'), ...arm('short', 'shortM'), ...arm('long', 'longM')];
  const room = arms.length === 0 ? '' : `, room before 0.1 and 0.25 are lost: ${arms.join(', ')} ${unit}`;
  return (
    `Shot ${index + 1}, from the ${choice.from.lie}: ${option.club}, ${option.swing}, lands ${whole(choice.landsM, units)} and ` +
    `finishes ${whole(choice.finishesM, units)} ${unit} out; ${choice.answer.strokes.toFixed(2)} strokes expected${room}.`
  );
}
