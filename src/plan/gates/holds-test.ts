/** What stops before the start and is about the very pieces of a test: it is seen to before the test counts as passed. */
import type { Job } from '../../model/types.ts';
import { testsNow } from '../tests/testlist.ts';
import { gateOf } from './gate.ts';
import { stopsNow } from './gate-now.ts';
import type { ItemInWords } from './items.ts';

/** `Front caliper: lever pumped until it is firm.`; empty where nothing stops. `now` is RFC 3339. */
export function holdsTest(job: Job, task: string, now: string): ItemInWords[] {
  const pieces = testsNow(job, now).find((t) => t.test === task)?.pieces ?? [];
  if (pieces.length === 0) return [];
  return gateOf(job, 'start', null, now).filter(
    (item) => stopsNow(item) && pieces.some((key) => item.key.endsWith(`-${key}`)),
  );
}
