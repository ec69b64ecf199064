/** When a wait is over, as one says it. */
import { sayTime } from '../../plan/days.ts';

export { sayTime };

export function sayWait(wait: { say: string; until: string | null }, now: string): string {
  return wait.until === null ? wait.say : `${wait.say}: until ${sayTime(wait.until, now)}`;
}
