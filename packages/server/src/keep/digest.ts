import { createHash } from 'node:crypto';

/** SHA-256 in hex. */
export const digestOf = (bytes: Uint8Array | string): string => createHash('sha256').update(bytes).digest('hex');
