import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** Files under a folder whose bytes hold a text, plain, in UTF-16, as hexadecimal or as any base64 it can be inside. */
export function filesHolding(folder: string, text: string): readonly string[] {
  const forms = formsOf(text);
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
    .filter((path) => {
      const bytes = readFileSync(path);
      return forms.some((form) => bytes.includes(form));
    });
}

function formsOf(text: string): readonly Buffer[] {
  const utf8 = Buffer.from(text, 'utf8');
  const base64 = [0, 1, 2].map((offset) => {
    const padded = Buffer.concat([Buffer.alloc(offset), utf8]).toString('base64').replaceAll('=', '');
    // The characters at the ends depend on what stands beside the text.
    return Buffer.from(padded.slice(offset === 0 ? 0 : offset + 1, -1));
  });
  return [utf8, Buffer.from(text, 'utf16le'), Buffer.from(utf8.toString('hex')), ...base64];
}
