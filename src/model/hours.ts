/** The hours in which somebody works, and what is done by when in them. */
import { DAY } from './time.ts';

/** Minutes of a day, from 0 to 1440; the end is behind the start. */
export interface WorkSpan {
  from: number;
  to: number;
}
/** By day of the week, Monday first; null: nothing is said, and every hour is as good. */
export type Hours = readonly (readonly WorkSpan[])[] | null;

export const NO_HOURS: Hours = null;

/** 1970-01-01 was a Thursday. */
const THURSDAY = 3;

/**
 * When a piece of work is done that begins at `from` and takes so many seconds, in seconds since 1970; `offset`: minutes
 * east of Greenwich of the clock that the hours are meant by. Without hours it is done in one go.
 */
export function workedUntil(hours: Hours, from: number, work: number, offset: number): number {
  const week = (hours ?? []).flat().reduce((sum, { from: a, to }) => sum + (to - a) * 60, 0);
  if (work <= 0 || week === 0 || !Number.isFinite(from) || !Number.isFinite(work))
    return from + work;
  const local = from + offset * 60;
  // Whole weeks are gone by at once.
  const weeks = Math.ceil(work / week) - 1;
  let left = work - weeks * week;
  for (let day = Math.floor(local / DAY); ; day += 1) {
    for (const span of hours?.[(((day + THURSDAY) % 7) + 7) % 7] ?? []) {
      const begins = Math.max(local, day * DAY + span.from * 60);
      const room = day * DAY + span.to * 60 - begins;
      if (room <= 0) continue;
      if (left <= room) return begins + left - offset * 60 + weeks * 7 * DAY;
      left -= room;
    }
  }
}
