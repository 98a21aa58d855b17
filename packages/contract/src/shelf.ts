import * as z from 'zod';
import { idSchema } from './stored/words.ts';

/** A hash of a file, or the id of what is kept. */
const id = z.union([z.string().regex(/^[0-9a-f]{16}$/), idSchema]);

/**
 * What the page may open, as the server lists it, and what it opens on. The server has read and checked the files behind it; what it sends at
 * the addresses is the JSON of what they hold: a `SentHole`, a `PlayerFile`, a list of `SentBall`. Addresses end in a hash of what is there.
 */
export const shelfSchema = z.strictObject({
  grounds: z.array(
    z.strictObject({
      id,
      course: z.string(),
      /** A course of the coach's own, from the store. */
      kept: z.literal(true).exactOptional(),
      holes: z
        .array(z.strictObject({ hole: z.string(), name: z.string().exactOptional(), par: z.int(), url: z.string() }))
        .min(1),
      /** Holes worked out beforehand for a player. */
      prepared: z.array(z.strictObject({ hole: z.string(), player: id, url: z.string() })),
    }),
  ),
  players: z.array(
    z.strictObject({
      id,
      name: z.string(),
      handicapIndex: z.number().exactOptional(),
      url: z.string(),
      /** The shots that the patterns were fitted from. */
      ballUrls: z.array(z.string()),
    }),
  ),
  opening: z.strictObject({ ground: id, hole: z.string(), player: id }),
});

export type Shelf = z.infer<typeof shelfSchema>;
export type ShelvedGround = Shelf['grounds'][number];
export type ShelvedPlayer = Shelf['players'][number];
