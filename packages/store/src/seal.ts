import {
  createCipheriv,
  createDecipheriv,
  createHmac,
  createSecretKey,
  hkdfSync,
  type KeyObject,
  randomBytes,
} from 'node:crypto';
import { deflateRawSync, inflateRawSync } from 'node:zlib';
import type { RecordInput } from '@leeway/contract';
import { canonicalJson } from './canonical.ts';

/** What of a record stands in clear. */
export interface Header {
  readonly owner: string;
  readonly id: string;
  readonly kind: string;
  readonly version: number;
  readonly supersedes: string | null;
}

/** A record as it is kept: all but the header sealed with its owner's key. */
export interface SealedRecord extends Header {
  readonly digest: Uint8Array;
  readonly sealed: Uint8Array;
}

/** An owner's key as it is kept, in bytes. */
export const KEY_BYTES = 32;

/** What an owner's key opens. */
export interface Seal {
  close(record: RecordInput): SealedRecord;
  /** Throws when a byte was changed, or the key is another's. */
  open(record: Omit<SealedRecord, 'digest'>): RecordInput;
}

const CIPHER = 'aes-256-gcm';
const NONCE_BYTES = 12;
const TAG_BYTES = 16;
/** First byte of what is sealed: whether the text was deflated (RFC 1951) before. */
const PLAIN = 1;
const DEFLATED = 2;
/** A longer text, a ground file above all, is deflated. */
const LONGEST_PLAIN_BYTES = 4096;

/**
 * Seals with AES-256-GCM under a fresh random nonce; the header is authenticated with the text, so that neither can be moved to another record.
 * The digest is an HMAC-SHA-256 of the whole record's canonical JSON under a second key: the same content gives the same digest, and without
 * the key it tells nothing, not even to one who guesses. Both keys come from the owner's by HKDF-SHA-256 (RFC 5869).
 */
export function sealOf(key: Uint8Array): Seal {
  const sealing = derived(key, 'leeway seal');
  const marking = derived(key, 'leeway digest');
  return {
    close: (record) => {
      const { owner, id, kind, version, supersedes = null, madeAt, body } = record;
      const header = { owner, id, kind, version, supersedes };
      const text = Buffer.from(canonicalJson({ madeAt, body }));
      const form = text.length > LONGEST_PLAIN_BYTES ? DEFLATED : PLAIN;
      const nonce = randomBytes(NONCE_BYTES);
      const cipher = createCipheriv(CIPHER, sealing, nonce).setAAD(associated(form, header));
      const hidden = cipher.update(form === DEFLATED ? deflateRawSync(text) : text);
      cipher.final();
      return {
        ...header,
        digest: createHmac('sha256', marking).update(canonicalJson(record)).digest(),
        sealed: Buffer.concat([Buffer.of(form), nonce, cipher.getAuthTag(), hidden]),
      };
    },
    open: ({ sealed, ...header }) => {
      const form = sealed[0] ?? 0;
      if (form !== PLAIN && form !== DEFLATED)
        throw new Error(`A record is sealed in a form that is not known: ${form}.`);
      const nonce = sealed.subarray(1, 1 + NONCE_BYTES);
      const tag = sealed.subarray(1 + NONCE_BYTES, 1 + NONCE_BYTES + TAG_BYTES);
      const decipher = createDecipheriv(CIPHER, sealing, nonce).setAAD(associated(form, header)).setAuthTag(tag);
      const hidden = decipher.update(sealed.subarray(1 + NONCE_BYTES + TAG_BYTES));
      decipher.final();
      const text = (form === DEFLATED ? inflateRawSync(hidden) : hidden).toString('utf8');
      const { madeAt, body } = JSON.parse(text) as Pick<RecordInput, 'madeAt' | 'body'>;
      const { owner, id, version, supersedes } = header;
      const read = { owner, id, kind: header.kind as RecordInput['kind'], version, madeAt, body };
      return supersedes === null ? read : { ...read, supersedes };
    },
  };
}

/** As an object of Node's: a key handed over in bytes is read anew at each use, which takes four times as long as the rest. */
const derived = (key: Uint8Array, use: string): KeyObject =>
  createSecretKey(new Uint8Array(hkdfSync('sha256', key, new Uint8Array(0), use, KEY_BYTES)));

const associated = (form: number, { owner, id, kind, version, supersedes }: Header): Uint8Array =>
  Buffer.from(`${form} ${owner} ${id} ${kind} ${version} ${supersedes ?? '-'}`);
