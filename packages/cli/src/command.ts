/** Where a command writes: the document on `out`, progress and warnings on `err`. */
export interface Io {
  out(text: string): void;
  err(text: string): void;
  /** Asks whoever sits there, and gives the line that is typed; not there when nobody can be asked. */
  ask?(question: string): Promise<string>;
}

/** How an option is given: `--name value` (text) or `--name` (flag). `many` may be given several times. */
export interface OptionSpec {
  readonly kind: 'text' | 'flag';
  readonly many?: boolean;
  /** One line for `--help`. */
  readonly help: string;
  /** How its value is written in `--help`, e.g. `FILE`. */
  readonly value?: string;
}

/** The words of a command line, parsed but not yet understood. */
export interface Given {
  readonly words: readonly string[];
  text(name: string): string | undefined;
  texts(name: string): readonly string[];
  flag(name: string): boolean;
}

/** One command of `leeway`. */
export interface Command {
  readonly name: string;
  /** One line for the list of commands. */
  readonly summary: string;
  /** Usage lines and examples for `leeway NAME --help`. */
  readonly usage: readonly string[];
  readonly examples: readonly string[];
  readonly options: { readonly [name: string]: OptionSpec };
  /** Gives the exit code: 0 done, 1 input refused. Wrong usage is thrown as `Usage`. */
  run(given: Given, io: Io): Promise<number>;
}

/** Wrong usage: one line that says what was expected; exit code 2. */
export class Usage extends Error {}
