/** Times as people and the diary write them, as seconds and back: no clock, no zone but the one written down. */

/** A moment: seconds since 1970-01-01T00:00:00Z, and minutes east of it where it was written. */
export interface Instant {
  seconds: number;
  offset: number;
  /** Name of the zone, `Europe/Berlin`, where that was written with it: another day of it may have another offset. */
  zone?: string;
}

/** Seconds. */
export const DAY = 86_400;
/** Milliseconds on either side of 1970 that the engine's calendar knows. */
const FARTHEST = 8.64e15;
const TIME =
  /^(\d{4}-\d\d-\d\d)T(\d\d):(\d\d):(\d\d(?:\.\d+)?)(?:Z|([+-])(\d\d):(\d\d))(?:\[([\w+/-]+)\])?$/;
const DATE = /^\d{4}-\d\d-\d\d$/;

/**
 * RFC 3339 with its offset, and the name of its zone behind it in brackets where that is known (RFC 9557); null for
 * anything else. Parts of a second do not count. A zone that had another offset then counts for nothing.
 */
export function readInstant(text: string): Instant | null {
  const at = momentOf(text);
  if (!at?.day.real) return null;
  const { offset, zone } = at;
  const seconds = Math.floor(at.seconds);
  const holds = zone !== undefined && offsetIn(zone, seconds) === offset;
  return holds ? { seconds, offset, zone } : { seconds, offset };
}

const formats = new Map<string, Intl.DateTimeFormat | null>();
let own: { zone: string; offsetAt: (seconds: number) => number } | null = null;

/**
 * The zone of this machine, and the minutes east of Greenwich of its clock: what is asked most often, told without
 * loading what the engine knows of the world's zones and languages.
 */
export function ownZone(zone: string, offsetAt: (seconds: number) => number): void {
  own = { zone, offsetAt };
}

/** From then on all zones keep whole minutes, as `offsetAt` tells them: 1973. */
const WHOLE_MINUTES = 94_694_400;

/** Minutes east of Greenwich in a zone at a moment; null for a zone or a time that nobody knows. */
function offsetIn(zone: string, seconds: number): number | null {
  if (zone === own?.zone && seconds >= WHOLE_MINUTES && seconds * 1000 <= FARTHEST)
    return own.offsetAt(seconds);
  const format = formats.has(zone) ? formats.get(zone) : formatIn(zone);
  formats.set(zone, format ?? null);
  if (!format || Math.abs(seconds) * 1000 > FARTHEST) return null;
  const name = format.formatToParts(seconds * 1000).find((p) => p.type === 'timeZoneName')?.value;
  const [whole, sign, h = 0, m = 0] = /^GMT(?:([+-])(\d\d):(\d\d))?$/.exec(name ?? '') ?? [];
  return whole === undefined ? null : (sign === '-' ? -1 : 1) * (Number(h) * 60 + Number(m)) + 0;
}

function formatIn(zone: string): Intl.DateTimeFormat | null {
  try {
    return new Intl.DateTimeFormat('en', { timeZone: zone, timeZoneName: 'longOffset' });
  } catch {
    return null;
  }
}

/** Seconds since 1970 with their parts; a day that there is not counts on into the next month. NaN for no time. */
export function secondsOf(text: string): number {
  return momentOf(text)?.seconds ?? Number.NaN;
}

function momentOf(text: string): (Instant & { day: Day }) | null {
  const [whole, date = '', h, m, s, sign, zoneH = 0, zoneM = 0, zone] = TIME.exec(text) ?? [];
  if (whole === undefined) return null;
  const offset = (sign === '-' ? -1 : 1) * (Number(zoneH) * 60 + Number(zoneM));
  const clock = Number(h) * 3600 + Number(m) * 60 + Number(s);
  const day = dayOf(date);
  const at = { seconds: day.number * DAY + clock - offset * 60, offset, day };
  return zone === undefined ? at : { ...at, zone };
}

/** A date (`2026-04-25`) as the first second of that day where `offset` holds, or a time; null for anything else. */
export function readDay(text: string, offset: number): Instant | null {
  if (!isDate(text)) return readInstant(text);
  const { number, real } = dayOf(text);
  return real ? { seconds: number * DAY - offset * 60, offset } : null;
}

/** Written as a date, whether there is such a day or not. */
export function isDate(text: string): boolean {
  return DATE.test(text);
}

/**
 * RFC 3339, whole seconds, on the clock of its zone at that moment, else at its offset; empty for a time that nobody knows
 * (NaN, infinite).
 */
export function printInstant(at: Instant): string {
  const { seconds, zone } = at;
  if (!Number.isFinite(seconds)) return '';
  const offset = (zone === undefined ? null : offsetIn(zone, Math.round(seconds))) ?? at.offset;
  const local = (Math.round(seconds) + offset * 60) * 1000;
  const sign = `${offset < 0 ? '-' : '+'}${two(Math.abs(offset) / 60)}:${two(Math.abs(offset) % 60)}`;
  const known = new Date(Math.max(-FARTHEST, Math.min(local, FARTHEST))).toISOString();
  // From the year 10000 on the engine writes a sign and six digits.
  return known.replace(/^\+0?/, '').replace(/\.\d+Z$/, sign);
}

/** Whole days of the calendar from one time or date to the other, each by its own zone; 0 where one cannot be read. */
export function daysBetween(from: string, to: string): number {
  const a = from.slice(0, 10);
  const b = to.slice(0, 10);
  if (!isDate(a) || !isDate(b)) return 0;
  return Math.max(0, dayOf(b).number - dayOf(a).number);
}

interface Day {
  /** Since 1970-01-01; a day that there is not counts on into the next month. */
  number: number;
  /** Whether there is such a day. */
  real: boolean;
}

function dayOf(date: string): Day {
  const [month, day] = [Number(date.slice(5, 7)) - 1, Number(date.slice(8))];
  const midnight = new Date(0);
  // Date.UTC would take the years 0 to 99 for those of the last century.
  const number = midnight.setUTCFullYear(Number(date.slice(0, 4)), month, day) / (DAY * 1000);
  return { number, real: midnight.getUTCMonth() === month && midnight.getUTCDate() === day };
}

function two(n: number): string {
  return String(Math.floor(n)).padStart(2, '0');
}

/** As one says them, January first. */
export const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];
