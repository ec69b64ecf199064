/** Moves the times of a diary, so that the practice jobs were left alone for a few weeks whenever one begins. */

const AT = /\bat: (\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d)([+-]\d\d:\d\d|Z)/g;
const PROMISED = /\bpromised: "?(\d{4}-\d\d-\d\d)\b/g;
const DAY = 24 * 60 * 60 * 1000;

/** The same text with all its times moved by whole days; the last one lies `days` before `now` (RFC 3339). */
export function agedTo(text: string, now: string, days: number): string {
  const times = [...text.matchAll(AT)].map((m) => Date.parse(`${m[1]}${m[2]}`));
  if (times.length === 0) return text;
  const shift = Math.floor((Date.parse(now) - days * DAY - Math.max(...times)) / DAY) * DAY;
  const moved = (time: string) => new Date(Date.parse(time) + shift).toISOString();
  return text
    .replace(AT, (_, local: string, offset: string) => {
      return `at: ${moved(`${local}Z`).slice(0, 19)}${offset}`;
    })
    .replace(PROMISED, (said: string, day: string) =>
      said.replace(day, moved(`${day}T00:00:00Z`).slice(0, 10)),
    );
}
