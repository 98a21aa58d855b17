import type { Given, OptionSpec } from './command.ts';
import { Usage } from './command.ts';
import { nearest } from './nearest.ts';

/** Options that every command takes. */
export const COMMON_OPTIONS = {
  json: { kind: 'flag', help: 'one JSON document on standard output' },
  help: { kind: 'flag', help: 'this text' },
} as const satisfies { readonly [name: string]: OptionSpec };

/**
 * Parses the words after a command's name: `--name value`, `--name=value` and `--name` for a flag; `--` ends the options. A value may
 * begin with one minus sign. Throws `Usage` for an option that is unknown, lacks its value, has one too many, or is given twice.
 */
export function parseArguments(args: readonly string[], options: { readonly [name: string]: OptionSpec }): Given {
  const words: string[] = [];
  const values = new Map<string, string[]>();
  for (let i = 0; i < args.length; i++) {
    const arg = args[i] ?? '';
    if (arg === '--') {
      words.push(...args.slice(i + 1));
      break;
    }
    if (!arg.startsWith('--')) {
      if (/^-[a-z]/i.test(arg)) throw new Usage(`no option ${arg}; options are written --name`);
      words.push(arg);
      continue;
    }
    const [name, inline] = splitOption(arg);
    const spec = Object.hasOwn(options, name) ? options[name] : undefined;
    if (!spec) throw new Usage(`no option --${name}${hint(name, Object.keys(options))}`);
    if (values.has(name) && !spec.many) throw new Usage(`--${name} is given twice`);
    if (spec.kind === 'flag') {
      if (inline !== undefined) throw new Usage(`--${name} takes no value, found "${inline}"`);
      values.set(name, []);
      continue;
    }
    const value = inline ?? args[++i];
    if (value === undefined || value === '' || (inline === undefined && value.startsWith('--'))) {
      throw new Usage(`--${name} needs a value: --${name} ${spec.value ?? 'VALUE'}`);
    }
    values.set(name, [...(values.get(name) ?? []), value]);
  }
  return {
    words,
    text: (name) => values.get(name)?.[0],
    texts: (name) => values.get(name) ?? [],
    flag: (name) => values.has(name),
  };
}

/** `; did you mean --ground?`, or nothing when no name is close. */
function hint(name: string, names: readonly string[]): string {
  const near = nearest(name, names);
  return near === undefined ? '' : `; did you mean --${near}?`;
}

function splitOption(arg: string): readonly [name: string, value: string | undefined] {
  const equals = arg.indexOf('=');
  return equals === -1 ? [arg.slice(2), undefined] : [arg.slice(2, equals), arg.slice(equals + 1)];
}
