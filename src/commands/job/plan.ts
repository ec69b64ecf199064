/** The whole job: what can be done now, what is held by what, and the order off and on. */

import { inWords } from '../../job/truth/said.ts';
import type { Job } from '../../model/types.ts';
import { list } from '../../model/words.ts';
import { type NextTold, waitsBefore } from '../../plan/next/next-on-job.ts';
import { waitsSaid } from '../../plan/next/waits-for.ts';
import { reach } from '../../plan/order/reach.ts';
import { sayStepName, taskSaid } from '../../plan/order/say.ts';
import { type Plan, plan } from '../../plan/plan.ts';
import { type Cure, curesNow, sayCureOf } from '../../plan/seal/cure.ts';
import { letThrough } from '../../plan/task/task-now.ts';
import { type TestItem, testList } from '../../plan/tests/testlist.ts';
import { withinMinutes } from '../../plan/twenty.ts';
import { minutesTyped } from '../../plan/typed/minutes.ts';
import { nowHere } from '../../world.ts';
import { benchOf } from '../base/bench-of.ts';
import { type Answer, answer, type Call, misuse, optionText } from '../base/command.ts';
import { openJob, unknownPiece } from '../base/open-job.ts';
import { nothingSaid } from '../base/unread.ts';

/** About a week of days and nights. */
const MOST_MINUTES = 9999;

export function run(call: Call): Answer {
  const opened = openJob(call.words[0] ?? '', call.world);
  if ('answer' in opened) return opened.answer;
  const { job } = opened;
  const now = nowHere(call.world);
  const { hours = null } = benchOf(call.world, opened.file) ?? {};
  const allCures = curesNow(job, now);
  // What a wait of the file tells stands among what is held.
  const curing = allCures.filter((cure) => cure.wait === null);
  const minutes = optionText(call, 'minutes');
  if (minutes !== undefined) return inTime(job, minutes, now, curing);
  const goal = optionText(call, 'reach');
  if (goal !== undefined && !job.pieces.has(goal)) return unknownPiece(goal, job);
  const all = plan(job, now, hours);
  const tests = testList(job, now);
  const way = goal === undefined ? null : reach(job, goal);
  const lines = [
    way === null ? '' : `To reach ${goal}: ${way.join(', ')}`,
    section(
      'Can be done now',
      all.canDo.map((c) => c.say),
    ),
    section(
      'Held',
      all.heldBy.map(({ step }) => heldSaid(job, step, { plan: all, cures: allCures, now })),
    ),
    section('Cures', sayCures(curing, now)),
    inOrder('Off, in this order', all, 'off'),
    inOrder('Back on, in this order', all, 'on'),
    section(
      'Tests',
      tests.map((test) => testSaid(job, test)),
    ),
    all.finish === null ? '' : `Done at the earliest: ${all.finish}`,
    all.critical === null ? '' : `What that hangs on: ${all.critical.join(', ')}`,
  ].filter((s) => s !== '');
  const text = lines.length > 0 ? lines.join('\n\n') : nothingSaid(job, 'Nothing is left to do.');
  const json = { ...all, cures: curing, tests };
  return answer({ ...json, ...(way === null ? {} : { reach: way }) }, text);
}

/** What can be done in so much time and be left safe. */
function inTime(job: Job, said: string, now: string, cures: readonly Cure[]): Answer {
  const count = minutesTyped(said);
  if (count === null || count > MOST_MINUTES) {
    const taken = `1 to ${MOST_MINUTES} minutes are taken, like 20, 45 min or 1 h`;
    return misuse('bad-number', `--minutes ${said || '“”'} is no such time: ${taken}.`);
  }
  const found = withinMinutes(job, count, now);
  const doable = [...found.can, ...found.maybe].map((d) => {
    const time = d.minutes === null ? 'if it is short' : `about ${d.minutes} min`;
    return `${d.say} (${time})${d.leave === null ? '' : ` ${d.leave}`}`;
  });
  const nothing = 'Nothing that could be left safe.';
  const lines = [section(`In ${count} minutes`, doable) || nothing, ...sayCures(cures, now)];
  return answer({ ...found, cures }, lines.join('\n'));
}

const sayCures = (cures: readonly Cure[], now: string): string[] =>
  cures.map((cure) => sayCureOf(cure, now));

function section(head: string, lines: readonly string[]): string {
  return lines.length === 0 ? '' : [`${head}:`, ...lines.map((l) => `  ${l}`)].join('\n');
}

/** The pieces that have still to come off, or to go on; empty for fewer than two, where there is no order. */
function inOrder(head: string, { steps }: Plan, kind: 'off' | 'on'): string {
  const open = steps.filter((s) => s.kind === kind && !s.done).map((s) => s.step.split(' ')[0]);
  return open.length < 2 ? '' : `${head}: ${open.join(', ')}`;
}

function heldSaid(job: Job, step: string, told: NextTold): string {
  const waits = waitsBefore(job, step, told);
  return [sayStepName(job, step), ...(waits === '' ? [] : [waitsSaid(waits)])].join(' ');
}

function testSaid(job: Job, test: TestItem): string {
  const { say, limit, when } = taskSaid(job, { ...test, key: test.test });
  const within = limit === null ? [] : [': ', limit];
  const then = when === null ? [] : [', ', when];
  const stops = test.stops.length === 0 ? '' : `; not run yet: ${list(test.stops)}`;
  const through =
    test.state === 'passed' ? letThrough(job.tasks.get(test.test)?.judged ?? null) : null;
  const how = through === null ? test.state : `let through ${through}`;
  return inWords([`${test.test}: `, say, ...within, ...then, ` (${how}${stops})`]);
}
