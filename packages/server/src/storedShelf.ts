import type { Shelf, ShelvedGround, ShelvedPlayer } from '@leeway/contract';
import { playerList, type Store } from '@leeway/store';
import { shelvedCourse } from './api/courses.ts';
import type { Courses } from './work/storedCourses.ts';

/**
 * The shelf with what is kept before what it holds, the newest course first: courses whose ground can be read, players who are not archived. It opens on
 * what is kept as soon as there is a course and a player.
 */
export async function withStored(shelf: Shelf, store: Store | undefined, courses: Courses): Promise<Shelf> {
  if (store === undefined) return shelf;
  const grounds: ShelvedGround[] = [];
  for (const { id } of await courses.list()) {
    const ground = await shelvedCourse(courses, id);
    if (ground !== undefined) grounds.unshift(ground);
  }
  const kept = (await playerList(store)).filter(({ profile }) => profile.body.archived === undefined);
  const players = kept.map(({ profile: { owner, body } }): ShelvedPlayer => ({
    id: owner,
    name: body.name,
    ...(body.handicapIndex === undefined ? {} : { handicapIndex: body.handicapIndex }),
    url: `/api/players/${owner}/file`,
    ballUrls: [`/api/players/${owner}/balls`],
  }));
  const [ground] = grounds;
  const [player] = players;
  const hole = ground?.holes[0]?.hole;
  const own = ground !== undefined && player !== undefined && hole !== undefined;
  return {
    grounds: [...grounds, ...shelf.grounds],
    players: [...players, ...shelf.players],
    opening: own ? { ground: ground.id, hole, player: player.id } : shelf.opening,
  };
}
