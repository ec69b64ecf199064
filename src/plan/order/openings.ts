/** What stands open: pieces that are off and closed something. Dust, drops and nuts fall in over night. */
import { daysBetween } from '../../model/time.ts';
import type { Entry, Job, PieceNow } from '../../model/types.ts';

/** By the name of a piece, where nothing is said of its joint: a guess only adds a question. */
const CLOSES =
  /\b(?:cover|lid|case|head|pan|sump|gearbox|box|tank|carb\w*|intake|inlet|exhaust|cap|plug|filter)\b/i;
/** A word of somebody who has seen to it. */
const COVERED =
  /\b(?:cover(?:ed)?|plug(?:ged|s)?|bag|foil|film|rags?|taped?|stuffed|lid|closed)\b/i;

const NOT_SO = /\b(?:not|never|no|isn't|wasn't|open|off)\b/i;

export interface PieceOpening {
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

export function openings(job: Job): PieceOpening[] {
  return [...job.pieces.values()].filter(isOpening).flatMap((piece): PieceOpening[] => {
    const { key, name } = piece.spec;
    const living = job.entries.filter((e) => job.living.has(e.id) && e.piece === key);
    const off = living.findLast((e) => e.verb === 'removed');
    if (!off) return [];
    const said = living.slice(living.indexOf(off) + 1).map(wordOf);
    const covered = said.findLast((text) => text !== null) ?? null;
    return [{ piece: key, name, since: off.at, covered }];
  });
}

/** What went inside closes it; of a note only a word of that does, and none that says it is not so. */
function wordOf({ verb, value }: Entry): string | null {
  if (verb === 'inside') return value;
  return verb === 'note' && COVERED.test(value) && !NOT_SO.test(value) ? value : null;
}

/** The first that has stood open since another day, and of which nobody has said how it is closed; null: none. */
export function openToAsk(job: Job, now: string): PieceOpening | null {
  return openOverNight(job, now).find(({ covered }) => covered === null) ?? null;
}

/** `a rag in the port`: it must come out again, however it is said. */
const ONE_THING = /^(?:(?:an?|one|the)\s+)?(rag|cloth|plug|cork|bung|sock|sponge)\b/i;

/** What somebody answers who is asked: things that must come out again, or how it is covered; null: it stands open. */
export function coverSaid(text: string): { inside: string } | { note: string } | null {
  const said = text.trim();
  if (said === '' || NOT_SO.test(said)) return null;
  if (/^\d+\s+\p{L}/u.test(said)) return { inside: said };
  const [, one] = ONE_THING.exec(said) ?? [];
  if (one !== undefined) return { inside: `1 ${one.toLowerCase()}` };
  return {
    note: COVERED.test(said)
      ? said
      : `covered: ${said.replace(/^yes\b[\s,:]*/i, '')}`.replace(/:\s*$/, ''),
  };
}

/** Left open since another day. */
export function openOverNight(job: Job, now: string): PieceOpening[] {
  return openings(job).filter(({ since }) => daysBetween(since, now) > 0);
}
