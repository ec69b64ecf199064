/**
 * A torque held against the thread it is for. It refuses nothing: the maker's figure goes first. It only notices what
 * no bolt stands, and the slips of unit and point that end so.
 */
import type { Quantity } from '../../model/types.ts';
import { printNumber, tidy } from '../read/numbers.ts';
import { convert, printQuantity } from '../read/units.ts';
import { strengthOf } from '../thread/strength.ts';
import { threadOf } from '../thread/threads.ts';
import { atYield } from './preload.ts';
import type { StandingFigure } from './standing.ts';

export type SaneVerdict = 'fine' | 'high' | 'low' | 'insane';

export interface Suggestion extends StandingFigure {
  why: string;
}

export interface Sane {
  verdict: SaneVerdict;
  suggest: Suggestion[];
  /** What the dry bolt stands in steel at 90 % of yield. */
  stands: StandingFigure;
  /** The mark reckoned with where none was known; null when it was. */
  assumed: string | null;
  /** One sentence for the screen; null when all is fine. */
  say: string | null;
  method: string;
  source: string;
}

/** The mark that is reckoned with, and said to be, where none is known. */
export const ASSUMED = '8.8';
/** Friction of dry steel as delivered (VDI 2230-1). */
export const DRY = 0.14;
/** Shares of what the bolt stands. Above 1.15 the friction must be out of the ordinary; 1.5 breaks it. */
const HIGH = 1.15;
export const BREAKS = 1.5;
/** Below this the bolt hardly clamps; below the next one a point or a unit has gone astray. */
const LOW = 0.25;
const ASTRAY = 0.12;
/** A slip explains a figure when, undone, it lies where makers' figures lie. */
const USUAL = { from: 0.3, to: 1.1, middle: 0.8 };

/** Typed unit → what may have been meant, the commonest slip first (common practice, no source). */
const SLIPS: ReadonlyMap<string, readonly string[]> = new Map([
  ['lbf·ft', ['lbf·in', 'N·m']],
  ['lbf·in', ['lbf·ft', 'ozf·in', 'N·m']],
  ['N·m', ['lbf·ft', 'kgf·m', 'lbf·in', 'kgf·cm', 'N·cm']],
  ['kgf·m', ['N·m', 'kgf·cm', 'lbf·ft']],
  ['kgf·cm', ['N·m', 'kgf·m', 'lbf·in']],
  ['ozf·in', ['lbf·in']],
  ['N·cm', ['N·m']],
  ['cN·m', ['N·m']],
  ['daN·m', ['N·m']],
]);

function suggestions(q: Quantity, stands: number, upward: boolean): Suggestion[] {
  const share = (value: number, unit: string) => (convert(value, unit, 'N·m') ?? 0) / stands;
  const usual = (s: number) => s >= USUAL.from && s <= USUAL.to;
  const meant = (SLIPS.get(q.unit) ?? [])
    .filter((unit) => usual(share(q.value, unit)))
    .map((unit) => ({ value: q.value, unit, why: `${q.unit} written for ${unit}` }));
  const points = [
    { value: tidy(q.value / 10), unit: q.unit, why: 'a point left out' },
    { value: tidy(q.value * 10), unit: q.unit, why: 'a point too many' },
  ].filter((s) => usual(share(s.value, s.unit)));
  const typed = share(q.value, q.unit);
  return [...meant, ...points].filter((s) => upward || share(s.value, s.unit) < typed);
}

function judged(low: number, high: number, marked: boolean, upward: boolean): SaneVerdict {
  if (high > BREAKS) return 'insane';
  if (!upward) return marked && high > HIGH ? 'high' : 'fine';
  if (high > HIGH) return 'high';
  if (low < ASTRAY) return 'insane';
  return low < LOW ? 'low' : 'fine';
}

function sentence(
  v: SaneVerdict,
  q: Quantity,
  thread: string,
  mark: string,
  stands: StandingFigure,
  first: Suggestion | undefined,
) {
  if (v === 'fine') return null;
  const size = `${printNumber(stands.value, 3)} N·m`;
  const bolt = `${thread} ${mark}`;
  const ask = first ? ` Was ${printNumber(first.value)} ${first.unit} meant?` : '';
  const good = `dry, such a bolt is good for ${size}`;
  const facts = {
    high: `${printQuantity(q)} may stretch ${bolt}: ${good}.`,
    low: `${printQuantity(q)} hardly clamps ${bolt}: ${good}.`,
    insane: `${printQuantity(q)} cannot be right for ${bolt}: ${good}.`,
  };
  return `${facts[v]}${ask} The maker's figure goes first: look it up again.`;
}

/**
 * Whether a torque can be right for a thread. With no mark known it speaks only of more than 1.5 times what a dry 8.8
 * bolt stands. Nothing is too low for an unmarked bolt, nor where `solid` is not so: a plug, a hollow part, a stage
 * before an angle. Null for a thread without figures, or what is no torque.
 */
export function sane(
  q: Quantity,
  thread: string,
  mark: string | null = null,
  solid = true,
): Sane | null {
  const t = threadOf(thread);
  const low = convert(q.value, q.unit, 'N·m');
  const high = convert(q.to ?? q.value, q.unit, 'N·m');
  const known = t && strengthOf(mark, t.d) ? mark : null;
  const at = t && atYield(t, known ?? ASSUMED, DRY, 0.9);
  if (!t || low === null || high === null || !at) return null;
  const stands = { value: at.torque, unit: 'N·m' };
  const upward = solid && known !== null;
  const found = suggestions(q, at.torque, upward);
  const verdict = judged(low / at.torque, high / at.torque, known !== null, upward);
  const suggest = verdict === 'fine' ? [] : found;
  return {
    verdict,
    suggest,
    stands,
    assumed: known === null ? ASSUMED : null,
    say: sentence(verdict, q, t.name, known ?? `${ASSUMED} (assumed)`, stands, suggest[0]),
    method: `against VDI 2230 at 90 % of yield, friction ${DRY}`,
    source: `VDI 2230-1:2015; ${strengthOf(known ?? ASSUMED, t.d)?.source ?? ''}`,
  };
}
