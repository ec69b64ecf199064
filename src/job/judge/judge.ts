/**
 * The door: may this event be written into the diary? A refusal says why and what would make it right;
 * a reason (`because`) overrules each refusal but wrong use. History is never judged again.
 */

import type { Job, Verdict, Wish } from '../../model/types.ts';
import { isBlank } from '../../model/words.ts';
import { type Stamp, type Wished, wrong } from './base/verdict.ts';
import { judgeIn } from './marks/in.ts';
import { judgeBuy, judgeGate, judgeInside } from './marks/inside.ts';
import { judgeOut } from './marks/out.ts';
import { judgePhoto } from './marks/photo.ts';
import { judgeOff, judgeOn } from './marks/piece.ts';
import { judgeNote, judgeSettle, judgeState } from './marks/settle.ts';
import { judgeTight } from './marks/tight.ts';
import { judgeAdd } from './person/add.ts';
import { judgeCorrect } from './person/correct.ts';
import { judgeFigures } from './person/figures.ts';
import { judgeRename } from './person/rename.ts';
import { judgeKeep, judgeReading, judgeTake } from './person/take.ts';
import { judgeWrite } from './person/write.ts';
import { judgeChoose } from './tasks/chosen.ts';
import { judgeDone } from './tasks/done.ts';
import { judgeStart } from './tasks/start.ts';
import { judgeFound, judgeList, judgeLook, judgeTry } from './tasks/trace.ts';
import { judgeUndo } from './undo.ts';

const JUDGES: { [D in Wish['do']]: (job: Job, wish: Wished<D>, stamp: Stamp) => Verdict } = {
  out: judgeOut,
  in: judgeIn,
  tight: judgeTight,
  off: judgeOff,
  aside: judgeOff,
  on: judgeOn,
  settle: judgeSettle,
  state: judgeState,
  note: judgeNote,
  photo: judgePhoto,
  done: judgeDone,
  keep: judgeKeep,
  reading: judgeReading,
  take: judgeTake,
  inside: judgeInside,
  cleared: judgeInside,
  gate: judgeGate,
  buy: judgeBuy,
  write: judgeWrite,
  rename: judgeRename,
  add: judgeAdd,
  correct: judgeCorrect,
  look: judgeLook,
  try: judgeTry,
  tried: judgeTry,
  list: judgeList,
  choose: judgeChoose,
  figures: judgeFigures,
  start: judgeStart,
  found: judgeFound,
  undo: judgeUndo,
};

export function judge(job: Job, wish: Wish, stamp: Stamp): Verdict {
  // The second of two entries with one id would not count: it must not be told as done.
  if (job.entries.some((entry) => entry.id === stamp.id)) {
    return wrong('id-taken', `An entry has the id ${stamp.id} already: give it another.`, {
      id: stamp.id,
    });
  }
  if (wish.because !== undefined && isBlank(wish.because)) {
    return wrong('empty-reason', 'The reason is empty: it stands in the diary beside the mark.');
  }
  const judgeOf = JUDGES[wish.do] as (job: Job, wish: Wish, stamp: Stamp) => Verdict;
  return judgeOf(job, wish, stamp);
}
