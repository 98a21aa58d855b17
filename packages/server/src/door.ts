import { createHash, timingSafeEqual } from 'node:crypto';
import type { FastifyRequest } from 'fastify';

/** Who may come in, and how. */
export interface Door {
  /** Names that requests may be meant for besides this machine's own: `plans.example`, with the port when it is not the usual one. */
  readonly hosts?: readonly string[];
  /** Asked of everybody, as the password of HTTP's own sign-in (RFC 7617) under any user name. */
  readonly passphrase?: string;
  /** The page is met over TLS: the server's own, or a proxy's. */
  readonly secure?: true;
  /** The only address that may connect: that of a proxy that speaks TLS. */
  readonly trustedProxy?: string;
}

/** A request that is turned away, and why. */
export interface TurnedAway {
  readonly status: 401 | 403 | 421 | 429;
  readonly code: string;
  readonly found: string;
  readonly expected: string;
}

/** What every change of what is kept must bring: a page elsewhere cannot send it without asking first, and nobody answers that it may. */
const OWN_HEADER = 'x-leeway';

const READING = new Set(['GET', 'HEAD']);

/**
 * Whether a request was meant for this machine by name: a page elsewhere that points its own name at this address (DNS rebinding) sends its
 * own name as Host and is turned away.
 */
export function isLoopbackHost(host: string | undefined): boolean {
  return host !== undefined && /^(?:localhost|127\.0\.0\.1|\[::1\])(?::\d{1,5})?$/i.test(host);
}

/** Keeps the door: the reason to turn a request away, or none. Each check stands by itself, since a browser may leave out what another rests on. */
export function doorkeeper(door: Door): (request: FastifyRequest) => TurnedAway | undefined {
  const hosts = new Set((door.hosts ?? []).map((host) => host.toLowerCase()));
  const signIn = door.passphrase === undefined ? undefined : signInWith(door.passphrase);
  return (request) =>
    wrongPeer(request, door) ??
    wrongHost(request.headers.host, hosts) ??
    wrongOrigin(request, door) ??
    fromElsewhere(request) ??
    withoutHeader(request) ??
    signIn?.(request);
}

function wrongPeer({ socket }: FastifyRequest, { trustedProxy }: Door): TurnedAway | undefined {
  const peer = socket.remoteAddress?.replace(/^::ffff:/, '');
  if (trustedProxy === undefined || peer === trustedProxy) return undefined;
  return { status: 403, code: 'peer', found: 'a connection past the proxy', expected: 'one through it' };
}

function wrongHost(host: string | undefined, hosts: ReadonlySet<string>): TurnedAway | undefined {
  if (isLoopbackHost(host) || (host !== undefined && hosts.has(host.toLowerCase()))) return undefined;
  const expected = 'a name that this server answers to';
  return { status: 421, code: 'host', found: `the host ${host ?? 'nothing'}`, expected };
}

function wrongOrigin({ headers }: FastifyRequest, { secure }: Door): TurnedAway | undefined {
  const { origin, host } = headers;
  if (origin === undefined) return undefined;
  const own = `${secure === true ? 'https' : 'http'}://${host ?? ''}`;
  if (origin.toLowerCase() === own.toLowerCase()) return undefined;
  return { status: 403, code: 'origin', found: `the origin ${origin}`, expected: own };
}

/** Browsers say whose page asks. A link elsewhere may open the page; nothing else may be fetched from there. */
function fromElsewhere({ headers, method, url }: FastifyRequest): TurnedAway | undefined {
  const site = headers['sec-fetch-site'];
  if (site === undefined || site === 'same-origin' || site === 'none') return undefined;
  if (headers['sec-fetch-mode'] === 'navigate' && READING.has(method) && !url.startsWith('/api/')) return undefined;
  return { status: 403, code: 'site', found: `a request from a page elsewhere`, expected: 'one from this page' };
}

function withoutHeader({ method, headers }: FastifyRequest): TurnedAway | undefined {
  if (READING.has(method) || headers[OWN_HEADER] === '1') return undefined;
  return {
    status: 403,
    code: 'own-header',
    found: `a change without ${OWN_HEADER}`,
    expected: `the header ${OWN_HEADER}: 1`,
  };
}

const MOST_WRONG = 10;
const WRONG_WITHIN_MS = 60_000;

/** Compares digests, so that neither length nor matching part shows in the time; ten wrong words from an address close the door to it for a minute. */
function signInWith(passphrase: string): (request: FastifyRequest) => TurnedAway | undefined {
  const wanted = digestOf(passphrase);
  const wrong = new Map<string, { times: number; readonly since: number }>();
  return ({ headers, ip }) => {
    const now = performance.now();
    for (const [address, { since }] of wrong) if (now - since > WRONG_WITHIN_MS) wrong.delete(address);
    const before = wrong.get(ip);
    if (before !== undefined && before.times >= MOST_WRONG)
      return { status: 429, code: 'too-many', found: `${MOST_WRONG} wrong passphrases`, expected: 'a minute’s pause' };
    const given = passwordOf(headers.authorization);
    if (given !== undefined && timingSafeEqual(digestOf(given), wanted)) {
      wrong.delete(ip);
      return undefined;
    }
    if (given !== undefined && before !== undefined) before.times++;
    else if (given !== undefined) wrong.set(ip, { times: 1, since: now });
    const found = given === undefined ? 'no passphrase' : 'another passphrase';
    return { status: 401, code: 'passphrase', found, expected: 'the passphrase' };
  };
}

const digestOf = (text: string): Uint8Array => createHash('sha256').update(text).digest();

function passwordOf(authorization: string | undefined): string | undefined {
  const encoded = /^Basic ([A-Za-z0-9+/=]+)$/i.exec(authorization ?? '')?.[1];
  if (encoded === undefined) return undefined;
  const pair = Buffer.from(encoded, 'base64').toString('utf8');
  const colon = pair.indexOf(':');
  return colon < 0 ? undefined : pair.slice(colon + 1);
}
