/** What the plan says of a job as it stands, asked once: what a step waits for. */
import type { Job } from '../../model/types.ts';
import { planNow } from '../plan.ts';
import { cures } from '../seal/sealant.ts';
import { type NextTold, waitsBefore } from './next-on-job.ts';

export function toldNow(job: Job, now: string): NextTold {
  return { plan: planNow(job, now), cures: cures(job, now), now };
}

/** What has to be done, had or out before it; empty where nothing is in the way. */
export function waitsNow(job: Job, step: string, now: string): string {
  return waitsBefore(job, step, toldNow(job, now));
}

/** `after 100 km` says itself what is waited for. */
const BY_USE = /^(?:after|next|at the next) /i;

export function waitsSaid(waits: string): string {
  return BY_USE.test(waits) ? `to come ${waits}` : `waits for ${waits}`;
}

/** For a row that is headed by it; null where the row of when it is due says it. */
export function waitsRow(waits: string): string | null {
  return waits === '' || BY_USE.test(waits) ? null : waits;
}
