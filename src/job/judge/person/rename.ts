/** May this kind get another letter? Everywhere at once: in the list of kinds, in every row, in what the diary told. */
import type { Edit, Entry, Job, Verdict } from '../../../model/types.ts';
import { printItem, readItem, UNKNOWN } from '../../../piece/row.ts';
import {
  already,
  meant,
  type Stamp,
  type UndoWay,
  type Wished,
  write,
  wrong,
} from '../base/verdict.ts';
import { letterOf, usedLetters } from '../marks/found.ts';

export function judgeRename(job: Job, wish: Wished<'rename'>, stamp: Stamp): Verdict {
  const used = usedLetters(job);
  const from = letterOf(wish.kind, job.upper.kinds, used);
  if (from === UNKNOWN || !used.has(from)) {
    const say = `No kind ${wish.kind} in this job.${meant(wish.kind, used)}`;
    return wrong('no-such-kind', say, { kind: wish.kind });
  }
  const read = readItem(wish.to);
  if (!read || read.kind === UNKNOWN || read.with.length > 0) {
    return wrong('bad-letter', `${wish.to} is no letter of a kind: L, or L20.`, { kind: wish.to });
  }
  const to = read.kind;
  if (SWITCH.test(to)) {
    const say = `${to} is a yes, a no or nothing to readers of YAML: take another letter.`;
    return wrong('bad-letter', say, { kind: wish.to });
  }
  if (from === to) return already();
  // Letters are typed small as well, so two that differ only in size would be the same.
  const other = [...used].find((l) => l !== from && l.toLowerCase() === to.toLowerCase());
  if (other !== undefined) {
    return wrong('letter-taken', `${other} is a kind of this job already.`, { kind: other });
  }
  const entry = { verb: 'renamed', value: to, was: from } as const;
  return write(stamp, wish, entry, { edits: lettersFor(job, from, to) });
}

/** What a plain YAML value says beside texts, in 1.1 and 1.2. One letter is a kind all the same: it is quoted where that is needed. */
const SWITCH = /^(?:null|true|false|yes|no|on|off|nan|inf)$/i;

/** Every place of the person's part where the letter stands. */
function lettersFor(job: Job, from: string, to: string): Edit[] {
  const { kinds, pieces } = job.printed;
  const rows = [...pieces.values()].flatMap((spec) => {
    const holes = job.pieces.get(spec.key)?.holes ?? [];
    return (spec.row ?? []).flatMap((item, index): Edit[] => {
      const hole = holes[index]?.name ?? `${index + 1}`;
      if (item.kind !== from) return [];
      const word = printItem({ ...item, kind: to });
      return [{ edit: 'row-word', piece: spec.key, hole, index, was: printItem(item), word }];
    });
  });
  return kinds.has(from) ? [{ edit: 'letter', from, to }, ...rows] : rows;
}

/** An undo gives the kind its letter of before, a redo the new one. */
export function renamedBack(job: Job, { value, was = '' }: Entry, way: UndoWay): Edit[] {
  return way === 'back' ? lettersFor(job, value, was) : lettersFor(job, was, value);
}
