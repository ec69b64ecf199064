/**
 * What goes back after a wheel, and the wheel is still off: an axle that is called tight holds nothing then. By the
 * names of the trade, common practice, no source: so it is a question, and it asks where the file does not say what is
 * over what.
 */
import { oneOf } from '../../model/one-of.ts';
import type { Job, PieceNow, PieceSpec } from '../../model/types.ts';
import { isAway } from '../order/needed.ts';

/** What a wheel hangs on, or is held on by. */
const HOLDS = oneOf(
  '(?:(?:front|rear|back|wheel) )?(?:axles?|axels?|spindles?)|(?:wheel|lug|axle|spindle|hub) ?(?:nuts?|bolts?)',
);
const CALIPER = oneOf('call?ipers?');
const WHEEL = oneOf('wheels?|tyres?|tires?|hubs?|rims?');
/** Called so, and no wheel hangs on it; no wheel of the machine. */
const NOT = oneOf(
  '(?:swing(?:ing)? ?arm|gear|shift|selector|kick ?start(?:er)?|brake|pedal|stand|pivot|stub|lathe|drill|head ?stock) (?:axles?|spindles?)',
);
const NO_WHEEL = oneOf(
  '(?:hand|fly|gear|sprocket|star|cog|grinding|idler|pulley|worm|ratchet|steering|spare) ?wheels?|wheel (?:cylinders?|arch(?:es)?|guards?|speed)|(?:lamp|head ?lamp|light|glass) rims?',
);

function named({ key, name }: PieceSpec): string {
  return `${key.replaceAll('-', ' ')} ; ${name}`.toLowerCase();
}

const SIDES = [
  ['front', /\bfront\b/, /\b(?:rear|back)\b/],
  ['left', /\b(?:left|l\.?h)\b/, /\b(?:right|r\.?h)\b/],
] as const;

/** One names the front or the left side and the other does not: no two that belong together. */
function areOtherSides(one: string, other: string): boolean {
  return SIDES.some(
    ([, here, there]) =>
      (here.test(one) && there.test(other)) || (there.test(one) && here.test(other)),
  );
}

type How = 'holds' | 'caliper';

function howOf(name: string): How | null {
  if (HOLDS.test(name) && !NOT.test(name)) return 'holds';
  return CALIPER.test(name) ? 'caliper' : null;
}

function isWheel(name: string): boolean {
  return WHEEL.test(name) && !NO_WHEEL.test(name) && howOf(name) === null;
}

/** The file says itself which of them goes on first. */
function isSaid(one: PieceSpec, other: PieceSpec): boolean {
  const says = (a: PieceSpec, b: PieceSpec) => a.under.includes(b.key) || a.along.includes(b.key);
  return says(one, other) || says(other, one);
}

/** Wheels that are still off and would go on before this piece. */
export function wheelsOff(job: Job, { spec }: PieceNow): PieceNow[] {
  const name = named(spec);
  if (howOf(name) === null || spec.care?.includes('none')) return [];
  return [...job.pieces.values()].filter(
    (piece) =>
      piece.spec !== spec &&
      isAway(piece) &&
      isWheel(named(piece.spec)) &&
      !areOtherSides(name, named(piece.spec)) &&
      !isSaid(spec, piece.spec),
  );
}

/** `Front wheel is still off: does Front axle hold it?`; null where nothing is to be asked. */
export function wheelOffSaid(job: Job, piece: PieceNow): string | null {
  const [wheel] = wheelsOff(job, piece);
  if (!wheel) return null;
  const { name } = piece.spec;
  if (howOf(named(piece.spec)) === 'caliper') {
    return `${wheel.spec.name} is still off: does it go on before ${name}?`;
  }
  const does = /[^s]s$/i.test(name) ? 'do' : 'does';
  return `${wheel.spec.name} is still off: ${does} ${name} hold it?`;
}
