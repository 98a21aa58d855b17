import { COMMON_OPTIONS } from './arguments.ts';
import type { Command, OptionSpec } from './command.ts';

/** The text of `leeway --help`: what Leeway is for, the commands, where to go on. */
export function helpOfAll(commands: readonly Command[]): string {
  return lines([
    'leeway: the way a player really hits the ball, turned into the choice that costs fewest strokes.',
    '',
    'Commands',
    ...columns(commands.map((c) => [c.name, c.summary])),
    '',
    'Examples',
    ...commands.flatMap((c) => c.examples.slice(0, 1)).map((example) => `  ${example}`),
    '',
    'leeway COMMAND --help tells the options of a command; leeway --version tells the version.',
    'Exit codes: 0 done, 1 the input was refused, 2 wrong usage.',
  ]);
}

/** The text of `leeway COMMAND --help`. */
export function helpOf(command: Command): string {
  return lines([
    `leeway ${command.name}: ${command.summary}`,
    '',
    ...command.usage,
    '',
    'Options',
    ...columns(Object.entries({ ...command.options, ...COMMON_OPTIONS }).map(([name, spec]) => option(name, spec))),
    '',
    'Examples',
    ...command.examples.map((example) => `  ${example}`),
  ]);
}

const option = (name: string, spec: OptionSpec): readonly [string, string] => [
  spec.kind === 'flag' ? `--${name}` : `--${name} ${spec.value ?? 'VALUE'}`,
  spec.many ? `${spec.help} (may be given several times)` : spec.help,
];

function columns(rows: readonly (readonly [string, string])[]): readonly string[] {
  const width = Math.max(0, ...rows.map(([left]) => left.length));
  return rows.map(([left, right]) => `  ${left.padEnd(width)}  ${right}`);
}

const lines = (all: readonly string[]): string => `${all.join('\n')}\n`;
