/** The whole job: what can be done now, what is held by what, and the order off and on. */
import { withPrinted } from '../job/corrections.ts';
import type { Job } from '../job/types.ts';
import { plan } from '../plan/plan.ts';
import { reach } from '../plan/reach.ts';
import { type TestItem, testList } from '../plan/testlist.ts';
import { within } from '../plan/twenty.ts';
import { type Answer, answer, type Call, misuse, optionText } from './command.ts';
import { openJob, unknownPiece } from './open-job.ts';

export function run(call: Call): Answer {
  const opened = openJob(call.words[0] ?? '', call.world);
  if ('answer' in opened) return opened.answer;
  const { job } = opened;
  const now = call.world.now();
  const minutes = optionText(call, 'minutes');
  if (minutes !== undefined) return inTime(Number(minutes));
  const goal = optionText(call, 'reach');
  if (goal !== undefined && !job.pieces.has(goal)) return unknownPiece(goal, job);
  const all = plan(job, now);
  const tests = testList(job, now);
  const way = goal === undefined ? null : reach(job, goal);
  const lines = [
    section(
      'Can be done now',
      all.canDo.map((c) => c.say),
    ),
    section(
      'Held',
      all.heldBy.map((h) => heldSaid(h)),
    ),
    section(
      'Tests',
      tests.map((test) => testSaid(job, test)),
    ),
    way === null ? '' : `To reach ${goal}: ${way.join(', ')}`,
    all.finish === null ? '' : `Done at the earliest: ${all.finish}`,
  ].filter((s) => s !== '');
  const text = lines.length > 0 ? lines.join('\n\n') : 'Nothing is left to do.';
  return answer({ ...all, tests, ...(way === null ? {} : { reach: way }) }, text);

  function inTime(count: number): Answer {
    if (!(count > 0)) return misuse('bad-number', '--minutes 20');
    const found = within(job, count, now);
    const doable = [...found.can, ...found.maybe].map((d) => {
      const time = d.minutes === null ? 'if it is short' : `about ${d.minutes} min`;
      return `${d.say} (${time})${d.leave === null ? '' : ` ${d.leave}`}`;
    });
    return answer(
      { ...found },
      section(`In ${count} minutes`, doable) || 'Nothing that could be left safe.',
    );
  }
}

function section(head: string, lines: readonly string[]): string {
  return lines.length === 0 ? '' : [`${head}:`, ...lines.map((l) => `  ${l}`)].join('\n');
}

function heldSaid(held: { step: string; for: string[]; until: string | null }): string {
  const by = held.for.length > 0 ? ` by ${held.for.join(', ')}` : '';
  return `${held.step}${by}${held.until === null ? '' : ` until ${held.until}`}`;
}

function testSaid(job: Job, test: TestItem): string {
  const of = { task: test.test };
  const told = (what: 'step' | 'limit' | 'when', text: string) => withPrinted(job, of, what, text);
  const limit = test.limit === null ? '' : `: ${told('limit', test.limit)}`;
  const when = test.when === null ? '' : `, ${told('when', test.when)}`;
  return `${told('step', test.say)}${limit}${when} (${test.state})`;
}
