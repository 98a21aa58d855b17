import { expect, test } from 'vitest';
import { bindingFaults } from './binding.ts';
import type { Door } from './door.ts';

const SOUND: Door = { passphrase: 'larks over the links', hosts: ['plans.example'] };

test.each<[string, string, Door, boolean, readonly string[]]>([
  ['this machine', '127.0.0.1', {}, false, []],
  ['this machine by IPv6', '::1', {}, false, []],
  ['every address, bare', '0.0.0.0', {}, false, ['passphrase', 'tls', 'host']],
  ['an address that begins like loopback', '127.0.0.1.example', {}, false, ['passphrase', 'tls', 'host']],
  ['no passphrase', '0.0.0.0', { hosts: ['plans.example'] }, true, ['passphrase']],
  ['a short passphrase', '::', { ...SOUND, passphrase: 'larks' }, true, ['passphrase']],
  ['no TLS', '10.0.0.5', SOUND, false, ['tls']],
  ['no name', '10.0.0.5', { passphrase: 'larks over the links' }, true, ['host']],
  [
    'a proxy by a name, which may come to mean another',
    '10.0.0.5',
    { ...SOUND, trustedProxy: 'proxy.example' },
    false,
    ['proxy'],
  ],
  ['TLS of its own', '0.0.0.0', SOUND, true, []],
  ['a proxy', '10.0.0.5', { ...SOUND, trustedProxy: '10.0.0.7' }, false, []],
])('%s: %s', (_, address, door, tls, codes) => {
  expect(bindingFaults(address, door, tls).map(({ code }) => code)).toEqual(codes);
});
