import * as z from 'zod';

const id = z.string().regex(/^[0-9a-f]{16}$/);

/** What the page may open, as the server lists it, and what it opens on. Files are known by the hash of what is in them. */
export const shelfSchema = z.strictObject({
  grounds: z.array(
    z.strictObject({
      id,
      course: z.string(),
      url: z.string(),
      holes: z.array(z.strictObject({ hole: z.string(), name: z.string().exactOptional(), par: z.int() })).min(1),
    }),
  ),
  players: z.array(
    z.strictObject({
      id,
      name: z.string(),
      handicapIndex: z.number().exactOptional(),
      url: z.string(),
      /** Files of the shots that the patterns were fitted from. */
      shotUrls: z.array(z.string()),
    }),
  ),
  opening: z.strictObject({ ground: id, hole: z.string(), player: id }),
});

export type Shelf = z.infer<typeof shelfSchema>;
export type ShelvedGround = Shelf['grounds'][number];
export type ShelvedPlayer = Shelf['players'][number];
