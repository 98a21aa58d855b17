import { type Random, randomFrom } from '@leeway/engine';

/** A stream that a name decides, so that what is drawn at random is the same each time: FNV-1a of its letters is the seed. */
export function randomOf(name: string): Random {
  let hash = 0x811c9dc5;
  for (let i = 0; i < name.length; i++) hash = Math.imul(hash ^ name.charCodeAt(i), 0x01000193) >>> 0;
  return randomFrom(hash);
}
