import {
  HOUSE,
  type RoundFile,
  type RoundShot,
  type StoredCourse,
  type StoredRecord,
  type StoredStroke,
} from '@leeway/contract';
import { current, get, type Store } from '@leeway/store';

/** A kept round as a round file, the course it was played on, and the strokes that stand. */
export interface StoredRoundRead {
  readonly file: RoundFile;
  readonly course: StoredCourse;
  readonly strokes: readonly string[];
}

/** A round by id; undefined when it does not stand, or is without a course or strokes. */
export async function storedRound(store: Store, owner: string, id: string): Promise<StoredRoundRead | undefined> {
  const rounds = (await current(store, { owner, kind: 'round' })) as readonly StoredRecord<'round'>[];
  const round = rounds.find((record) => record.id === id);
  if (round?.body.course === undefined) return undefined;
  const course = await get(store, HOUSE, round.body.course);
  const all = (await current(store, { owner, kind: 'stroke' })) as readonly StoredRecord<'stroke'>[];
  const strokes = all.filter(({ body }) => body.round === id);
  if (course?.kind !== 'course' || strokes.length === 0) return undefined;
  const holes = [...Map.groupBy(strokes, ({ body }) => body.hole)].map(([hole, of]) => ({
    hole,
    shots: of.toSorted((a, b) => a.body.shot - b.body.shot).map(({ body }) => shotOf(body)),
  }));
  const { date, day } = round.body;
  return {
    file: { date, ...(day === undefined ? {} : { day }), holes },
    course: course.body as StoredCourse,
    strokes: strokes.map((stroke) => stroke.id),
  };
}

function shotOf(stroke: StoredStroke): RoundShot {
  const { round: _round, hole: _hole, shot: _shot, holed, finish, penaltyStrokes, ...told } = stroke;
  return {
    ...told,
    ...(holed === true ? { finish: 'holed' as const } : finish === undefined ? {} : { finish }),
    ...(penaltyStrokes === undefined ? {} : { penalty: penaltyStrokes }),
  };
}
