import type { Shelf, ShelvedGround, ShelvedPlayer } from '@leeway/contract';
import { playerList, type Store } from '@leeway/store';
import { shelvedCourse } from './api/courses.ts';
import { hashOf } from './shelf.ts';
import type { Courses } from './work/storedCourses.ts';

/** The shelf with what is kept behind what it holds: courses whose ground can be read, players who are not archived. */
export async function withStored(shelf: Shelf, store: Store | undefined, courses: Courses): Promise<Shelf> {
  if (store === undefined) return shelf;
  const grounds: ShelvedGround[] = [];
  for (const { id } of await courses.list()) {
    const ground = await shelvedCourse(courses, id, hashOf(id));
    if (ground !== undefined) grounds.push(ground);
  }
  const kept = (await playerList(store)).filter(({ profile }) => profile.body.archived === undefined);
  const players = kept.map(({ profile: { owner, body } }): ShelvedPlayer => ({
    id: hashOf(owner),
    name: body.name,
    ...(body.handicapIndex === undefined ? {} : { handicapIndex: body.handicapIndex }),
    url: `/api/players/${owner}/file`,
    ballUrls: [`/api/players/${owner}/balls`],
  }));
  return { ...shelf, grounds: [...shelf.grounds, ...grounds], players: [...shelf.players, ...players] };
}
