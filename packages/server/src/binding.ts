import { isIP } from 'node:net';
import type { Fault } from '@leeway/contract';
import type { Door } from './door.ts';

/** This machine alone. */
export const LOOPBACK = '127.0.0.1';

const LEAST_PASSPHRASE = 12;

/**
 * Why an address may not be listened on as things stand; nothing to say of loopback. Elsewhere everybody on the network can knock: there must be a passphrase, TLS
 * so that it cannot be overheard (our own, or a proxy's that alone may connect), and the names that are answered to.
 */
export function bindingFaults(address: string, door: Door, ownTls: boolean): readonly Fault[] {
  const faults: Fault[] = [];
  const fault = (code: string, found: string, expected: string): void =>
    void faults.push({ code, level: 'refused', file: `address ${address}`, found, expected });
  if (door.trustedProxy !== undefined && isIP(door.trustedProxy) === 0)
    fault('proxy', `the proxy ${door.trustedProxy}`, 'the address of one proxy');
  if (door.passphrase !== undefined && door.passphrase.length < LEAST_PASSPHRASE)
    fault('passphrase', 'a short passphrase', `at least ${LEAST_PASSPHRASE} characters in LEEWAY_PASSPHRASE`);
  if (/^(?:127(?:\.\d{1,3}){3}|::1|localhost)$/i.test(address)) return faults;
  if (door.passphrase === undefined) fault('passphrase', 'no passphrase', 'one in LEEWAY_PASSPHRASE');
  if (!ownTls && door.trustedProxy === undefined)
    fault('tls', 'no TLS', '--tls-cert and --tls-key, or --trusted-proxy with the address of one that speaks TLS');
  if ((door.hosts ?? []).length === 0)
    fault('host', 'no name to answer to', '--host with the name in the page’s address');
  return faults;
}
