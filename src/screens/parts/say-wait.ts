/** When a wait is over, as one says it. */
import { daysBetween, sayDate } from './days.ts';

/** `12:40`, `12 April, 12:40`, `12 April`: a time or a date. */
export function sayTime(time: string, now: string): string {
  const clock = /T(\d\d:\d\d)/.exec(time)?.[1];
  if (clock === undefined) return sayDate(time, now);
  const today = time.slice(0, 10) === now.slice(0, 10) && daysBetween(time, now) === 0;
  return today ? clock : `${sayDate(time, now)}, ${clock}`;
}

export function sayWait(wait: { say: string; until: string | null }, now: string): string {
  return wait.until === null ? wait.say : `${wait.say}: until ${sayTime(wait.until, now)}`;
}
