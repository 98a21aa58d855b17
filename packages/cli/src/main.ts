/** Runs one command line and gives its exit code: 0 done, 1 input refused, 2 wrong usage. */
export function main(args: readonly string[]): Promise<number> {
  process.stderr.write(`leeway: no command "${args[0] ?? ''}"\n`);
  return Promise.resolve(2);
}
