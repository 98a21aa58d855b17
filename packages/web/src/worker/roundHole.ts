import { dayDocument, holeDocument, holeLine, roundPart } from '@leeway/contract';
import type { Turn } from '@leeway/desk';
import { canPlay, type HoleGround, onGreen, pacedFlag, planSteps, solveHole, zoneOf, zonePlace } from '@leeway/engine';
import type { Pin, RoundHoleAnswer, RoundHoleAsk } from '../round/asks.ts';
import type { Fetch } from './fetched.ts';
import { dayOf } from './openHole.ts';
import { readHole } from './readHole.ts';

/** Plans one hole of a round from the tee, with its chances and its line. Throws with a line to show when the flag is not on the green or nothing can be played. */
export async function roundHole(
  ask: RoundHoleAsk,
  fetched: Fetch,
  turn: Pick<Turn, 'pause'>,
): Promise<RoundHoleAnswer> {
  const { ground: mapped, player, attribution } = await readHole(ask, fetched);
  if (!canPlay(player)) throw new Error(`${ask.player.name} has no pattern from the tee, or none from the fairway`);
  const ground = ask.pin === undefined ? mapped : withPin(mapped, ask.pin);
  const day = dayOf(ask.wind);
  const steps = planSteps(solveHole(ground, player, day), player, [
    { state: { at: ground.ball, lie: 'tee' }, dropped: false },
  ]);
  for (;;) {
    // one shot after the other, so that the page can stop it
    // oxlint-disable-next-line no-await-in-loop
    await turn.pause();
    const step = steps.next();
    if (step.done !== true) continue;
    const plan = step.value;
    const document = holeDocument(plan, ask.units, undefined, true);
    const zones = plan.shots.map(({ choice }) => zoneOf(choice.answer.spot, ground.line, greenOf(ground)));
    return {
      plan: document,
      line: holeLine(document, zones, ask.units),
      part: roundPart(plan),
      day: dayDocument(day),
      ...(attribution === undefined ? {} : { attribution }),
    };
  }
}

const greenOf = ({ areas }: HoleGround) => areas.filter((area) => area.surface === 'green').map((area) => area.polygon);

function withPin(ground: HoleGround, pin: Pin): HoleGround {
  const green = greenOf(ground);
  const flag = pin.kind === 'zone' ? zonePlace(pin.zone, ground.line, green) : pacedFlag(pin, ground.line, green);
  if (flag === undefined || !onGreen(flag, green))
    throw new Error(`the flag of hole ${ground.hole} is not on its green`);
  return { ...ground, flag, flagFrom: 'given' };
}
