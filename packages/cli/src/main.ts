import { readFileSync } from 'node:fs';
import { COMMON_OPTIONS, parseArguments } from './arguments.ts';
import type { Command, Io } from './command.ts';
import { Usage } from './command.ts';
import { helpOf, helpOfAll } from './help.ts';
import { nearest } from './nearest.ts';

/** Each command's module is loaded only when it is asked for, so that a start is quick. */
const COMMANDS: { readonly [name: string]: () => Promise<Command> } = {
  carries: async () => (await import('./carries.ts')).carries,
  plan: async () => (await import('./plan.ts')).plan,
  shot: async () => (await import('./shot.ts')).shot,
  fly: async () => (await import('./fly.ts')).fly,
  chart: async () => (await import('./chart.ts')).chart,
  ledger: async () => (await import('./ledger.ts')).ledger,
  check: async () => (await import('./check.ts')).check,
  serve: async () => (await import('./serve.ts')).serve,
  keep: async () => (await import('./keep.ts')).keep,
  players: async () => (await import('./players.ts')).players,
  export: async () => (await import('./export.ts')).exportRecord,
  backup: async () => (await import('./backup.ts')).backup,
  restore: async () => (await import('./restore.ts')).restore,
  erase: async () => (await import('./erase.ts')).erase,
  work: async () => (await import('./work.ts')).work,
};

const DONE = 0;
const WRONG_USAGE = 2;
/** EX_SOFTWARE of BSD's sysexits: a fault of the program itself. */
const OWN_FAULT = 70;

/** Runs one command line and gives its exit code: 0 done, 1 input refused, 2 wrong usage, 70 a fault of Leeway's own. */
export async function main(args: readonly string[], io: Io): Promise<number> {
  const [first = '', ...rest] = args[0] === 'help' ? [...args.slice(1), '--help'] : args;
  try {
    if (first === '--help' || first === '-h') {
      io.out(helpOfAll(await Promise.all(Object.values(COMMANDS).map((load) => load()))));
      return DONE;
    }
    if (first === '--version') {
      io.out(`leeway ${version()}\n`);
      return DONE;
    }
    const load = Object.hasOwn(COMMANDS, first) ? COMMANDS[first] : undefined;
    if (!load) return wrongUsage('leeway', noCommand(first), io);
    return await runCommand(await load(), rest, io);
  } catch (error) {
    io.err(`leeway: a fault of Leeway's own, not of your files: ${messageOf(error)}${traceHint()}\n`);
    if (process.env['LEEWAY_TRACE'] === '1') io.err(`${error instanceof Error ? error.stack : String(error)}\n`);
    return OWN_FAULT;
  }
}

async function runCommand(command: Command, args: readonly string[], io: Io): Promise<number> {
  if (args.includes('--help') || args.includes('-h')) {
    io.out(helpOf(command));
    return DONE;
  }
  try {
    return await command.run(parseArguments(args, { ...command.options, ...COMMON_OPTIONS }), io);
  } catch (error) {
    if (error instanceof Usage) return wrongUsage(`leeway ${command.name}`, error.message, io);
    throw error;
  }
}

function wrongUsage(who: string, message: string, io: Io): number {
  const said = oneLine(message);
  io.err(`${who}: ${said}${/[.?]$/.test(said) ? '' : '.'} See ${who} --help\n`);
  return WRONG_USAGE;
}

function noCommand(typed: string): string {
  const names = Object.keys(COMMANDS);
  if (typed === '') return `name a command: ${names.join(', ')}`;
  const near = nearest(typed, names);
  return `no command "${typed}"; ${near === undefined ? `there are ${names.join(', ')}` : `did you mean ${near}?`}`;
}

function version(): string {
  const text: unknown = JSON.parse(readFileSync(new URL('../package.json', import.meta.url), 'utf8'));
  return typeof text === 'object' && text !== null && 'version' in text ? String(text.version) : 'unknown';
}

const oneLine = (text: string): string => text.replace(/\p{Cc}+/gu, ' ').trim();

const messageOf = (error: unknown): string => oneLine(error instanceof Error ? error.message : String(error));

const traceHint = (): string =>
  process.env['LEEWAY_TRACE'] === '1' ? '' : ' (LEEWAY_TRACE=1 shows where; please report it)';
