/**
 * Whether a request was meant for this machine by name: a page elsewhere that points its own name at this address (DNS rebinding) sends its
 * own name as Host and is turned away.
 */
export function isLoopbackHost(host: string | undefined): boolean {
  return host !== undefined && /^(?:localhost|127\.0\.0\.1|\[::1\])(?::\d{1,5})?$/i.test(host);
}
