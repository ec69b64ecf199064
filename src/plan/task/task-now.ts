/** A task, or a test that follows from what was disturbed, as the screens show it. */

import type { Job, TaskVerb } from '../../model/types.ts';
import { NO_READING } from '../../model/verbs/verbs.ts';
import { cautionsForTask } from '../care/cautions.ts';
import { waitsNow } from '../next/waits-for.ts';
import { planNow } from '../plan.ts';
import type { TestItem } from '../tests/testlist.ts';
import { testsNow } from '../tests/testlist.ts';

export interface TaskHere {
  key: string;
  verb: TaskVerb;
  say: string;
  limit: string | null;
  when: string | null;
  note: string | null;
  /** `open` unless somebody noted something. */
  state: 'open' | 'done' | 'failed';
  /** What was noted: `was 35 mm, set 25 mm`. */
  told: string;
  /** Times before at which it failed, each with what it showed. */
  failedBefore: { at: string; say: string }[];
  /** What it waits for, in words; empty where nothing is in the way. */
  waits: string;
  cautions: string[];
  /** The test as the plan has it; null for other tasks. */
  test: TestItem | null;
  /** It stands in the file. */
  listed: boolean;
}

export function taskHere(job: Job, key: string, now: string): TaskHere | null {
  const test = testsNow(job, now).find((t) => t.test === key) ?? null;
  const task = job.tasks.get(key);
  if (!task) return test ? ofTest(test) : null;
  const { spec } = task;
  const step = planNow(job, now).steps.find((s) => s.step === key);
  const done = step?.done ?? task.done !== null;
  const failed = test ? test.state === 'failed' : task.done === 'failed';
  const { was, set, result } = test ?? task;
  const bare = letThrough(task.judged);
  const words = [bare, saysOf(job, key)].filter((t) => t !== null).join(', ');
  const told = done || failed ? toldOf({ was, set, result }, words) : '';
  return {
    key,
    verb: spec.verb,
    say: spec.say.text,
    limit: spec.limit?.text ?? null,
    when: spec.when?.text ?? null,
    note: spec.note?.text ?? null,
    state: failed ? 'failed' : done ? 'done' : 'open',
    told,
    failedBefore: failedBefore(job, key),
    waits: done ? '' : waitsNow(job, key, now),
    cautions: cautionsForTask(spec).map((c) => c.say),
    test,
    listed: true,
  };
}

function ofTest(test: TestItem): TaskHere {
  const state = test.state === 'passed' ? 'done' : test.state === 'failed' ? 'failed' : 'open';
  return {
    key: test.test,
    verb: 'test',
    say: test.say,
    limit: test.limit,
    when: test.when,
    note: null,
    state,
    told: toldOf(test, null),
    failedBefore: [],
    // What keeps the machine from running stops on the page of the test by itself.
    waits: test.state === 'waits' && test.stops.length === 0 ? 'it is back on' : '',
    cautions: [],
    test,
    listed: false,
  };
}

/** What has to be told beside it wherever it is told as done; null where nothing has. */
export function letThrough(judged: string | null): string | null {
  if (judged === NO_READING) return 'without a reading';
  return judged === 'beyond' ? 'beyond its limit' : null;
}

type Told = Pick<TestItem, 'was' | 'set' | 'result'>;

function toldOf({ was, set, result }: Told, says: string | null): string {
  const plain = result === 'passed' || result === 'failed' ? null : result;
  return [was && `was ${was}`, set && `set ${set}`, plain, says].filter((t) => t).join(', ');
}

/** A pass later on takes no reading away. */
function failedBefore(job: Job, key: string): TaskHere['failedBefore'] {
  const all = job.entries.filter(
    (e) => e.task === key && e.verb === 'done' && job.living.has(e.id),
  );
  return all.slice(0, -1).flatMap(({ at, value, was, set, result, says }) => {
    if (value !== 'failed') return [];
    const read = { was: was ?? null, set: set ?? null, result: result ?? null };
    return [{ at, say: toldOf(read, says ?? null) }];
  });
}

function saysOf(job: Job, key: string): string | null {
  const last = job.entries.findLast(
    (e) => e.task === key && e.verb === 'done' && job.living.has(e.id),
  );
  const why =
    last?.judged === 'beyond' && last.because ? `let through because “${last.because}”` : null;
  return [why, last?.says ?? null].filter((t) => t !== null).join(', ') || null;
}
