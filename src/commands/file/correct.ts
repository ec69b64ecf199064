/** What is printed and is not so on this machine: the printed text stays, and what is true counts. */

import { sayEntryOf } from '../../job/fold/say-entry.ts';
import { near } from '../../model/nearword.ts';
import { CORRECTABLE, type Correctable, type Wish } from '../../model/types.ts';
import { type Call, misuse, optionText } from '../base/command.ts';
import { mark } from '../base/mark.ts';
import { openJob } from '../base/open-job.ts';

export async function run(call: Call) {
  const [file = '', name = '', ...rest] = call.words;
  const [hole, what = '', truth = ''] = rest.length === 3 ? rest : [undefined, ...rest];
  const known = CORRECTABLE.find((c): c is Correctable => c === what);
  if (!known) {
    const close = near(what, CORRECTABLE);
    const hint = close ? `Did you mean ${close}?` : `There are ${CORRECTABLE.join(', ')}.`;
    return misuse('no-such-figure', `${what} is nothing to correct. ${hint}`, { what });
  }
  const opened = openJob(file, call.world);
  if ('answer' in opened) return opened.answer;
  const { pieces, tasks } = opened.job;
  const isTask = tasks.has(name) && !pieces.has(name);
  if (isTask && hole !== undefined) {
    return misuse('no-such-hole', `${name} is a task: it has no holes.`, { hole });
  }
  const printed = optionText(call, 'printed');
  const wish: Wish = {
    do: 'correct',
    ...(isTask ? { task: name } : { piece: name }),
    ...(hole === undefined ? {} : { hole }),
    what: known,
    truth,
    ...(printed === undefined ? {} : { printed }),
  };
  return mark(call, wish, ({ entry, job }) => (entry ? `${sayEntryOf(entry, job)}.` : ''));
}
