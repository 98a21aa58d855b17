import type { Read } from '@leeway/contract';

/** The text of a file in UTF-8, without its byte order mark. Refused: any other bytes, a picture's among them. */
export function utf8(bytes: Uint8Array, file: string): Read<string> {
  try {
    return { value: new TextDecoder('utf-8', { fatal: true }).decode(bytes), faults: [] };
  } catch {
    const found = 'bytes that are not UTF-8 text';
    return { faults: [{ code: 'not-utf-8', level: 'refused', file, found, expected: 'a text file in UTF-8' }] };
  }
}
