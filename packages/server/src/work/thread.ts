import { parentPort, workerData } from 'node:worker_threads';
import { accountRound } from './accountRound.ts';
import { fitShots } from './fitShots.ts';
import { planHoles } from './planHoles.ts';
import type { Said, Work } from './inThread.ts';

/** The thread that one piece of long work is done in: it is told what, says how far it has come, and last what came of it. */
const say = (said: Said): void => parentPort?.postMessage(said);
const work = workerData as Work;

if (work.task === 'fit') say({ outcome: fitShots(work.player, work.balls, work.approaches) });
else if (work.task === 'plan') say({ outcome: planHoles(work.asked, (done, total) => say({ done, total })) });
else say({ outcome: accountRound(work.asked, (done, total) => say({ done, total })) });
