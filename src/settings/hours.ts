/** The hours in which somebody works on a bench, as they are written day by day. */
import type { PairSpot, TextSpot } from '../job/yaml/spot.ts';
import { type Hours, NO_HOURS, type WorkSpan } from '../model/hours.ts';

const DAYS: readonly string[] = ['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun'];

/** `mon`, `mon-fri`, `sat-sun`; null: no day. */
function daysOf(text: string): number[] | null {
  const [first = '', last = first, more] = text.toLowerCase().split('-');
  const from = DAYS.indexOf(first.trim());
  const to = DAYS.indexOf(last.trim());
  if (from < 0 || to < from || more !== undefined) return null;
  return DAYS.flatMap((_, i) => (i >= from && i <= to ? [i] : []));
}

const CLOCK = /^(\d{1,2})(?:[:.](\d{2}))?$/;

/** Minutes of a day: `18:00`, `9`, `24:00`. */
function minutesOf(text: string): number | null {
  const [, hour = '', minute = '0'] = CLOCK.exec(text.trim()) ?? [];
  const minutes = hour === '' ? null : Number(hour) * 60 + Number(minute);
  return minutes === null || Number(minute) > 59 || minutes > 1440 ? null : minutes;
}

/** `18:00-21:00`, `9-12, 14-17`; null: it cannot be read, or ends before it begins. */
function spansOf(text: string): WorkSpan[] | null {
  const spans = text.split(',').map((part) => {
    const [from = '', to = '', more] = part.split('-');
    const span = { from: minutesOf(from), to: minutesOf(to) };
    if (span.from === null || span.to === null || more !== undefined) return null;
    return span.to > span.from ? { from: span.from, to: span.to } : null;
  });
  const read = spans.filter((span) => span !== null);
  return read.length === spans.length ? read.sort((a, b) => a.from - b.from) : null;
}

/** `unreadable` is told of each day or time that cannot be read. */
export function readHours(
  pairs: ReadonlyMap<string, PairSpot>,
  unreadable: (text: { at: number; text: string }) => null,
): Hours {
  const hours: WorkSpan[][] = DAYS.map(() => []);
  for (const { key, at, value } of pairs.values()) {
    const days = daysOf(key);
    const text: TextSpot | null = value.is === 'text' ? value : null;
    const spans = text === null ? null : spansOf(text.text);
    if (days === null) unreadable({ at, text: key });
    else if (spans === null) unreadable({ at: value.at, text: text?.text ?? '' });
    else for (const day of days) hours[day]?.push(...spans);
  }
  return hours.some((day) => day.length > 0) ? hours : NO_HOURS;
}
