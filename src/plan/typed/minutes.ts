/** How long one has, as somebody types it. */
import { readDuration } from '../time/duration.ts';

/** Minutes: `20`, `45 min`, `1 h`; null where that is no time. */
export function minutesTyped(text: string): number | null {
  const plain = /^\d{1,4}$/.test(text.trim()) ? Number(text) : null;
  const seconds = readDuration(text)?.seconds;
  const minutes = plain ?? (seconds === undefined ? null : Math.round(seconds / 60));
  return minutes !== null && minutes > 0 ? minutes : null;
}
