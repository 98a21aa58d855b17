/** Prints a figure that a test has measured. */
export const say = (line: string): void => void process.stdout.write(`${line}\n`);
