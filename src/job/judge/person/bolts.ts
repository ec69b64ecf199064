/** How many bolts a piece has, or which: its row said before any of them is turned, or put right afterwards. */
import type { Edit, Job, PieceNow, Warning } from '../../../model/types.ts';
import { drawnCells } from '../../../piece/map.ts';
import { printItem, UNKNOWN } from '../../../piece/row.ts';
import { list, type Refused, wrong } from '../base/verdict.ts';
import { readRowFound } from '../marks/found.ts';

/** Most bolts that are counted instead of named. */
const MOST = 99;

/** The row as it goes into the file, with the kinds that are new in it. `text`: `10`, or `s s m+clip s`. */
export function boltsFor(
  job: Job,
  piece: Pick<PieceNow, 'holes' | 'spec'>,
  text: string,
): { row: string; edits: Edit[]; warnings: Warning[] } | Refused {
  const { holes, spec } = piece;
  const was = (spec.row ?? []).map(printItem);
  const count = /^\d{1,3}$/.test(text) ? Number(text) : null;
  if (count !== null && (count < 1 || count > MOST)) {
    return wrong('bad-count', `${text} bolts cannot be counted here: 1 to ${MOST}, or their row.`);
  }
  const read =
    count === null
      ? readRowFound(text, job)
      : { words: Array.from({ length: count }, (_, i) => was[i] ?? UNKNOWN), edits: [] };
  if ('ok' in read) return read;
  const words = read.words.map((word) => (typeof word === 'string' ? word : printItem(word)));
  const odd = words.find((word) => word === '!' || word === '-');
  if (odd !== undefined) {
    const say = `${odd} is said of what came out: here it is how many bolts there are, or which.`;
    return wrong('bad-word', say, { word: odd });
  }
  // What was marked of a hole stays true: neither the hole nor what came out of it is written over.
  const told = holes.filter((hole, i) => {
    const noted = hole.by !== null || hole.found !== null || hole.trouble !== null;
    const [old, now] = [was[i], words[i]];
    if (now === undefined) return noted || spec.holes.has(hole.name);
    return noted && old !== undefined && old !== UNKNOWN && now !== old;
  });
  if (told.length > 0) {
    const names = told.map((h) => h.name);
    const one = names.length === 1;
    const say = `Something is noted of ${list(names)}: take ${one ? 'that' : 'those'} back first, or say with settle what belongs there.`;
    return wrong('holes-noted', say, { holes: names });
  }
  const drawn = spec.map === null ? null : drawnCells(spec).length;
  const warnings =
    drawn === null || drawn === words.length
      ? []
      : [
          {
            code: 'map-differs',
            say: `The map draws ${drawn} holes, not ${words.length}: draw it anew.`,
          },
        ];
  return { row: words.join(' '), edits: read.edits, warnings };
}
