/** Which is true, the file or the find? And what can be wrong with a hole. */

import { troubleOf } from '../../../model/states/troubles.ts';
import type { Edit, HoleNow, Job, RowItem, Verdict, Warning } from '../../../model/types.ts';
import { printItem, readItem, sameItem } from '../../../piece/row.ts';
import { sayTrouble } from '../../fold/say-hole.ts';
import {
  already,
  meant,
  pickHole,
  placeNamed,
  refuse,
  type Stamp,
  type Wished,
  write,
  wrong,
} from '../base/verdict.ts';
import { letterOf, readRowFound, usedLetters } from './found.ts';

export function judgeSettle(job: Job, wish: Wished<'settle'>, stamp: Stamp): Verdict {
  const picked = pickHole(job, wish);
  if ('ok' in picked) return picked;
  const { piece, hole } = picked;
  // A length stands for the kind of that length; where there is none yet, it makes a new kind.
  const measured = /^\.\d/.test(wish.kind) ? readRowFound(wish.kind, job) : null;
  if (measured && 'ok' in measured) return measured;
  const [word] = measured?.words ?? [];
  const typed = typeof word === 'object' ? word : readItem(wish.kind);
  if (!typed || typed.kind === '?') {
    return wrong(
      'bad-word',
      `${wish.kind} is no kind: a letter, or a letter with what is under its head (M+clip).`,
    );
  }
  const used = usedLetters(job);
  const kind = letterOf(typed.kind, job.upper.kinds, used);
  const brought = measured?.edits ?? [];
  if (brought.length === 0 && !job.upper.kinds.has(kind) && !used.has(kind)) {
    return wrong('no-such-kind', `No kind ${typed.kind} in this job.${meant(typed.kind, used)}`, {
      kind: typed.kind,
    });
  }
  const item = withUnder({ kind, with: typed.with }, hole);
  const open = hole.unsettled || hole.conflict !== null;
  if (!open && sameItem(item, hole.belongs)) return already();

  const index = piece.holes.indexOf(hole);
  const was = piece.spec.row?.[index];
  const edits: Edit[] =
    was && !sameItem(was, item)
      ? [
          {
            edit: 'row-word',
            piece: piece.spec.key,
            hole: hole.name,
            index,
            was: printItem(was),
            word: printItem(item),
          },
        ]
      : [];
  const place = { piece: piece.spec.key, hole: [hole.name] };
  // The entry keeps what the row said, so that an undo can restore it.
  const said = edits.length > 0 && was ? { was: printItem(was) } : {};
  const entry = { verb: 'settle', value: printItem(item), ...place, ...said } as const;
  return write(stamp, wish, entry, { edits: [...brought, ...edits] });
}

/** A letter alone means the one of file and find that has this letter, with what is under its head. */
function withUnder(item: RowItem, hole: HoleNow): RowItem {
  if (item.with.length > 0) return item;
  const both = [hole.claim, hole.found].filter((x): x is RowItem => x?.kind === item.kind);
  const [only, other] = both;
  return only && !other ? only : item;
}

export function judgeState(job: Job, wish: Wished<'state'>, stamp: Stamp): Verdict {
  const picked = pickHole(job, wish);
  if ('ok' in picked) return picked;
  const { piece, hole } = picked;
  const now = hole.trouble ?? 'mended';
  if (now === wish.state) return already();
  const ends = wish.state === 'mended' && hole.trouble ? troubleOf(hole.trouble).ends : null;
  if (ends !== null && hole.trouble && wish.because === undefined) {
    const say = `${hole.name}: ${sayTrouble(hole.trouble)}. ${ends}`;
    return refuse('not-mended', say, { hole: hole.name, state: hole.trouble });
  }
  const pulled = wish.state === 'mended' && hole.trouble === 'pulled';
  if (pulled && hole.state !== 'out' && wish.because === undefined) {
    const say = `The bolt is still in ${hole.name}: a thread is mended with its bolt out. Take it out first.`;
    return refuse('bolt-in', say, { hole: hole.name });
  }
  const how: Warning[] =
    pulled && wish.says === undefined
      ? [
          {
            code: 'how',
            say: 'How it was mended is not written down: insert and its size, stud, bigger bolt.',
          },
        ]
      : [];
  const place = { piece: piece.spec.key, hole: [wish.hole] };
  return write(stamp, wish, { verb: 'state', value: wish.state, ...place }, { warnings: how });
}

export function judgeNote(job: Job, wish: Wished<'note'>, stamp: Stamp): Verdict {
  if (wish.text.trim() === '') return wrong('empty-note', 'The note is empty.');
  const place = placeNamed(job, wish);
  if ('ok' in place) return place;
  return write(stamp, wish, { verb: 'note', value: wish.text, ...place });
}
