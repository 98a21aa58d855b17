import { readdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { promisify } from 'node:util';
import { brotliCompress, gzip } from 'node:zlib';

const TEXT = /\.(?:html|js|css|svg|json)$/;
const [brotli, zip] = [promisify(brotliCompress), promisify(gzip)];

/** Puts a `.br` and a `.gz` beside every text of a folder, for the server to send as they are. */
export async function compress(folder: string): Promise<void> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true });
  const texts = entries.filter((entry) => entry.isFile() && TEXT.test(entry.name));
  await Promise.all(
    texts.map(async (entry) => {
      const path = join(entry.parentPath, entry.name);
      const bytes = await readFile(path);
      await writeFile(`${path}.br`, await brotli(bytes));
      await writeFile(`${path}.gz`, await zip(bytes, { level: 9 }));
    }),
  );
}
