import { serve as listen } from '@leeway/server';
import { type Command, type Given, type Io, Usage } from './command.ts';
import { wordSystemError } from './files.ts';
import { parseWhole } from './quantities.ts';

const USUAL_PORT = 4310;

/** `leeway serve`: the app on this machine, until it is interrupted. */
export const serve: Command = {
  name: 'serve',
  summary: 'the app in a browser on this machine: the plan of a made-up hole for a made-up player',
  usage: ['leeway serve [--port 4310] [--data DIR]'],
  examples: ['leeway serve', 'leeway serve --port 8080'],
  options: {
    port: { kind: 'text', value: 'N', help: `port to listen on, ${USUAL_PORT} unless said; 0 takes any free one` },
    data: { kind: 'text', value: 'DIR', help: 'not yet: nothing is stored, so the folder is left alone' },
  },
  run: runServe,
};

async function runServe(given: Given, io: Io): Promise<number> {
  if (given.words.length > 0) throw new Usage(`found "${given.words.join(' ')}"; expected only options`);
  const port = parseWhole('port', given.text('port') ?? String(USUAL_PORT), [0, 65_535]);
  if (given.text('data') !== undefined) io.err('leeway serve: nothing is stored yet; --data is left alone\n');
  const serving = await listen(port, (error) => io.err(`leeway serve: ${messageOf(error)}\n`)).catch(
    (error: unknown) => {
      io.err(`leeway serve: port ${port}: found ${portWords(error)}; expected a free port, or --port 0\n`);
      return undefined;
    },
  );
  if (serving === undefined) return 1;
  io.out(
    given.flag('json') ? `${JSON.stringify({ address: serving.address })}\n` : `Leeway is at ${serving.address}\n`,
  );
  await interrupted();
  await serving.close();
  return 0;
}

function portWords(error: unknown): string {
  const code = error instanceof Error && 'code' in error ? error.code : undefined;
  return code === 'EADDRINUSE' ? 'it in use' : wordSystemError(error);
}

const messageOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

const interrupted = (): Promise<void> =>
  new Promise((resolve) => {
    process.once('SIGINT', () => resolve());
    process.once('SIGTERM', () => resolve());
  });
