/** May this text go into the person's part? One more where a key takes several, the first where it takes one. */

import { unreadOf } from '../../../bolt/torque/no-figure-said.ts';
import { readStages } from '../../../bolt/torque/stages.ts';
import {
  type Anew,
  isAnew,
  isSeveral,
  isWritable,
  namesPieces,
  type Several,
} from '../../../model/keys/known-keys.ts';
import { oneLine } from '../../../model/safe.ts';
import type {
  Edit,
  Entry,
  Job,
  PieceNow,
  PieceSpec,
  Verdict,
  Warning,
  Writable,
} from '../../../model/types.ts';
import { readMap } from '../../../piece/map.ts';
import { holeNames } from '../../../piece/order.ts';
import { printRow } from '../../../piece/row.ts';
import { NAME } from '../../diary/entry.ts';
import { barePiece } from '../../form/bare.ts';
import { spelled, truthFault } from '../../truth/figures.ts';
import {
  already,
  list,
  meant,
  noPiece,
  type Stamp,
  type Undone,
  type UndoWay,
  type Wished,
  write,
  wrong,
} from '../base/verdict.ts';
import { addedBack } from './add.ts';
import { boltsFor } from './bolts.ts';
import { orderIn } from './correct.ts';
import { circleBy } from './write-order.ts';

type Wish = Wished<'write'>;

export function judgeWrite(job: Job, wish: Wish, stamp: Stamp): Verdict {
  const { key } = wish;
  const known = job.pieces.get(wish.piece);
  // What lies on the bench can be named, counted and drawn before the file knows it.
  const isNew = !known && (key === 'map' || key === 'bolts') && NAME.test(wish.piece);
  if (!known && !isNew) return noPiece(job, wish.piece);
  const piece = known ?? { holes: [], spec: barePiece(wish.piece) };
  const text = tidied(key, wish.text);
  if (text === '') return wrong('empty-text', 'The text is empty.');
  // What the file says, not what is true: the text goes into the file.
  const spec = job.printed.pieces.get(wish.piece) ?? barePiece(wish.piece);
  const put = (was: string | null, says: string, edits: Edit[], more: Warning[] = []): Verdict => {
    const entry = { verb: 'written', value: key, piece: wish.piece } as const;
    const isNews = { code: 'new-piece', say: `${wish.piece} is new in this job.` };
    return write(stamp, { ...wish, says }, was === null ? entry : { ...entry, was }, {
      edits,
      warnings: [...(isNew ? [isNews] : []), ...more],
    });
  };
  if (key === 'bolts') {
    const found = boltsFor(job, { holes: piece.holes, spec }, text);
    if ('ok' in found) return found;
    const { row, edits, warnings } = found;
    const was = textOf(spec, key);
    if (was === row) return already();
    const edit: Edit =
      was === null
        ? { edit: 'row', piece: wish.piece, row }
        : { edit: 'instead', piece: wish.piece, key, was, text: row };
    return put(was, row, [...edits, edit], warnings);
  }
  if (isAnew(key)) {
    const fault = FAULTS[key](spec, text, piece);
    if (fault !== null) return wrong('bad-text', fault, { key });
    const was = textOf(spec, key);
    if (was === text) return already();
    return put(was, text, [{ edit: 'instead', piece: wish.piece, key, was, text }]);
  }
  if (!isSeveral(key)) {
    const was = textOf(spec, key);
    if (was === text) return already();
    if (was === null) {
      const edit: Edit = { edit: 'instead', piece: wish.piece, key, was, text };
      return put(null, text, [edit], key === 'torque' ? unreadSaid(spec, text) : []);
    }
    const way = 'Correct it with putback correct, or change the file.';
    return wrong('stands-already', `${piece.spec.name}: there stands already: ${was}. ${way}`, {
      key,
      was,
    });
  }
  const fault = namesPieces(key) ? neighbourFault(job, wish, text) : null;
  if (fault) return fault;
  if (listOf(spec, key).includes(text) || listOf(piece.spec, key).includes(text)) return already();
  return put(null, text, [{ edit: 'text', piece: wish.piece, key, text, in: true }]);
}

/** A figure that is no torque as it stands: said while the manual is still open, and not only by check. */
function unreadSaid(spec: PieceSpec, text: string): Warning[] {
  const rest = spec.passes === null ? unreadOf(text) : [];
  if (rest.length === 0) return [];
  const said = list(rest.map((r) => `“${r.text}”`));
  const was = rest.length === 1 ? 'was' : 'were';
  const say = `${said} ${was} not read as a torque: it is done as it is printed, and no wrench is set.`;
  const way = wayToSay(text, rest);
  return [{ code: 'unread-torque', say: [say, ...(way === null ? [] : [way])].join(' ') }];
}

const IN_STAGES = /\b(?:passes|stages|steps|rounds)\b/i;

/** How such a text is said so that it is read; null where a torque was read, and nobody can tell what is beside it. */
function wayToSay(text: string, rest: readonly { text: string }[]): string | null {
  if (rest.some((r) => IN_STAGES.test(r.text))) {
    return 'Stages are said one after the other, the last with its unit: 5, then 10 N·m.';
  }
  return readStages(text).stages.length > 0 ? null : 'A torque has its unit: 20 N·m.';
}

/** As it goes into the file. */
function tidied(key: Writable, text: string): string {
  if (key === 'map') return pictureOf(text);
  return key === 'sequence' ? spelled(key, text) : oneLine(text).trim();
}

/** What a key with one text says in the file; null when nothing. */
function textOf(spec: PieceSpec, key: Exclude<Writable, Several>): string | null {
  if (key === 'bolts') return spec.row ? printRow(spec.row) || null : null;
  if (key === 'map') return spec.map === null ? null : pictureOf(spec.map) || null;
  if (key === 'sequence') return spec.sequence?.join(' ') || null;
  return spec[key]?.text || null;
}

/** What a key with several texts says in the file. */
function listOf(spec: PieceSpec, key: Several): string[] {
  return spec[key].map((said) => (typeof said === 'string' ? said : said.text));
}

/** A picture as its lines of words: where a word stands in its line is its column, blanks mean nothing. */
function pictureOf(text: string): string {
  const lines = text.split(/\r\n|\n|\r/).map((line) => line.replaceAll('\t', ' ').trimEnd());
  const drawn = lines.filter((line) => line !== '');
  const indent = Math.min(...drawn.map((line) => line.search(/\S/)));
  const even = drawn.map((line) => line.slice(indent));
  // A first line that stands further in than others would say how far all of them stand in.
  return (even[0]?.startsWith(' ') ? even.map((line) => line.trimStart()) : even).join('\n');
}

/** What is wrong with a text that is written as a whole; null when nothing is. */
const FAULTS: Readonly<
  Record<
    Exclude<Anew, 'bolts'>,
    (spec: PieceSpec, text: string, piece: Pick<PieceNow, 'holes'>) => string | null
  >
> = {
  map: mapFault,
  sequence: (spec, text) => truthFault('sequence', text) ?? orderIn(holeNames(spec), text),
};

function mapFault(spec: PieceSpec, text: string, piece: Pick<PieceNow, 'holes'>): string | null {
  const { cells, faults } = readMap(text);
  const [first] = faults;
  if (first) return `Line ${first.line} of the map: ${first.say}.`;
  const drawn = cells.map((cell) => cell.name);
  const known = piece.holes.map((hole) => hole.name);
  // Without a row the picture says which holes there are, but for those that something is known of.
  const must =
    spec.row !== null
      ? known
      : piece.holes.filter((h) => h.by !== null || spec.holes.has(h.name)).map((h) => h.name);
  const missing = must.filter((name) => !drawn.includes(name));
  const odd = spec.row === null ? [] : drawn.filter((name) => !known.includes(name));
  if (missing.length === 0 && odd.length === 0) return null;
  const says = [
    ...(missing.length > 0 ? [`leaves out ${list(missing)}`] : []),
    ...(odd.length > 0 ? [`draws ${list(odd)}, and there is no such hole`] : []),
  ];
  return `The map ${says.join(' and ')}.`;
}

function neighbourFault(
  job: Job,
  { piece, key }: Wish,
  other: string,
): ReturnType<typeof wrong> | null {
  if (other === piece) return wrong('itself', `${piece} cannot be ${key} itself.`, { key });
  if (!job.upper.pieces.has(other) && !job.pieces.has(other)) {
    const say = `No piece ${other} in this job.${meant(other, job.pieces.keys())}`;
    return wrong('no-such-piece', say, { piece: other });
  }
  const circle = circleBy(job.upper, piece, key, other);
  if (!circle) return null;
  return wrong('circle', `Then they would wait for each other: ${circle.join(' before ')}.`, {
    circle,
  });
}

/** What puts a text into the file, or takes it out again, as long as it stands there as it was left. */
export function writtenBack(job: Job, entry: Entry, way: UndoWay): Undone {
  const { value, piece = '', says = '', was } = entry;
  if (!isWritable(value)) return addedBack(job, entry, way);
  const key = value;
  const spec = job.printed.pieces.get(piece) ?? barePiece(piece);
  const left = {
    edits: [],
    warnings: [
      {
        code: 'file-changed',
        say: `The ${key} of ${piece} was changed in the file since: that stays as it is.`,
      },
    ],
  };
  const put = tidied(key, says);
  if (isSeveral(key)) {
    if (listOf(spec, key).includes(put) !== (way === 'back')) return left;
    return { edits: [{ edit: 'text', piece, key, text: put, in: way === 'again' }], warnings: [] };
  }
  const before = was === undefined ? null : tidied(key, was);
  const [from, to] = way === 'back' ? [put, before] : [before, put];
  if (textOf(spec, key) !== from) return left;
  return { edits: [{ edit: 'instead', piece, key, was: from, text: to }], warnings: [] };
}
