import type { Fault, Read } from '@leeway/contract';

/** Text of a file in any of the encodings that tables come in: a byte order mark decides, else UTF-16 by its noughts, else UTF-8, else Latin-1. */
export function decodeText(bytes: Uint8Array, file: string): Read<string> {
  const [a, b, c] = bytes;
  if (a === 0xef && b === 0xbb && c === 0xbf) return decoded(bytes.subarray(3), 'utf-8', file);
  if (a === 0xff && b === 0xfe) return decoded(bytes.subarray(2), 'utf-16le', file);
  if (a === 0xfe && b === 0xff) return decoded(bytes.subarray(2), 'utf-16be', file);
  const wide = looksWide(bytes);
  if (wide !== undefined) return decoded(bytes, wide, file);
  return decoded(bytes, 'utf-8', file);
}

function decoded(bytes: Uint8Array, encoding: string, file: string): Read<string> {
  try {
    return textOnly(new TextDecoder(encoding, { fatal: true, ignoreBOM: true }).decode(bytes), file, []);
  } catch {
    const note: Fault = {
      code: 'encoding',
      level: 'note',
      file,
      found: `bytes that are not ${encoding.toUpperCase()}`,
      expected: 'UTF-8',
      done: 'read as Latin-1',
    };
    return textOnly(new TextDecoder('windows-1252').decode(bytes), file, [note]);
  }
}

function textOnly(text: string, file: string, faults: readonly Fault[]): Read<string> {
  if (!text.includes('\0')) return { value: text, faults };
  return {
    faults: [
      {
        code: 'not-text',
        level: 'refused',
        file,
        found: 'bytes that are not text',
        expected: 'a table in text (CSV or TSV)',
      },
    ],
  };
}

/** UTF-16 without a mark has a nought in nearly every second byte of plain text. */
function looksWide(bytes: Uint8Array): 'utf-16le' | 'utf-16be' | undefined {
  const sample = bytes.subarray(0, 2000);
  const noughts = [0, 0];
  sample.forEach((byte, i) => {
    if (byte === 0) noughts[i % 2] = (noughts[i % 2] ?? 0) + 1;
  });
  const pairs = sample.length / 2;
  if (pairs < 2) return undefined;
  const [even = 0, odd = 0] = noughts;
  if (odd > 0.7 * pairs && even < 0.1 * pairs) return 'utf-16le';
  if (even > 0.7 * pairs && odd < 0.1 * pairs) return 'utf-16be';
  return undefined;
}
