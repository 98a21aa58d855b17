import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { type OpenKeeping, openKeeping, serve } from '@leeway/server';

/** A store in a folder behind its API, as `leeway serve` has it, without a page. */
export interface ServedStore {
  readonly keeping: OpenKeeping['keeping'];
  /** The status and the text of an answer, over a real connection. */
  ask(path: string, body?: object | Uint8Array): Promise<string>;
  close(): Promise<void>;
}

export async function serveStore(folder: string): Promise<ServedStore> {
  const tell = (line: string): void => void process.stderr.write(`${line}\n`);
  const { value: open, faults } = await openKeeping({ folder }, 0, tell);
  if (open === undefined) throw new Error(JSON.stringify(faults));
  const page = join(folder, 'page');
  mkdirSync(page, { recursive: true });
  writeFileSync(join(page, 'index.html'), '<!doctype html>');
  const shelf = { grounds: [], players: [], opening: { ground: '', hole: '7', player: '' } };
  const served = { page, stocked: { shelf, sent: new Map<string, string>() }, keeping: open.keeping };
  const serving = await serve(0, served, (error) => tell(String(error)));
  return {
    keeping: open.keeping,
    ask: async (path, body) => {
      const json = !(body instanceof Uint8Array);
      const headers = { 'x-leeway': '1', 'content-type': json ? 'application/json' : 'application/octet-stream' };
      const answer = await fetch(
        `${serving.address}${path}`,
        body === undefined ? {} : { method: 'POST', headers, body: json ? JSON.stringify(body) : new Uint8Array(body) },
      );
      const text = await answer.text();
      if (answer.status !== 200) throw new Error(`${path}: ${answer.status} ${text}`);
      return text;
    },
    close: async () => {
      await serving.close();
      await open.close();
    },
  };
}
