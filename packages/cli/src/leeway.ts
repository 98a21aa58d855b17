import { createInterface } from 'node:readline/promises';
import { main } from './main.ts';

// A reader that stops early (`| head`) is no fault of ours: end quietly.
for (const stream of [process.stdout, process.stderr]) {
  stream.on('error', (error) => {
    if ('code' in error && error.code === 'EPIPE') process.exit(process.exitCode ?? 0);
    throw error;
  });
}

const ask = async (question: string): Promise<string> => {
  const asking = createInterface({ input: process.stdin, output: process.stderr });
  try {
    return await asking.question(question);
  } finally {
    asking.close();
  }
};

process.exitCode = await main(process.argv.slice(2), {
  out: (text) => void process.stdout.write(text),
  err: (text) => void process.stderr.write(text),
  ...(process.stdin.isTTY ? { ask } : {}),
});
