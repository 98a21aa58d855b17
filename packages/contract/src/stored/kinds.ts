import { approachForms, type Approach } from './approach.ts';
import { courseForms, type StoredCourse } from './course.ts';
import { errandForms, type Errand } from './errand.ts';
import { fittedForms, type FittedPatterns } from './fitted.ts';
import { frozenPlanForms, type FrozenPlan } from './frozenPlan.ts';
import { ledgerForms, type StoredLedger } from './ledger.ts';
import { noteForms, type Note } from './note.ts';
import { profileForms, type Profile } from './profile.ts';
import { readingForms, type StoredReading } from './reading.ts';
import { roundForms, type StoredRound } from './round.ts';
import { sessionForms, type Session } from './session.ts';
import { setUpForms, type SetUp } from './setUp.ts';
import type { Forms } from './shape.ts';
import { shotForms, type StoredShot } from './shot.ts';
import { strokeForms, type StoredStroke } from './stroke.ts';
import { withdrawalForms, type Withdrawal } from './withdrawal.ts';

/** What a record of each kind holds, in its newest form. */
export interface Bodies {
  readonly profile: Profile;
  readonly session: Session;
  readonly shot: StoredShot;
  readonly approach: Approach;
  readonly fitted: FittedPatterns;
  readonly plan: FrozenPlan;
  readonly note: Note;
  readonly round: StoredRound;
  readonly stroke: StoredStroke;
  readonly ledger: StoredLedger;
  readonly errand: Errand;
  readonly course: StoredCourse;
  readonly setUp: SetUp;
  readonly reading: StoredReading;
  readonly withdrawal: Withdrawal;
}
export type Kind = keyof Bodies;

interface KindRule {
  readonly forms: Forms;
  /** Whose record it can be. */
  readonly of: 'player' | 'house' | 'either';
  /** A frozen record is never superseded; a plan, though frozen, may be taken away by a withdrawal. */
  readonly frozen?: true | 'until withdrawn';
}

/** Every kind of record, with its forms and rules. */
export const KINDS: { readonly [K in Kind]: KindRule } = {
  profile: { forms: profileForms, of: 'player' },
  session: { forms: sessionForms, of: 'player' },
  shot: { forms: shotForms, of: 'player' },
  approach: { forms: approachForms, of: 'player' },
  fitted: { forms: fittedForms, of: 'player' },
  plan: { forms: frozenPlanForms, of: 'player', frozen: 'until withdrawn' },
  note: { forms: noteForms, of: 'either' },
  round: { forms: roundForms, of: 'player' },
  stroke: { forms: strokeForms, of: 'player' },
  ledger: { forms: ledgerForms, of: 'player', frozen: true },
  errand: { forms: errandForms, of: 'player', frozen: true },
  course: { forms: courseForms, of: 'house' },
  setUp: { forms: setUpForms, of: 'house' },
  reading: { forms: readingForms, of: 'house' },
  withdrawal: { forms: withdrawalForms, of: 'either', frozen: true },
};

export const KIND_NAMES = Object.keys(KINDS) as readonly Kind[];

/** The owner of what belongs to no player. */
export const HOUSE = '00000000-0000-0000-0000-000000000000';
