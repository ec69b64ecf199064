/** Times as people and the diary write them, as seconds and back: no clock, no zone but the one written down. */

/** A moment: seconds since 1970-01-01T00:00:00Z, and minutes east of it where it was written. */
export interface Instant {
  seconds: number;
  offset: number;
}

const DAY = 86_400;
const TIME = /^(\d{4})-(\d\d)-(\d\d)T(\d\d):(\d\d):(\d\d)(?:\.\d+)?(?:Z|([+-])(\d\d):(\d\d))$/;
const DATE = /^(\d{4})-(\d\d)-(\d\d)$/;

/** RFC 3339 with its offset; null for anything else. Parts of a second do not count. */
export function readInstant(text: string): Instant | null {
  const [whole, year, month, day, h, m, s, sign, zoneH, zoneM] = TIME.exec(text) ?? [];
  if (whole === undefined) return null;
  const days = dayNumber(Number(year), Number(month), Number(day));
  if (days === null) return null;
  const east = (sign === '-' ? -1 : 1) * (Number(zoneH ?? 0) * 60 + Number(zoneM ?? 0));
  const clock = Number(h) * 3600 + Number(m) * 60 + Number(s);
  return { seconds: days * DAY + clock - east * 60, offset: east };
}

/** A date (`2026-04-25`) as the first second of that day where `offset` holds, or a time; null for anything else. */
export function readDay(text: string, offset: number): Instant | null {
  const [whole, year, month, day] = DATE.exec(text) ?? [];
  if (whole === undefined) return readInstant(text);
  const days = dayNumber(Number(year), Number(month), Number(day));
  return days === null ? null : { seconds: days * DAY - offset * 60, offset };
}

export function isDate(text: string): boolean {
  return DATE.test(text);
}

/** RFC 3339, whole seconds. */
export function printInstant({ seconds, offset }: Instant): string {
  const local = Math.round(seconds) + offset * 60;
  const days = Math.floor(local / DAY);
  const clock = local - days * DAY;
  const { year, month, day } = dateOf(days);
  const zone = `${offset < 0 ? '-' : '+'}${two(Math.abs(offset) / 60)}:${two(Math.abs(offset) % 60)}`;
  const time = `${two(clock / 3600)}:${two((clock / 60) % 60)}:${two(clock % 60)}`;
  return `${String(year).padStart(4, '0')}-${two(month)}-${two(day)}T${time}${zone}`;
}

/** The same for a time that may be unknown: empty for that. */
export function printNow(now: Instant): string {
  return Number.isFinite(now.seconds) ? printInstant(now) : '';
}

/** Whole days of the calendar from one time to the other, each by its own zone; 0 when one cannot be read. */
export function daysApart(from: string, to: string): number {
  const [a, b] = [localDay(from), localDay(to)];
  return a === null || b === null ? 0 : Math.max(0, b - a);
}

function localDay(text: string): number | null {
  const at = readInstant(text);
  return at === null ? null : Math.floor((at.seconds + at.offset * 60) / DAY);
}

function two(n: number): string {
  return String(Math.floor(n)).padStart(2, '0');
}

/** Years counted from March, so that the leap day comes last; 719,468 days from 0000-03-01 to 1970-01-01. */
const TO_1970 = 719_468;

/** Days since 1970-01-01 in the Gregorian calendar; null for a day that there is not. */
function dayNumber(year: number, month: number, day: number): number | null {
  const y = month > 2 ? year : year - 1;
  const leap = Math.floor(y / 4) - Math.floor(y / 100) + Math.floor(y / 400);
  const days = 365 * y + leap + marchDay((month + 9) % 12) + day - 1 - TO_1970;
  const back = dateOf(days);
  return back.year === year && back.month === month && back.day === day ? days : null;
}

/** Days before the month, months counted from March: 31, 30, 31, 30, 31 and again. */
function marchDay(month: number): number {
  return Math.floor((153 * month + 2) / 5);
}

const IN_400_YEARS = 146_097;

function dateOf(days: number): { year: number; month: number; day: number } {
  const from = days + TO_1970;
  const era = Math.floor(from / IN_400_YEARS);
  const d = from - era * IN_400_YEARS;
  // The leap days gone by are taken out, and what is left is years of 365 days.
  const y = Math.floor(
    (d - Math.floor(d / 1460) + Math.floor(d / 36_524) - Math.floor(d / 146_096)) / 365,
  );
  const inYear = d - (365 * y + Math.floor(y / 4) - Math.floor(y / 100));
  const m = Math.floor((5 * inYear + 2) / 153);
  const month = m < 10 ? m + 3 : m - 9;
  const year = era * 400 + y + (month <= 2 ? 1 : 0);
  return { year, month, day: inYear - marchDay(m) + 1 };
}
