import * as z from 'zod';
import { SHOT_COLUMNS } from '../shots.ts';
import { dateSchema, idSchema } from '../stored/words.ts';
import { faultSchema } from './refusal.ts';

const meaning = z.enum([...SHOT_COLUMNS, 'ignore']);

/** How a file of shots is to be read. */
export const shotFileReadingSchema = z.strictObject({
  /** Of columns that do not say. */
  units: z.enum(['yd', 'm']),
  /** Heading by heading; what the reader makes of them unless given. */
  meanings: z.array(meaning).max(200).exactOptional(),
  /** Whose shots, by the name in the file, when it holds several players'. */
  of: z.string().min(1).max(80).exactOptional(),
});
export type ShotFileReading = z.infer<typeof shotFileReadingSchema>;

/** What a file of shots was read as: to be looked at, and then approved by sending the file again with `seen`. */
export const shotFileSchema = z.strictObject({
  headings: z.array(
    z.strictObject({
      text: z.string(),
      /** null: not known. */
      meaning: meaning.nullable(),
      /** The file itself says its unit. */
      unitGiven: z.boolean(),
    }),
  ),
  reading: shotFileReadingSchema,
  /** The reading is the one that was approved for these headings last. */
  remembered: z.boolean(),
  /** Names in the column of players. */
  players: z.array(z.string()),
  sessions: z.array(z.strictObject({ id: idSchema, date: dateSchema, shots: z.int().min(1) })),
  /** The first shots, as they stand in the file and as they were read. */
  first: z.array(
    z.strictObject({
      line: z.int(),
      cells: z.array(z.string()),
      club: z.string(),
      swing: z.string(),
      carryM: z.number(),
      sideM: z.number().exactOptional(),
    }),
  ),
  /** Row by row, the first 500. */
  faults: z.array(faultSchema),
  /** Stands for the file and everything that it was read as. */
  seen: z.string(),
  /** What was kept, once approved. */
  kept: z.strictObject({ sessions: z.int(), shots: z.int(), already: z.boolean() }).exactOptional(),
});
export type ShotFile = z.infer<typeof shotFileSchema>;

/** What a ground file was read as. */
export const groundFileSchema = z.strictObject({
  course: z.string(),
  attribution: z.string().exactOptional(),
  holes: z.array(
    z.strictObject({
      hole: z.string(),
      name: z.string().exactOptional(),
      par: z.int(),
      parGuessed: z.boolean(),
      lengthM: z.number(),
    }),
  ),
  faults: z.array(faultSchema),
  seen: z.string(),
  kept: z.strictObject({ course: idSchema, already: z.boolean() }).exactOptional(),
});
export type GroundFilePreview = z.infer<typeof groundFileSchema>;

/** Courses as they are listed, without their ground. */
export const courseListSchema = z.strictObject({
  courses: z.array(
    z.strictObject({
      id: idSchema,
      seq: z.int().min(1),
      name: z.string(),
      attribution: z.string().exactOptional(),
      file: z.string(),
    }),
  ),
});

/** A player taken in from a Player file. */
export const playerFileKeptSchema = z.strictObject({ player: idSchema, faults: z.array(faultSchema) });

export const backupSchema = z.strictObject({
  /** The file in the folder of backups. */
  file: z.string(),
  records: z.int().min(0),
});
