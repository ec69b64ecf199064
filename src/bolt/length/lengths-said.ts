/** Lengths in words: what may go in, what is made, what to buy. */
import { MEASURES } from '../fit/fit-measure.ts';
import { printNumber } from '../read/numbers.ts';
import type { Lengths, Range } from './lengths.ts';

const mm = (value: number) => printNumber(Math.round(value * 10) / 10);

/** `20, (22), 25`; the second choice in brackets, as in ISO 888. */
function standardLengths({ standard }: Range, inch: boolean): string {
  const name = ({ length, text }: Range['standard'][number]) =>
    inch ? (/ x (\S+)/.exec(text)?.[1] ?? mm(length)) : mm(length);
  return standard.map((s) => (s.second ? `(${name(s)})` : name(s))).join(', ');
}

/** One sentence; null where not even the right length is known. */
function sayRange(range: Range, open: boolean, inch: boolean): string | null {
  const { shortest, longest, standard } = range;
  if (shortest === null) return null;
  if (open && longest === null) {
    return `From ${mm(shortest)} mm on it holds; nothing to bottom in, look what lies behind.`;
  }
  if (longest === null) return null;
  if (longest < shortest) {
    return `No length will do: it holds from ${mm(shortest)} mm on and bottoms beyond ${mm(longest)}.`;
  }
  const unit = inch ? ' in' : '';
  const has =
    standard.length === 0 ? 'none is made so' : `made in ${standardLengths(range, inch)}${unit}`;
  return `${mm(shortest)} to ${mm(longest)} mm hold and do not bottom; ${has}.`;
}

/** The line on the page of a hole: nothing where only the right length is known. */
export function lengthsLine(lengths: Lengths, inch: boolean): string | null {
  const known = !lengths.measure.includes('turns') || lengths.measure.length === 0;
  return known ? sayRange(lengths, lengths.open, inch) : null;
}

/** All of it, line by line. */
export function sayLengths(lengths: Lengths, inch: boolean): string[] {
  const { shortest, longest, open, measure, notes, buy, afterInsert } = lengths;
  const same = shortest !== null && shortest === longest && measure.length > 0;
  const range = same
    ? `${mm(shortest)} mm came out of it; of no other is it known that it will do.`
    : sayRange(lengths, open, inch);
  const insert = afterInsert && sayRange(afterInsert, open, inch);
  const lost = buy === null ? 'none of the standard lengths: cut a longer one' : buy;
  return [
    ...(range === null ? [] : [range]),
    ...notes,
    ...(range === null && buy === null ? [] : [`If it is lost, buy: ${lost}.`]),
    ...(insert && afterInsert
      ? [
          `With a wire insert ${mm(afterInsert.insert)} mm long, drilled ${mm(afterInsert.depth)} mm deep: ${insert}`,
          ...(afterInsert.buy === null ? [] : [`Then buy: ${afterInsert.buy}.`]),
        ]
      : []),
    ...measure.map((what) => `To know more, ${MEASURES[what]}.`),
  ];
}
