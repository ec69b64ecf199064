/** A task is done, with what was and what is set. */
import { withPrinted } from '../job/corrections.ts';
import { type Call, optionText } from './command.ts';
import { beside, mark } from './mark.ts';

export async function run(call: Call) {
  const task = call.words[1] ?? '';
  const said = (['was', 'set', 'result'] as const).flatMap((key) => {
    const value = optionText(call, key);
    return value === undefined ? [] : [[key, value] as const];
  });
  const wish = { do: 'done', task, ...Object.fromEntries(said), ...beside(call) } as const;
  return mark(call, wish, ({ job }) => {
    const now = job.tasks.get(task);
    const said = withPrinted(job, { task }, 'step', now?.spec.say ?? '');
    return `${said}: ${now?.result ?? now?.done}.`;
  });
}
