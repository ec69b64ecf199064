/** What a step waits for, in words. */
import type { Job } from '../../job/types.ts';
import { planNow } from './plan-now.ts';
import { sayStepName } from './say-step.ts';
import { sayTime } from './say-wait.ts';
import { curesUntil } from './sealant.ts';
import { list } from './words.ts';

/** What has to be done, had or out before it; empty where nothing is in the way. */
export function waitsFor(job: Job, step: string, now: string): string {
  const held = planNow(job, now).heldBy.find((h) => h.step === step);
  if (!held) return '';
  const names = held.for.map((name) => job.upper.buys.get(name)?.what ?? sayStepName(job, name));
  const cures = names.length === 0 && held.until !== null && curesUntil(job, held.until, now);
  if (cures) names.push('the cure');
  const until = held.until === null ? '' : `until ${sayTime(held.until, now)}`;
  return [list(names), until].filter((t) => t !== '').join(', ');
}
