/** The sealant's open time, and how long it cures, as the screens tell them. */
import type { Job, PieceNow } from '../../model/types.ts';
import { capital } from '../../model/words.ts';
import { atTime } from '../time/at-time.ts';
import { type Cure, curesNow, sayCure, sayCureOf } from './cure.ts';
import { openTimes, sayOpenTime } from './open-time.ts';

/** `sealant: closed by 18:50`, or that its time is over; null where none runs. */
export function sealantSaid(job: Job, piece: PieceNow, now: string): string | null {
  const times = atTime(job, now, 'open times', () => openTimes(job, now));
  const own = times.find((time) => time.piece === piece.spec.key);
  return own ? sayOpenTime(own, now) : null;
}

/** The same as a sentence, for what is said under the picture; empty where none runs. */
export function hurrySaid(job: Job, piece: PieceNow, now: string): string {
  const said = sealantSaid(job, piece, now);
  return said === null ? '' : `${capital(said)}.`;
}

export function cures(job: Job, now: string): readonly Cure[] {
  return atTime(job, now, 'cures', () => curesNow(job, now));
}

/** `Sealant cures 12 h, until 07:40 tomorrow. Don't load it.`; null where nothing cures. */
export function cureSaid(job: Job, piece: PieceNow, now: string): string | null {
  const own = cures(job, now).find((cure) => cure.piece === piece.spec.key);
  return own ? sayCure(own, now) : null;
}

/** Of the whole job, each with its piece; without those that a task of the file tells. */
export function curesSaid(job: Job, now: string): string[] {
  return cures(job, now).flatMap((cure) => (cure.wait === null ? [sayCureOf(cure, now)] : []));
}
