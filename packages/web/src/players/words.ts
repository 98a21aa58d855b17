import type { Kind, ListedPlayer, Profile } from '@leeway/contract';
import { dateWords } from '../shell/words.ts';

/** The words of the Players page. */
export const PLAYERS = {
  lead: 'Who you work with, what changed, and what is due.',
  list: 'All players',
  columns: { name: 'player', changed: 'last changed', due: 'due' },
  none: 'No players yet.',
  noneWhy:
    'Add the first one: a name is enough. Then drop a file of shots on their Carries, or type the carries you know.',
  add: 'Add a player',
  newPlayer: 'A new player',
  edit: 'Edit',
  save: 'Keep',
  cancel: 'Leave it',
  fields: { name: 'Name', index: 'Handicap index', hand: 'Plays', sex: 'Sex, for the usual figures' },
  hands: { right: 'right', left: 'left' },
  sexes: { unsaid: 'not said', man: 'man', woman: 'woman' },
  minor: 'Under age',
  minorMeans:
    'Little is asked of a child. A first name or initials will do; ask the parent before anything is written down.',
  minorMark: 'under age',
  needName: 'A player has a name, of at most 80 letters.',
  badIndex: 'A handicap index lies between −10 (a plus handicap) and 54.',
  kept: 'Kept.',
  carries: 'Carries',
  plan: 'Plan',
  spare: 'Not today',
  spareMeans: 'Sore or hurt: no full efforts until you switch this off. Pain is for a doctor, not for a coach.',
  archive: 'Put away',
  unarchive: 'Bring back',
  archived: 'Put away; nothing is lost.',
  undo: 'Undo',
  showArchived: 'Players that were put away',
  showArchivedMeans: 'They keep everything and are left out of the list.',
  notes: 'Notes',
  noNotes: 'No notes yet.',
  note: 'A note',
  noteDate: 'Of the day',
  addNote: 'Keep the note',
  takeBack: 'take back',
  takenBack: 'The note is taken back.',
  record: 'The whole record as one file',
  erase: 'Erase for good',
  eraseTitle: 'Erase this player?',
  eraseWhy:
    'Everything kept of this player goes, notes, shots and plans, and does not come back. Files that were handed over and pictures that were printed are out of reach.',
  eraseName: 'Write the name to show that you mean it',
  erased: 'Erased.',
  otherName: 'This is another name than the player’s.',
  noStore: 'Nothing can be kept: the app runs without a store. Start it with: leeway serve --data FOLDER',
  fetching: 'Fetching the players.',
  choose: 'Choose a player to see notes and acts.',
} as const;

const KINDS: { readonly [K in Kind]?: string } = {
  profile: 'details',
  session: 'a session',
  shot: 'shots',
  fitted: 'the ladder',
  plan: 'a plan',
  round: 'a round',
  approach: 'a pitch mark',
  stroke: 'a round',
  note: 'a note',
};

/** "a session, 9 March 2026": the newest thing of note. */
export function changedWords({ latest }: ListedPlayer): string {
  const [newest] = latest.filter(({ kind }) => KINDS[kind] !== undefined);
  return newest === undefined ? '' : `${KINDS[newest.kind] ?? ''}, ${dateWords(newest.at)}`;
}

/** Carries older than this are to be measured again. */
const OLD_DAYS = 90;
const DAY_MS = 86_400_000;

/** What waits to be done for a player, the most pressing first; nothing when all is as it should be. */
export function dueWords({ profile, latest }: ListedPlayer, nowMs: number): string {
  const of = (kind: Kind) => latest.find((l) => l.kind === kind);
  const { sparedSince, clubs = [] } = profile.body;
  if (sparedSince !== undefined) return `not today, since ${dateWords(sparedSince)}`;
  const [shot, fitted] = [of('shot'), of('fitted')];
  const claims = clubs.some((club) => club.claimedCarryM !== undefined);
  if (shot === undefined) return claims ? 'carries typed, none measured' : 'no carries yet';
  if (fitted === undefined || fitted.seq < shot.seq) return 'new shots to fit';
  const days = Math.floor((nowMs - Date.parse(shot.at)) / DAY_MS);
  return days > OLD_DAYS ? `carries are ${Math.round(days / 30)} months old` : '';
}

/** "right-handed, index 14.2". */
export function aboutWords({ hand, handicapIndex, minor }: Profile): string {
  const parts = [
    ...(minor === true ? [PLAYERS.minorMark] : []),
    ...(hand === undefined ? [] : [`plays ${PLAYERS.hands[hand]}-handed`]),
    ...(handicapIndex === undefined ? [] : [`index ${indexText(handicapIndex)}`]),
  ];
  return parts.join(', ');
}

/** A plus handicap is below nought and written with its sign: "+1.4". */
export const indexText = (index: number): string => (index < 0 ? `+${-index}` : String(index));

/** The index that is written: "14,2", "+1.4" for a plus handicap; `undefined` when it is none. */
export function readIndex(text: string): number | undefined {
  const plain = text.trim().replace(',', '.').replace('−', '-');
  if (!/^[+-]?\d{1,2}(?:\.\d)?$/.test(plain)) return undefined;
  const index = plain.startsWith('+') ? -Number(plain.slice(1)) : Number(plain);
  return index >= -10 && index <= 54 ? index : undefined;
}

export const takesBackWords = (date: string): string => `Take back the note of ${dateWords(date)}`;
