/** Days and dates from RFC 3339 times as one says them, by the calendar of whoever wrote them down. */

import { daysBetween, MONTHS } from '../../model/time.ts';
import { many } from '../../model/words.ts';

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
  return many(days, 'day');
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
