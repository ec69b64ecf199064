/** Bolts that were tightened, pass by pass. */
import type { Wish } from '../model/types.ts';
import { roundLeft } from '../plan/round-left.ts';
import { type Call, optionText } from './command.ts';
import { beside, countSaid, mark, whichHoles } from './mark.ts';

const ROUND = 'Once round at full torque is left (final): a bolt that keeps turning is a fault.';

export async function run(call: Call) {
  const which = whichHoles(call);
  if ('answer' in which) return which.answer;
  const piece = call.words[1] ?? '';
  const pass = optionText(call, 'pass');
  const set = optionText(call, 'set');
  const wish: Wish = {
    do: 'tight',
    piece,
    ...which,
    ...(pass === undefined ? {} : { pass }),
    ...(set === undefined ? {} : { set }),
    ...beside(call),
  };
  return mark(call, wish, ({ job, entry }) => {
    const now = job.pieces.get(piece);
    const done = now?.holes.filter((h) => entry && h.passes.includes(entry.value)).length ?? 0;
    const said = `${now?.spec.name}: ${entry?.value} done on ${done} of ${now?.holes.length}. ${countSaid(now, 'tight')}`;
    return now && roundLeft(job, now).length > 0 ? `${said} ${ROUND}` : said;
  });
}
