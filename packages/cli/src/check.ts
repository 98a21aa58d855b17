import { type Fault, wordFault } from '@leeway/contract';
import { checkBytes } from './checkBytes.ts';
import { type Command, type Given, type Io, Usage } from './command.ts';
import { CAP_BYTES, readBytesCapped } from './files.ts';

/** `leeway check`: what any of the files is, and what is wrong with it. */
export const check: Command = {
  name: 'check',
  summary: 'read player, shot and ground files and list their faults',
  usage: ['leeway check FILE… [--json]'],
  examples: ['leeway check kim.json shots.csv course.osm', 'leeway check course.geojson --json'],
  options: {},
  run: runCheck,
};

/** The largest of the caps: what a file is shows only once it is read. */
const LARGEST_BYTES = Math.max(...Object.values(CAP_BYTES));

interface Checked {
  readonly file: string;
  readonly kind?: string;
  /** What was read, in a few words. */
  readonly holds?: string;
  readonly faults: readonly Fault[];
}

async function runCheck(given: Given, io: Io): Promise<number> {
  if (given.words.length === 0) throw new Usage('name a file to check');
  const checked: Checked[] = [];
  for (const file of given.words) {
    const bytes = await readBytesCapped(file, LARGEST_BYTES);
    checked.push(
      bytes.value === undefined ? { file, faults: bytes.faults } : { file, ...checkBytes(bytes.value, file) },
    );
  }
  const faults = checked.flatMap((one) => one.faults);
  for (const fault of faults) io.err(`${wordFault(fault)}\n`);
  if (given.flag('json')) io.out(`${JSON.stringify({ version: 1, files: checked })}\n`);
  else io.out(checked.map(summary).join(''));
  return faults.some(isRefused) ? 1 : 0;
}

function summary({ file, kind, holds, faults }: Checked): string {
  if (faults.some(isRefused)) return `${file}: refused${kind === undefined ? '' : `, as a ${kind} file`}\n`;
  const noticed = faults.length === 0 ? 'no faults' : `${faults.length} noticed`;
  return `${file}: ${[kind && `${kind} file`, holds, noticed].filter(Boolean).join('; ')}\n`;
}

const isRefused = (fault: Fault): boolean => fault.level === 'refused';
