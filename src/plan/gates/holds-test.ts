/** What stops before the start and holds a test: it is seen to, or left with a reason, before the test counts as passed. */
import { livingOf } from '../../job/fold/living-of.ts';
import type { Entry, Job } from '../../model/types.ts';
import { runs } from '../tests/runs.ts';
import { testsNow } from '../tests/testlist.ts';
import { atTime } from '../time/at-time.ts';
import { gateOf } from './gate.ts';
import { stopsNow } from './gate-now.ts';
import type { ItemInWords } from './items.ts';

/** That the lever was pumped until it is firm is what such a test says itself: it does not wait for its own answer. */
const PUMPS = /\bpump/i;
const ROLLS = /\b(?:walk|roll|push|slope|holds?|moves?)/i;

/**
 * A test for which the machine runs is held by all that stops before the start, any other one by what stops about its
 * own pieces: `Front caliper: lever pumped until it is firm.` Empty where nothing stops. `now` is RFC 3339.
 */
export function holdsTest(job: Job, task: string, now: string): ItemInWords[] {
  const test = testsNow(job, now).find((t) => t.test === task);
  if (!test) return [];
  const { say, when, pieces } = test;
  const all = runs({ verb: job.tasks.get(task)?.spec.verb ?? 'test', say, when });
  const past = atTime(job, now, 'overruled at the start', () => overruled(job));
  return gateOf(job, 'start', null, now).filter(
    ({ key, ...item }) =>
      stopsNow({ key, ...item }) &&
      (all || pieces.some((piece) => key.endsWith(`-${piece}`))) &&
      !(key.startsWith('brake-') && !all && PUMPS.test(say) && !ROLLS.test(say)) &&
      !past.has('all') &&
      !past.has(key),
  );
}

/** `Not back: Regulator.`, of a test for which the machine runs: nothing breaks by it, and it is told. Null: all is. */
export function notBackAt(job: Job, task: string, now: string): string | null {
  const test = testsNow(job, now).find((t) => t.test === task);
  if (!test || !runs({ ...test, verb: job.tasks.get(task)?.spec.verb ?? 'test' })) return null;
  return gateOf(job, 'start', null, now).find((item) => item.key === 'off')?.say ?? null;
}

/** What was left before the start with a reason, while nothing but looks, tests and remarks came after it. */
function overruled(job: Job): ReadonlySet<string> {
  const lines = livingOf(job);
  const since = lines.findLastIndex((entry) => !leavesAsIs(job, entry));
  return new Set(
    lines.slice(since + 1).flatMap(({ verb, value, because }) => {
      const [moment = '', item = ''] = value.split(' ');
      return verb === 'seen' && moment === 'start' && because !== undefined ? [item] : [];
    }),
  );
}

const LOOKS: readonly Entry['verb'][] = ['seen', 'struck', 'added', 'note', 'photo', 'reading'];

/** Nothing new can stop by it. */
function leavesAsIs(job: Job, { verb, task }: Entry): boolean {
  if (verb !== 'done') return LOOKS.includes(verb);
  return task !== undefined && job.tasks.get(task)?.spec.verb === 'test';
}
