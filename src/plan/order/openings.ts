/** What stands open: pieces that are off and closed something. Dust, drops and nuts fall in over night. */
import { daysBetween } from '../../model/time.ts';
import type { Entry, Job, PieceNow } from '../../model/types.ts';

/** By the name of a piece, where nothing is said of its joint: a guess only adds a question. */
const CLOSES =
  /\b(?:cover|lid|case|head|pan|sump|gearbox|box|tank|carb\w*|intake|inlet|exhaust|cap|plug|filter)\b/i;
/** A word of somebody who has seen to it. */
const COVERED =
  /\b(?:cover(?:ed)?|plug(?:ged|s)?|bag|foil|film|rags?|taped?|stuffed|lid|closed)\b/i;

export interface Opening {
  piece: string;
  name: string;
  /** When it came off. */
  since: string;
  /** What somebody said of how it is closed meanwhile; null: nothing. */
  covered: string | null;
}

function isOpening({ spec, away }: PieceNow): boolean {
  return away === 'removed' && (spec.joint.length > 0 || CLOSES.test(spec.name));
}

export function openings(job: Job): Opening[] {
  return [...job.pieces.values()].filter(isOpening).flatMap((piece): Opening[] => {
    const { key, name } = piece.spec;
    const living = job.entries.filter((e) => job.living.has(e.id) && e.piece === key);
    const off = living.findLast((e) => e.verb === 'removed');
    if (!off) return [];
    const said = living.slice(living.indexOf(off) + 1).map(wordOf);
    const covered = said.findLast((text) => text !== null && COVERED.test(text)) ?? null;
    return [{ piece: key, name, since: off.at, covered }];
  });
}

function wordOf({ verb, value }: Entry): string | null {
  return verb === 'note' || verb === 'inside' ? value : null;
}

/** Left open since another day. */
export function openOverNight(job: Job, now: string): Opening[] {
  return openings(job).filter(({ since }) => daysBetween(since, now) > 0);
}
