/** What went into an opening, and what came out of it again. */
import { sayThing } from '../../job/fold/inside.ts';
import type { Call } from '../base/command.ts';
import { beside, mark } from '../base/mark.ts';

export async function run(call: Call) {
  const what = call.words.at(-1) ?? '';
  const piece = call.words.length > 2 ? call.words[1] : undefined;
  const how = call.name === 'cleared' ? 'cleared' : 'inside';
  const wish = {
    do: how,
    what,
    ...(piece === undefined ? {} : { piece }),
    ...beside(call),
  } as const;
  return mark(call, wish, ({ job }) => {
    const left = job.inside.map(sayThing).join(', ');
    return left === '' ? 'Nothing is inside.' : `Inside: ${left}.`;
  });
}
