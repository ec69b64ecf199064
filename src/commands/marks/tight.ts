/** Bolts that were tightened, pass by pass. */

import { figureOn } from '../../bolt/torque/wrench.ts';
import { figureToSet } from '../../job/judge/marks/tight.ts';
import type { Job, Warning, Wish } from '../../model/types.ts';
import { wheelOffSaid } from '../../plan/care/still-off.ts';
import { roundLeft } from '../../plan/piece/round-left.ts';
import { benchOf } from '../base/bench-of.ts';
import { type Call, optionText } from '../base/command.ts';
import { beside, countSaid, mark, whichHoles } from '../base/mark.ts';
import { openJob } from '../base/open-job.ts';

const ROUND = 'Once round at full torque is left (final): a bolt that keeps turning is a fault.';

export async function run(call: Call) {
  const which = whichHoles(call);
  if ('answer' in which) return which.answer;
  const piece = call.words[1] ?? '';
  const pass = optionText(call, 'pass');
  const set = optionText(call, 'set');
  const wish: Extract<Wish, { do: 'tight' }> = {
    do: 'tight',
    piece,
    ...which,
    ...(pass === undefined ? {} : { pass }),
    ...(set === undefined ? {} : { set }),
    ...beside(call),
  };
  const scale = set === undefined ? onScale(call, wish) : null;
  if (scale !== null) wish.set = scale;
  return mark(
    call,
    wish,
    ({ job, entry }) => {
      const now = job.pieces.get(piece);
      const done = now?.holes.filter((h) => entry && h.passes.includes(entry.value)).length ?? 0;
      const said = `${now?.spec.name}: ${entry?.value} done on ${done} of ${now?.holes.length}. ${countSaid(now, 'tight')}`;
      return now && roundLeft(job, now).length > 0 ? `${said} ${ROUND}` : said;
    },
    {},
    ({ job }) => early(job, piece),
  );
}

/** What would go on before it is still off. */
export function early(job: Job, key: string): Warning[] {
  const piece = job.pieces.get(key);
  const say = piece ? wheelOffSaid(job, piece) : null;
  return say === null ? [] : [{ code: 'still-off', say }];
}

/** What the wrench of this bench was set to, where it reaches and one figure is to be set. */
function onScale(call: Call, wish: Extract<Wish, { do: 'tight' }>): string | null {
  const opened = openJob(call.words[0] ?? '', call.world);
  if ('answer' in opened) return null;
  const wrenches = benchOf(call.world, opened.file)?.wrenches ?? [];
  if (wrenches.length === 0) return null;
  const figure = figureToSet(opened.job, wish);
  return figure && figureOn(wrenches, figure);
}
