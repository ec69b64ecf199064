/** Moves the times of a diary, so that the practice jobs were left alone for a few weeks whenever one begins. */

const AT = /\bat: (\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d)([+-]\d\d:\d\d|Z)/g;
const DAY = 24 * 60 * 60 * 1000;

/** The same text with all its times moved by whole days; the last one lies `days` before `now` (RFC 3339). */
export function agedTo(text: string, now: string, days: number): string {
  const times = [...text.matchAll(AT)].map((m) => Date.parse(`${m[1]}${m[2]}`));
  if (times.length === 0) return text;
  const shift = Math.floor((Date.parse(now) - days * DAY - Math.max(...times)) / DAY) * DAY;
  return text.replace(AT, (_, local: string, offset: string) => {
    const moved = new Date(Date.parse(`${local}Z`) + shift).toISOString().slice(0, 19);
    return `at: ${moved}${offset}`;
  });
}
