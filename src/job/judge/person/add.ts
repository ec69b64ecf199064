/** One line into the person's part, as what somebody says that it is: a part, a task, a test with its limit, a caution. */

import { measuredIn } from '../../../bolt/read/reading.ts';
import {
  type AddedToPiece,
  addRow,
  isAddable,
  isAddedToPiece,
} from '../../../model/keys/addable.ts';
import { oneLine } from '../../../model/safe.ts';
import { textsIn } from '../../../model/said.ts';
import { keySlug } from '../../../model/slug.ts';
import type {
  BuySpec,
  Edit,
  Entry,
  Fields,
  Job,
  PieceNow,
  TaskSpec,
  TaskVerb,
  Verdict,
  Warning,
} from '../../../model/types.ts';
import { NAME } from '../../diary/entry.ts';
import { checkFields } from '../../form/trace-fields.ts';
import { readCheckLine } from '../../form/typed-trace.ts';
import {
  already,
  placeNamed,
  type Stamp,
  sameFields,
  type Undone,
  type UndoWay,
  type Wished,
  write,
  wrong,
} from '../base/verdict.ts';
import { judgeNote } from '../marks/settle.ts';

/** Where it goes: a place of its own in the file, or one more text of its piece. */
type Put = PutNamed | { key: AddedToPiece; text: string };
interface PutNamed {
  section: 'tasks' | 'checks' | 'buy';
  say: string;
  fields: Fields;
  warnings?: Warning[];
}

export function judgeAdd(job: Job, wish: Wished<'add'>, stamp: Stamp): Verdict {
  const text = oneLine(wish.text).trim();
  if (text === '') return wrong('empty-text', 'The text is empty.');
  const place = placeNamed(job, wish);
  if ('ok' in place) return place;
  const piece = job.pieces.get(wish.piece ?? '') ?? null;
  const { hole } = wish;
  if (wish.as === 'note') return judgeNote(job, { ...wish, do: 'note', text }, stamp);
  const put = putFor(job, wish.as, text, piece, hole ?? null);
  if (!put) {
    const say = `A ${wish.as} stands at a piece: say at which.`;
    return wrong('which-piece', say, { pieces: [...job.pieces.keys()] });
  }
  const edits = editsFor(job, put, piece);
  if (edits === null) return already();
  const entry = { verb: 'written', value: wish.as, ...place } as const;
  const warnings = 'section' in put ? (put.warnings ?? []) : [];
  return write(stamp, { ...wish, says: text }, entry, { edits, warnings });
}

/** Null for what needs a piece and has none, and for what is no line that was added. */
function putFor(
  job: Job,
  as: string,
  text: string,
  piece: PieceNow | null,
  hole: string | null,
): Put | null {
  const note: Record<string, string> = hole === null ? {} : { note: `hole ${hole}` };
  if (!isAddable(as)) return null;
  if (as === 'check') return checkFor(job, text, piece, note);
  const { verb } = addRow(as);
  if (verb) {
    const { say, limit } = limited(verb, text);
    const fields = { [verb]: say, ...limit, ...stepOf(verb, text, piece), ...note };
    return { section: 'tasks', say, fields };
  }
  if (as === 'buy') {
    const { what, count } = counted(text);
    const fields = {
      what,
      ...(count === null ? {} : { count }),
      ...(piece ? { for: `${piece.spec.key} on` } : {}),
    };
    return { section: 'buy', say: what, fields: { ...fields, ...note } };
  }
  if (!piece || !isAddedToPiece(as)) return null;
  return { key: as, text: hole === null ? text : `At ${hole}: ${text}` };
}

/**
 * A look for the fault. Behind a colon stands what it would show, as where looks are listed: `Blue spark: coil, plug`;
 * else it says nothing yet about any suspect, which is told. At a piece it is behind that piece.
 */
function checkFor(
  job: Job,
  text: string,
  piece: PieceNow | null,
  note: Record<string, string>,
): PutNamed {
  const read = readCheckLine(text, job.upper, [...job.upper.suspects.keys()]);
  const under = piece ? { under: piece.spec.key } : {};
  if (!('say' in read)) {
    const fields: Fields = { ...under, ...bare(read.fields), ...note };
    return { section: 'checks', say: `${fields.check ?? text}`, fields };
  }
  const { say, limit } = limited('test', text);
  const odd = /:\s/.test(text) ? `${read.say} ` : '';
  const shows = `${odd}It shows none of the suspects yet: write which make it come out bad.`;
  return {
    section: 'checks',
    say,
    fields: { check: say, ...limit, ...under, ...note },
    warnings: [{ code: 'shows-nothing', say: shows }],
  };
}

/** A list of one text is written as that text. */
function bare(fields: Fields): Fields {
  const pairs = Object.entries(fields).map(([key, value]) => {
    return [
      key,
      typeof value !== 'string' && value.length === 1 ? (value[0] ?? '') : value,
    ] as const;
  });
  return Object.fromEntries(pairs);
}

/**
 * What is measured, and within what: `coil 0.8..1.2 ohm`. One figure alone is nothing to hold a reading against: it
 * stays among the words.
 */
function limited(verb: TaskVerb, text: string): { say: string; limit: { limit?: string } } {
  const found = verb === 'test' || verb === 'adjust' ? measuredIn(text) : null;
  return found?.isLimit
    ? { say: found.before, limit: { limit: found.figure } }
    : { say: text, limit: {} };
}

/** Units that make a number a size and no count: `8 mm bolt`. */
const UNIT = /^(?:mm|cm|m|in|inch|ml|l|g|kg|oz|lb|V|A|W|ohm)\b/i;

/** `3 sealing washers`, `2 x 6204 bearing`. */
function counted(text: string): { what: string; count: string | null } {
  const [, count, what] = /^([1-9]\d?)\s*(?:[x×]\s+|\s)(\D.*|\d{3,}.*)$/i.exec(text) ?? [];
  if (count === undefined || what === undefined || UNIT.test(what)) {
    return { what: text, count: null };
  }
  return { what, count };
}

/**
 * When it has its turn. What is measured or done there wants the piece off; a test of how it holds, and an adjustment,
 * want it back on. Once it is back on for good, nothing waits for it to come off.
 */
function stepOf(
  verb: TaskVerb,
  text: string,
  piece: PieceNow | null,
): { after?: string; while?: string } {
  if (!piece) return {};
  const { key } = piece.spec;
  const back = piece.where === 'tight' || piece.where === 'tested' || piece.fitted;
  const later = verb === 'adjust' || (verb === 'test' && measuredIn(text) === null);
  return back || later ? { after: `${key} on` } : { while: `${key} off` };
}

/** Null where the file says it already. */
function editsFor(job: Job, put: Put, piece: PieceNow | null): Edit[] | null {
  const upper = job.printed;
  const isNew = piece !== null && !upper.pieces.has(piece.spec.key);
  const first: Edit[] = isNew ? [{ edit: 'piece', piece: piece.spec.key }] : [];
  if ('key' in put) {
    const said = piece?.spec[put.key];
    if (
      !piece ||
      (said && [said.removal, said.fitting].every((t) => textsIn(t).includes(put.text)))
    )
      return null;
    return [{ edit: 'text', piece: piece.spec.key, key: put.key, text: put.text, in: true }];
  }
  const { section, fields } = put;
  if (named(job, put) !== null) return null;
  return [...first, { edit: 'named', section, key: freeKey(job, put), fields }];
}

/** A key for it that nothing has yet. */
function freeKey(job: Job, { section, say }: PutNamed): string {
  const { pieces, tasks, checks, suspects, buys } = job.upper;
  const words = keySlug(say, WORDS);
  const base = NAME.test(words) ? words : UNNAMED[section];
  // A task that is called like a piece would be mistaken for it.
  const all = [tasks, checks, suspects, buys, pieces];
  const taken = (key: string) => all.some((one) => one.has(key));
  let key = base;
  for (let n = 2; taken(key); n += 1) key = `${base}-${n}`;
  return key;
}

const WORDS = 4;
const UNNAMED = { tasks: 'task', checks: 'check', buy: 'part' } as const;

/** The last task or thing of the file with just these words, at whatever step; null where there is none. */
function named(job: Job, { section, fields }: PutNamed): { key: string; fields: Fields } | null {
  const { tasks, checks, buys } = job.printed;
  const specs = section === 'tasks' ? [...tasks.values()] : [...buys.values()];
  const all =
    section === 'checks'
      ? [...checks.values()]
          .map(checkFields)
          .map(({ key, fields }) => ({ key, fields: bare(fields) }))
      : specs.map((spec) => ({ key: spec.key, fields: fieldsOf(spec) }));
  return all.findLast((one) => sameFields(timeless(one.fields), timeless(fields))) ?? null;
}

function timeless({ after: _, while: __, ...fields }: Fields): Fields {
  return fields;
}

/** What such a task or thing says in the file, if each key has a single text. */
function fieldsOf(spec: TaskSpec | BuySpec): Record<string, string> {
  const { key: _, ...said } = spec;
  const { verb, say, ...rest } = { verb: '', say: null, ...said };
  const texts = Object.entries(rest).map(([key, value]) => [key, fieldText(value)] as const);
  const fields = texts.filter(([, text]) => text !== '');
  return Object.fromEntries(say === null ? fields : [[verb, say.text], ...fields]);
}

function fieldText(value: unknown): string {
  if (value === null || value === undefined || value === false) return '';
  if (Array.isArray(value)) return value.join(', ');
  return typeof value === 'object' && 'text' in value ? String(value.text) : String(value);
}

/** What the entry added, in the file as it is; null where it is not there, or was changed. */
export function addedBy(
  job: Job,
  { value, says = '', piece, hole }: Entry,
): { section: PutNamed['section']; key: string } | null {
  const at = piece === undefined ? null : (job.pieces.get(piece) ?? null);
  const put = putFor(job, value, says, at, hole?.[0] ?? null);
  const found = put && 'section' in put ? named(job, put) : null;
  return put && 'section' in put && found ? { section: put.section, key: found.key } : null;
}

/** Takes what the entry added out of the file, as long as it stands there as it was left, or puts it in again. */
export function addedBack(job: Job, entry: Entry, way: UndoWay): Undone {
  const { value, says = '', hole } = entry;
  const piece = entry.piece === undefined ? null : (job.pieces.get(entry.piece) ?? null);
  const put = putFor(job, value, says, piece, hole?.[0] ?? null);
  if (!put) return { edits: [], warnings: [] };
  if (way === 'again') return { edits: editsFor(job, put, piece) ?? [], warnings: [] };
  const changed = {
    edits: [],
    warnings: [
      {
        code: 'file-changed',
        say: `“${says}” was changed in the file since: that stays as it is.`,
      },
    ],
  };
  if ('key' in put) {
    const said = job.printed.pieces.get(piece?.spec.key ?? '')?.[put.key];
    if (
      !piece ||
      !said ||
      ![said.removal, said.fitting].every((t) => textsIn(t).includes(put.text))
    )
      return changed;
    const { key, text } = put;
    return {
      edits: [{ edit: 'text', piece: piece.spec.key, key, text, in: false }],
      warnings: [],
    };
  }
  const found = named(job, put);
  if (!found) return changed;
  return { edits: [{ edit: 'unnamed', section: put.section, ...found }], warnings: [] };
}
