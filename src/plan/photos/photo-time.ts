/** When a photograph was taken: the camera's clock, put right and with its zone, as the diary writes times. */
import { type Instant, printInstant, readInstant, secondsOf } from '../../model/time.ts';
import type { Job } from '../../model/types.ts';

/** Seconds that are added to a camera's clock: `3m20s`, `-1h`, `1d2h`; null: it is none. */
export function readShift(text: string): number | null {
  const said = text.trim().replace(/\s+/g, '');
  const [whole, sign, d, h, m, s] = SHIFT.exec(said) ?? [];
  if (whole === undefined || [d, h, m, s].every((part) => part === undefined)) return null;
  const [days, hours, minutes, seconds] = [d, h, m, s].map((part) => Number(part ?? 0));
  const all = (((days ?? 0) * 24 + (hours ?? 0)) * 60 + (minutes ?? 0)) * 60 + (seconds ?? 0);
  return sign === '-' || sign === '−' ? -all : all;
}
const SHIFT = /^([+−-]?)(?:(\d{1,4})d)?(?:(\d{1,5})h)?(?:(\d{1,6})m(?:in)?)?(?:(\d{1,7})s)?$/i;

/**
 * The moment of a clock without a zone, `2026-04-11T16:40:12`, by its offset where the camera says it, else by that of
 * the mark whose own clock was nearest; null: no time. It is told on the clock of that mark. `shift` is in seconds.
 */
export function takenAt(
  clock: string,
  offset: string | null,
  shift: number,
  job: Pick<Job, 'entries'>,
  now: string,
): Instant | null {
  const local = readInstant(`${clock}Z`);
  if (local === null) return null;
  const at = readInstant(`${clock}${offset ?? nearestZone(local.seconds, job, now)}`);
  if (at === null) return null;
  const seconds = at.seconds + shift;
  if (offset === null) return { ...at, seconds };
  const told = nearestZone(local.seconds + shift, job, now);
  return { seconds, offset: readInstant(`${clock}${told}`)?.offset ?? at.offset };
}

export function sayShot(at: Instant): string {
  return printInstant(at);
}

const ZONE = /(?:Z|[+-]\d\d:\d\d)$/;

function nearestZone(local: number, { entries }: Pick<Job, 'entries'>, now: string): string {
  let best = { zone: ZONE.exec(now)?.[0] ?? 'Z', off: Infinity };
  for (const { at } of entries) {
    const zone = ZONE.exec(at)?.[0];
    const off = Math.abs(secondsOf(at.replace(ZONE, 'Z')) - local);
    if (zone !== undefined && off < best.off) best = { zone, off };
  }
  return best.zone;
}
