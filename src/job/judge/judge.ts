/**
 * The door: may this event be written into the diary? A refusal says why and what would make it right;
 * a reason (`because`) overrules each refusal but wrong use. History is never judged again.
 */

import type { Job, Verdict, Wish } from '../../model/types.ts';
import { isBlank } from '../../model/words.ts';
import { type Stamp, wrong } from './base/verdict.ts';
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
  switch (wish.do) {
    case 'out':
      return judgeOut(job, wish, stamp);
    case 'in':
      return judgeIn(job, wish, stamp);
    case 'tight':
      return judgeTight(job, wish, stamp);
    case 'off':
    case 'aside':
      return judgeOff(job, wish, stamp);
    case 'on':
      return judgeOn(job, wish, stamp);
    case 'settle':
      return judgeSettle(job, wish, stamp);
    case 'state':
      return judgeState(job, wish, stamp);
    case 'note':
      return judgeNote(job, wish, stamp);
    case 'photo':
      return judgePhoto(job, wish, stamp);
    case 'done':
      return judgeDone(job, wish, stamp);
    case 'keep':
      return judgeKeep(job, wish, stamp);
    case 'reading':
      return judgeReading(job, wish, stamp);
    case 'take':
      return judgeTake(job, wish, stamp);
    case 'inside':
    case 'cleared':
      return judgeInside(job, wish, stamp);
    case 'gate':
      return judgeGate(job, wish, stamp);
    case 'buy':
      return judgeBuy(job, wish, stamp);
    case 'write':
      return judgeWrite(job, wish, stamp);
    case 'rename':
      return judgeRename(job, wish, stamp);
    case 'add':
      return judgeAdd(job, wish, stamp);
    case 'correct':
      return judgeCorrect(job, wish, stamp);
    case 'look':
      return judgeLook(job, wish, stamp);
    case 'try':
    case 'tried':
      return judgeTry(job, wish, stamp);
    case 'list':
      return judgeList(job, wish, stamp);
    case 'choose':
      return judgeChoose(job, wish, stamp);
    case 'figures':
      return judgeFigures(job, wish, stamp);
    case 'start':
      return judgeStart(job, wish, stamp);
    case 'found':
      return judgeFound(job, wish, stamp);
    case 'undo':
      return judgeUndo(job, wish, stamp);
  }
}
