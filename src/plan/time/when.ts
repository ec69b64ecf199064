/** When something is due, out of a text: `next day`, `after 50 km`, `after 10 h of running`, `in 6 months`. */
import { type Pattern, pattern } from '../../model/pattern.ts';
import { DURATION_NUMBER, figureOfTime, mayHaveFigure } from './duration.ts';

export interface When {
  /** km that are run until then. */
  km: number | null;
  /** Hours that it runs until then. */
  hours: number | null;
  /** By the calendar: whole days, or whole months. */
  span: WhenSpan | null;
}

export type WhenSpan = { days: number } | { months: number };

const GROUPED = String.raw`[1-9]\d{0,2}(?:[., '’]\d{3})+(?![\d.,])`;
const FIGURE = String.raw`([-−–]?(?:${GROUPED}|${DURATION_NUMBER})(?:e[+-]?\d+)?)`;
const RANGE = String.raw`(?:${FIGURE}\s*(?:\.{2,3}|[-–—]|\bto\b|\bor\b)\s*)?`;
const AMOUNT = String.raw`(?<![\p{L}\p{N}.,/⁄])${RANGE}${FIGURE}`;
const KM = pattern(() => String.raw`${AMOUNT}\s*(km|kilomet(?:er|re)s?|mi|miles?)\b`, 'iu');
const HOURS = pattern(() => String.raw`${AMOUNT}\s*(h|hrs?|hours?|min|minutes?)\b`, 'iu');
const RUNNING = /\b(?:runn?ing|run|riding|use|operation|work)\b/i;
/** What goes on while it stands. */
const BY_CLOCK = /\b(?:cur|dr[yi]|set|rest|stand|cool|soak|overnight)/i;
const UNIT = 'days?|weeks?|months?|years?|seasons?';
const SPAN = pattern(() => String.raw`${AMOUNT}[\s-]*(${UNIT})\b`, 'iu');
const NEXT = pattern(() => String.raw`\bnext\s+(${UNIT})\b`, 'i');

/** km in a mile, exact. */
const MILE = 1.609344;
/** What is more is a slip: km and hours that nothing runs, years that nobody waits. */
const MOST = { km: 10_000_000, hours: 1_000_000, years: 100 };

/**
 * Of a range the longer end, as for all that is waited for. Null where the text names none of these; what no calendar
 * and no counter can have is told as it stands there: `-5 days`. `hourMeter`: the counter of the machine shows hours, so
 * that `after 50 h` is what it has run by then, and not what the clock says.
 */
export function readWhen(text: string, hourMeter = false): When | { odd: string } | null {
  if (!mayHaveFigure(text) && !/next/i.test(text)) return null;
  const km = amountIn(KM, text);
  const time = amountIn(HOURS, text);
  const span = spanIn(text);
  const odd = [km, time, span].find((one) => one?.odd);
  if (odd) return { odd: odd.said };
  const runs = RUNNING.test(text) || (hourMeter && (time?.worth ?? 0) >= 1 && !BY_CLOCK.test(text));
  const hours = time && runs ? time.worth : null;
  if (!km && hours === null && !span) return null;
  return { km: km?.worth ?? null, hours, span: span?.is ?? null };
}

interface Amount {
  /** In the unit that counts: km, hours, days or months. */
  worth: number;
  said: string;
  odd: boolean;
}

function amountIn(amount: Pattern, text: string): Amount | null {
  const found = figureIn(amount, text);
  if (!found) return null;
  const { figure, unit, said } = found;
  const miles = amount === KM && unit.startsWith('mi');
  const minutes = amount === HOURS && unit.startsWith('m');
  const worth = miles ? figure * MILE : minutes ? figure / 60 : figure;
  const most = amount === KM ? MOST.km : MOST.hours;
  return { worth, said, odd: !(worth >= 0 && worth <= most) };
}

function spanIn(text: string): (Amount & { is: WhenSpan }) | null {
  const next = NEXT.exec(text);
  const found = next ? { figure: 1, unit: next[1] ?? '', said: next[0] } : figureIn(SPAN, text);
  if (!found) return null;
  const { figure, said } = found;
  const unit = found.unit.toLowerCase();
  const byDay = /^[dw]/.test(unit);
  // A season is half a year, common practice, no source.
  const each = unit.startsWith('w') ? 7 : unit.startsWith('y') ? 12 : unit.startsWith('s') ? 6 : 1;
  const worth = Math.ceil(figure * each);
  const years = worth / (byDay ? 365 : 12);
  const odd = !(figure >= 0 && years <= MOST.years);
  return { worth, said, odd, is: byDay ? { days: worth } : { months: worth } };
}

function figureIn(
  amount: Pattern,
  text: string,
): { figure: number; unit: string; said: string } | null {
  const found = amount.exec(text);
  if (!found) return null;
  const [said, from, to = '', unit = ''] = found;
  const [a, b] = [from === undefined ? null : signed(from), signed(to)];
  const figure = a === null ? b : a < 0 ? a : Math.max(a, b);
  return { figure, unit: unit.toLowerCase(), said: said.trim() };
}

function signed(text: string): number {
  const [, sign = '', rest = '', exponent = ''] = /^([-−–]?)(.*?)(e[+-]?\d+)?$/i.exec(text) ?? [];
  const grouped = new RegExp(`^${GROUPED}$`).test(rest);
  const figure = grouped ? Number(rest.replace(/\D/g, '')) : figureOfTime(rest);
  return (sign === '' ? 1 : -1) * Number(`${figure}${exponent}`);
}
