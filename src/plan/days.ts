/** Days and dates from RFC 3339 times, by the calendar of whoever wrote them down: no clock, no zone. */

interface Day {
  year: number;
  month: number;
  day: number;
}

function dayOf(time: string): Day | null {
  const [, year, month, day] = /^(\d{4})-(\d\d)-(\d\d)/.exec(time) ?? [];
  return year && month && day
    ? { year: Number(year), month: Number(month), day: Number(day) }
    : null;
}

/** Days since 1 March of the year 0: months counted from March, so that the leap day comes last. */
function count({ year, month, day }: Day): number {
  const y = month > 2 ? year : year - 1;
  const m = (month + 9) % 12;
  const leap = Math.floor(y / 4) - Math.floor(y / 100) + Math.floor(y / 400);
  return 365 * y + leap + Math.floor((153 * m + 2) / 5) + day - 1;
}

/** Whole days from one time to the other; never negative, 0 when one of them cannot be read. */
export function daysBetween(from: string, to: string): number {
  const [a, b] = [dayOf(from), dayOf(to)];
  return a && b ? Math.max(0, count(b) - count(a)) : 0;
}

const MONTHS = [
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

/** `11 April`, with the year where it is another than that of `now`. */
export function sayDate(time: string, now: string): string {
  const day = dayOf(time);
  const month = day ? MONTHS[day.month - 1] : undefined;
  if (!day || month === undefined) return time;
  const year = dayOf(now)?.year === day.year ? '' : ` ${day.year}`;
  return `${day.day} ${month}${year}`;
}

/** `today`, `1 day`, `21 days`. */
export function sayDays(days: number): string {
  if (days === 0) return 'today';
  return days === 1 ? '1 day' : `${days} days`;
}

/** `12:40`, `07:40 tomorrow`, `14 April, 12:40`, `14 April`: a time or a date, both written in the same zone as `now`. */
export function sayTime(time: string, now: string): string {
  const clock = /T(\d\d:\d\d)/.exec(time)?.[1];
  if (clock === undefined) return sayDate(time, now);
  if (time.slice(0, 10) === now.slice(0, 10)) return clock;
  return daysBetween(now, time) === 1 ? `${clock} tomorrow` : `${sayDate(time, now)}, ${clock}`;
}

/** Since when something is so: `10:28` today, else `11 April`. */
export function saySince(time: string, now: string): string {
  return sayOn(time, now).replace(/^(?:at|on) /, '');
}

/** When something happened: `at 10:28` today, else `on 11 April`. */
export function sayOn(time: string, now: string): string {
  const clock = /T(\d\d:\d\d)/.exec(time)?.[1];
  if (clock !== undefined && time.slice(0, 10) === now.slice(0, 10)) return `at ${clock}`;
  return `on ${sayDate(time, now)}`;
}
