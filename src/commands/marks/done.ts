/** A task is done, with what was and what is set; a test that follows from the work is written into the file with it. */

import { inWords } from '../../job/truth/said.ts';
import type { Job, NewTask } from '../../model/types.ts';
import { holdsTest, notBackAt } from '../../plan/gates/holds-test.ts';
import { letThrough } from '../../plan/task/task-now.ts';
import { testList } from '../../plan/tests/testlist.ts';
import { adviceLine } from '../../plan/trace/weigh-say.ts';
import { weighedOf } from '../../plan/trace/weighed.ts';
import { nowHere } from '../../world.ts';
import { benchOf } from '../base/bench-of.ts';
import { type Call, optionText, refused } from '../base/command.ts';
import { beside, mark } from '../base/mark.ts';
import { openJob } from '../base/open-job.ts';

export async function run(call: Call) {
  const [file = '', task = ''] = call.words;
  const opened = openJob(file, call.world);
  if ('answer' in opened) return opened.answer;
  const said = (['was', 'set', 'result'] as const).flatMap((key) => {
    const value = optionText(call, key);
    return value === undefined ? [] : [[key, value] as const];
  });
  const itself = testList(opened.job, nowHere(call.world)).find(
    (t) => t.test === task && !t.listed,
  );
  const [piece] = itself?.pieces ?? [];
  const add: { add?: NewTask } =
    itself && piece !== undefined
      ? { add: { verb: 'test', say: itself.say, after: `${piece} on` } }
      : {};
  const weighed = weighedOf(opened.job, task, benchOf(call.world, opened.file)?.hour ?? null);
  const advice = weighed && adviceLine(weighed);
  const advised = advice ? { advised: advice } : {};
  const measured: { was?: string; set?: string; result?: string } = Object.fromEntries(said);
  const wish = { do: 'done', task, ...measured, ...advised, ...add, ...beside(call) } as const;
  const stops = holdsTest(opened.job, task, nowHere(call.world));
  const [stop] = stops;
  const fails = wish.result === 'failed' || wish.because !== undefined;
  if (stop && !fails) {
    const say = `STOP. ${stops.map((item) => item.stop ?? item.say).join(' ')}`;
    const first = stop.known ? 'That first.' : `Then: gate ${file} start --seen ${stop.key}.`;
    return refused(
      { code: 'stops-test', say, data: { item: stop.key }, overrulable: true },
      `${first} If it is tested all the same, say why with --because.`,
    );
  }
  const done = ({ job }: { job: Job }) => {
    const now = job.tasks.get(task);
    const said = now ? inWords([now.spec.say]) : '';
    const told = letThrough(now?.judged ?? null);
    const bare = told === null ? '' : `, ${told}`;
    return `${said}: ${now?.result ?? now?.done}${bare}.`;
  };
  const off = wish.result === 'failed' ? null : notBackAt(opened.job, task, nowHere(call.world));
  const warnings = off === null ? [] : [{ code: 'not-back', say: off }];
  return mark(call, wish, done, {}, () => warnings);
}
