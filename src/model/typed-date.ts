/** A day as somebody types it at the bench: no clock of its own, the day it is comes from outside. */
import { DAY, printInstant, readDay, readInstant } from './time.ts';

const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];

const WEEKDAYS = ['sunday', 'monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday'];

/** Days until the next such day of the week; of today's own a week. */
function daysTo(weekday: number, { seconds, offset }: { seconds: number; offset: number }): number {
  // 1 January 1970 was a Thursday.
  const now = (Math.floor((seconds + offset * 60) / DAY) + 4) % 7;
  return ((weekday - now + 6) % 7) + 1;
}

/**
 * `2026-04-25` for `25 April`, `april 25`, `25.4.`, `25.4.2026`, `25`, `5 days`, `2 weeks`, `tomorrow`, `saturday`, `2026-04-25`;
 * where no year is said the next such day from `now` (RFC 3339) on. Null where that is no day. Days alone with a point are day before month.
 */
export function typedDate(text: string, now: string): string | null {
  const typed = text.trim().toLowerCase();
  const today = readInstant(now);
  if (!today) return null;
  const inDays = (days: number) =>
    // Days of the calendar, not of 24 hours: on the one clock of today.
    printInstant({ seconds: today.seconds + days * DAY, offset: today.offset }).slice(0, 10);
  if (typed === 'today') return inDays(0);
  if (typed === 'tomorrow') return inDays(1);
  const [, count, unit] = /^(?:in )?(\d{1,3}) ?(days?|d|weeks?|w)$/.exec(typed) ?? [];
  if (count && unit) return inDays(Number(count) * (unit.startsWith('w') ? 7 : 1));
  if (/^\d{4}-\d\d-\d\d$/.test(typed)) return readDay(typed, 0) ? typed : null;
  const weekday = WEEKDAYS.findIndex((name) => name === typed || name.slice(0, 3) === typed);
  if (weekday >= 0) return inDays(daysTo(weekday, today));
  const [, front, year] = /^(.*?),? ?((?:19|20|21)\d\d)$/.exec(typed) ?? [];
  const named = dayAndMonth(front ?? typed);
  if (!named) return null;
  if (year !== undefined) {
    const date = `${year}-${two(named.month ?? 0)}-${two(named.day)}`;
    return readDay(date, 0) ? date : null;
  }
  return nextSuch(named, inDays(0));
}

interface Named {
  day: number;
  /** From 1; null for the next such day of any month. */
  month: number | null;
}

function dayAndMonth(typed: string): Named | null {
  const [, first, month1] = /^(\d{1,2})(?:st|nd|rd|th|\.)? ?([a-z]{3,9})\.?$/.exec(typed) ?? [];
  const [, month2, second] = /^([a-z]{3,9})\.? (\d{1,2})(?:st|nd|rd|th)?$/.exec(typed) ?? [];
  const word = month1 ?? month2;
  if (word !== undefined) {
    const at = MONTHS.indexOf(word.slice(0, 3));
    return at < 0 ? null : { day: Number(first ?? second), month: at + 1 };
  }
  const [, day, month] = /^(\d{1,2})\. ?(\d{1,2})\.?$/.exec(typed) ?? [];
  if (day && month) return { day: Number(day), month: Number(month) };
  const alone = /^(\d{1,2})(?:st|nd|rd|th|\.)?$/.exec(typed)?.[1];
  return alone ? { day: Number(alone), month: null } : null;
}

/** The first such day that is not over; years are tried, since 29 February does not come every year. */
function nextSuch({ day, month }: Named, today: string): string | null {
  const year = Number(today.slice(0, 4));
  const from = Number(today.slice(5, 7));
  for (let i = 0; i < 12 * 9; i += 1) {
    const at = from - 1 + i;
    const m = (at % 12) + 1;
    if (month !== null && m !== month) continue;
    const date = `${year + Math.floor(at / 12)}-${two(m)}-${two(day)}`;
    if (date >= today && readDay(date, 0)) return date;
  }
  return null;
}

function two(n: number): string {
  return `${n}`.padStart(2, '0');
}
