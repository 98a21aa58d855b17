import { planDocument } from '@leeway/contract';
import { type HolePlan, planBag, planHole, solveHole } from '@leeway/engine';
import { planNote } from './caddie.ts';
import type { Command, Given, Io } from './command.ts';
import { Usage } from './command.ts';
import { aimedStrokes, namedStrokes } from './planAlso.ts';
import { PLAN_OPTIONS, readPlanInput, refuse, tellFaults } from './planInput.ts';

/** `leeway plan`: a hole, or every hole of a file. */
export const plan: Command = {
  name: 'plan',
  summary: 'plan a hole or the round: club, swing and spot for each shot, and what the plain line would cost',
  usage: [
    'leeway plan --ground FILE --player FILE [--hole N] [--flag PLACE] [--also CLUB@PLACE] [the day] [--units yd|m] [--json]',
  ],
  examples: [
    'leeway plan --ground course.geojson --player kim.json',
    'leeway plan --ground course.osm --player kim.json --hole 7 --flag 16,7R',
    'leeway plan --ground course.osm --player kim.json --hole 7 --also "7-iron, three-quarter@16,7R" --json',
    'leeway plan --data ~/.leeway --ground "Tolvane Links" --player "Kim Aster" --hole 7',
  ],
  options: {
    ...PLAN_OPTIONS,
    bag: {
      kind: 'flag',
      help: 'weigh every club by solving the holes again without it: which to carry, which earn nothing; takes minutes',
    },
  },
  run: runPlan,
};

async function runPlan(given: Given, io: Io): Promise<number> {
  const also = given.texts('also');
  if (also.length > 0 && given.text('hole') === undefined) throw new Usage('--also needs --hole N');
  const input = await readPlanInput(given, io);
  if (input === undefined) return 1;
  const plans: HolePlan[] = [];
  const milliseconds: number[] = [];
  for (const ground of input.holes) {
    if (input.holes.length > 1) io.err(`hole ${ground.hole}: ${plans.length + 1} of ${input.holes.length}\n`);
    const from = { at: ground.ball, lie: 'tee' } as const;
    const named = namedStrokes(also, input.player, ground, from);
    if (named.value === undefined) {
      tellFaults(named.faults, io, input.groundPath);
      return 1;
    }
    const started = performance.now();
    const solution = solveHole(ground, input.player, input.day);
    milliseconds.push(performance.now() - started);
    const found = planHole(solution, input.player, aimedStrokes(named.value, solution, from));
    if (found.shots.length === 0) {
      refuse(
        io,
        'no-stroke',
        input.groundPath,
        `hole ${ground.hole}: no option from the tee`,
        'a player with a pattern from the tee',
      );
      return 1;
    }
    plans.push(found);
  }
  const bag = given.flag('bag')
    ? planBag(input.holes, input.player, input.day, (club) => io.err(`the bag without the ${club}\n`))
    : undefined;
  const { course, attribution } = input.ground;
  const document = planDocument(
    plans,
    {
      player: input.player.name,
      units: input.units,
      scores: true,
      ...(bag === undefined ? {} : { bag }),
      ...(course === undefined ? {} : { course }),
      ...(attribution === undefined ? {} : { attribution }),
    },
    given.flag('timings') ? milliseconds : [],
  );
  io.out(given.flag('json') ? `${JSON.stringify(document)}\n` : planNote(document, input.units));
  return 0;
}
