/**
 * A torque as a manual prints it, read to its last character: `20, then 40 N·m, then 90° and 90°`. What is read becomes
 * stages, one after the other; what is not stands in `rest` with its place, and never counts as read.
 */
import { remembering } from '../../model/remembering.ts';
import { asPrinted } from '../../model/said.ts';
import type { Quantity, Torque } from '../../model/types.ts';
import { tidy } from '../read/numbers.ts';
import { convert } from '../read/units.ts';
import { angleOnceMore, besideIt, giveOrTake, inBrackets } from './once-more.ts';
import { type SaidAt, threadOfOne, whoseTorque } from './one-or-other.ts';
import { partOf, together, withoutRemarks } from './remarks.ts';
import { smearIn } from './smeared.ts';
import type { Reader, Stage, Stages, StagesSoFar } from './stage-types.ts';
import {
  angleAt,
  bareAt,
  hasUnit,
  inSteps,
  JOINS,
  LABELS,
  LOOSEN,
  onceAt,
  PROMISES,
  placeAt,
  plainTorqueAt,
  SNUG,
  STAGE_VERBS,
  threadAt,
  torqueAt,
} from './stage-words.ts';

const onTheThread: Reader = (left, reading, at) => {
  const said = threadAt(left);
  if (said === '') return 0;
  // A greased O-ring is no greased thread.
  if (smearIn(said) !== null && smearIn(partOf(reading.text, at)) === null) return 0;
  reading.thread = listedBehind(reading.thread, said);
  reading.threads.push({ text: said, at });
  return said.length;
};

/** Numbers behind these are theirs, and no page: `bolts 1-4`. */
const NUMBERED = /\b(?:bolts?|nuts?|screws?|holes?|studs?|nos?\.?)\s*$/i;

const wherePrinted: Reader = (left, reading, at) => {
  const numbered = /^\d/.test(left) && NUMBERED.test(reading.text.slice(Math.max(0, at - 12), at));
  // A range and its unit look like a page: 10-12 N·m.
  const said = numbered || torqueAt(left) || hasUnit(left) ? '' : placeAt(left) || inSteps(left);
  if (said !== '') reading.where = listedBehind(reading.where, said);
  return said.length;
};

const usedOnce: Reader = (left, reading, at) => {
  const said = onceAt(left);
  if (said === '') return 0;
  reading.once = true;
  reading.renewed.push({ text: said, at, behind: reading.stages.length });
  reading.where = listedBehind(reading.where, said);
  return said.length;
};

function listedBehind(before: string | null, said: string): string {
  const bare = said.replace(/^\(|\)$/g, '');
  return before === null ? bare : `${before}, ${bare}`;
}

const label: Reader = (left) => {
  const said = LABELS.exec(left)?.[0] ?? '';
  if (said === '' || torqueAt(left)) return 0;
  const behind = left.slice(said.length).replace(/^(?:[\s,:+–-]|torque\b|to\b|by\b)+/i, '');
  const done = behind.replace(STAGE_VERBS, '').replace(/^\s*(?:a\s+)?(?:further|another)\b/i, '');
  return stageAt(done.trimStart()) || stageAt(behind) ? said.length : 0;
};

const stage: Reader = (left, reading, at) => {
  const found = stageAt(left);
  if (!found) return 0;
  const [first] = found.stages;
  reading.promised = null;
  settle(reading, first?.do === 'torque' ? first.quantity.unit : null, at);
  if (first?.do === 'torque') reading.torques.push({ at, worth: inNewtons(first.quantity) });
  reading.stages.push(...found.stages);
  return found.length;
};

const bare: Reader = (left, reading, at) => {
  const found = bareAt(left);
  const before = reading.rest.at(-1);
  // Behind a word that was not read it belongs to that: `until 1998, 12 N·m`.
  const itsOwn = before && /\p{L}$/u.test(before.text) && isBlank(reading.text, before, at);
  if (!found || itsOwn) return 0;
  reading.waiting.push({ value: found.value, at, text: left.slice(0, found.length) });
  return found.length;
};

const isBlank = (text: string, said: SaidAt, at: number) =>
  text.slice(said.at + said.text.length, at).trim() === '';

const joins: Reader = (left, reading, at) => {
  const gap = /^[\s,;:/]+/.exec(left)?.[0];
  if (gap !== undefined) return gap.length;
  const said = (JOINS.exec(left) ?? STAGE_VERBS.exec(left))?.[0] ?? '';
  if (reading.stages.length > 0 && PROMISES.test(said)) reading.promised ??= { text: said, at };
  return said.length;
};

/** Words of which no part was read. */
const unread: Reader = (left, reading, at) => {
  settle(reading, null, at);
  // A figure that can be read two ways stays whole: `1,500 N·m` is no half.
  const word = /^(?:\d+[.,]\d[\d.,]*|[\p{L}\p{N}’'.-]+|.)/su.exec(left)?.[0] ?? left;
  reading.rest.push({ text: word, at });
  return word.length;
};

/** Nothing else begins so. */
const plainStage: Reader = (left, reading, at) =>
  plainTorqueAt(left) === null ? 0 : stage(left, reading, at);

/** A comma in front of a word; one in front of a digit may be that of a figure. */
const sign: Reader = (left, reading, at) =>
  /^[,;:](?!\d)/.test(left) ? joins(left, reading, at) : 0;

/** In this order: what is taken first is read no other way. */
const READERS: readonly Reader[] = [
  plainStage,
  giveOrTake,
  angleOnceMore,
  inBrackets,
  besideIt,
  sign,
  ...[onTheThread, usedOnce, wherePrinted, label].map(whereWordsBegin),
  stage,
  bare,
  joins,
  unread,
];

/** What is a stage, or stands beside it. */
const BESIDE: readonly Reader[] = [plainStage, stage, giveOrTake, inBrackets, besideIt];

/** A letter or a figure of any alphabet; of ours it is told without the table of all. */
const isWord = (sign: string) =>
  sign < '\x80' ? /[A-Za-z0-9]/.test(sign) : /[\p{L}\p{N}]/u.test(sign);

/** Words begin where words end: `dry` is nothing in `laundry`. */
function whereWordsBegin(read: Reader): Reader {
  return (left, reading, at) =>
    at > 0 && isWord(reading.text[at - 1] ?? '') ? 0 : read(left, reading, at);
}

function stageAt(text: string): { length: number; stages: Stage[] } | null {
  const plain = plainTorqueAt(text);
  if (plain !== null)
    return { length: plain.length, stages: [{ do: 'torque', ...quantityOf(plain) }] };
  const loosen = LOOSEN.exec(text)?.[0];
  if (loosen !== undefined) {
    const angle = angleAt(text.slice(loosen.length));
    const degrees = angle === null ? null : angle.degrees * angle.times;
    const length = loosen.length + (angle?.length ?? 0);
    return { length, stages: [{ do: 'loosen', degrees }] };
  }
  const snug = SNUG.exec(text)?.[0];
  if (snug !== undefined) return { length: snug.length, stages: [{ do: 'snug' }] };
  const angle = angleAt(text);
  if (angle) {
    const { length, degrees, to, times, pastSnug } = angle;
    const turned = Array.from({ length: times }, (): Stage => ({ do: 'angle', degrees, to }));
    return { length, stages: pastSnug ? [{ do: 'snug' }, ...turned] : turned };
  }
  const torque = torqueAt(text);
  return torque && { length: torque.length, stages: [{ do: 'torque', ...quantityOf(torque) }] };
}

function quantityOf({ quantity, most }: { quantity: Quantity; most: boolean }) {
  return { quantity, most };
}

/**
 * Figures that waited for a unit have it now, or were none. Two with a blank or a colon alone between them are no two stages: the
 * first may be a mark, as in `M8 10.9 25 N·m`.
 */
function settle(reading: StagesSoFar, unit: string | null, end: number): void {
  const waiting = reading.waiting.splice(0);
  for (const [i, { value, text, at }] of waiting.entries()) {
    const behind = reading.text.slice(at + text.length, waiting[i + 1]?.at ?? end);
    if (unit === null || /^[\s:]*$/.test(behind)) {
      reading.rest.push({ text, at });
      continue;
    }
    // One and one more need not be two stages: `10 + 2 N·m`.
    if (/^\s*\+/.test(behind)) reading.rest.push({ text, at });
    const quantity = { value, to: null, unit };
    reading.stages.push({ do: 'torque', quantity, most: false });
    reading.torques.push({ at, worth: inNewtons(quantity) });
  }
}

/** Reads a text to its last character, in time that grows with its length. Many ask of the same text. */
export const readStages = remembering(stagesIn);

function stagesIn(text: string): Stages {
  const empty = { stages: [], differ: [], rest: [], where: null, thread: null, once: false };
  const reading: StagesSoFar = {
    ...empty,
    text,
    waiting: [],
    promised: null,
    renewed: [],
    torques: [],
    end: 0,
    threads: [],
  };
  for (let at = 0; at < text.length; ) {
    const left = text.slice(at, at + WINDOW);
    let length = 0;
    for (const read of READERS) {
      length = read(left, reading, at);
      if (length > 0 && BESIDE.includes(read)) reading.end = at + length;
      if (length > 0) break;
    }
    at += Math.max(1, length);
  }
  settle(reading, null, text.length);
  const { stages, differ, thread, once, promised } = reading;
  const rest = together(text, reading.rest);
  // Where nothing was read, nothing is a remark beside it.
  const sorted =
    stages.length === 0
      ? { rest, where: reading.where }
      : withoutRemarks(text, rest, reading.where);
  // What is not read behind such a word is what it promised.
  const open = promised !== null && sorted.rest.every((said) => said.at < promised.at);
  // `20 N·m + 90°, new bolts + 120°` is one or the other.
  const between = reading.renewed.filter(({ behind }) => behind > 0 && behind < stages.length);
  const of = [...threadOfOne(reading), ...between];
  const words = [...reading.rest, ...reading.renewed];
  const unsure = of.length > 0 || sorted.rest.length > 0 ? of : whoseTorque(reading, words);
  // What says whose it is is no remark beside it.
  if (unsure.length > 0) sorted.where = reading.where;
  sorted.rest = together(text, [...sorted.rest, ...(open ? [promised] : []), ...unsure]);
  return { stages, differ, ...sorted, thread, once };
}

/** Characters looked at from one place on: no stage, and no place in a manual, is longer. */
const WINDOW = 200;

const AT_MOST = 'no more than that';

/** Degrees to turn: of a range the middle, as a wrench is set. */
export function aimedAngle({ degrees, to }: { degrees: number; to: number | null }): number {
  return to === null ? degrees : tidy((degrees + to) / 2);
}

/** The torque at which such a bolt is full: the last that is set before it is only turned; null without one. */
export function fullOf({ stages }: Pick<Stages, 'stages'>): Quantity | null {
  const torques = stages.flatMap((s) => (s.do === 'torque' ? [s.quantity] : []));
  return torques.at(-1) ?? null;
}

/** N·m of its upper end. */
function inNewtons(q: Quantity): number {
  return convert(q.to ?? q.value, q.unit, 'N·m') ?? 0;
}

/** The hardest that is set on such a bolt in any of its stages; a range counts with its upper end. Null without one. */
export function hardestOf({ stages }: Pick<Stages, 'stages'>): Quantity | null {
  const torques = stages.flatMap((s) => (s.do === 'torque' ? [s.quantity] : []));
  return torques.reduce<Quantity | null>(
    (a, b) => (a !== null && inNewtons(a) >= inNewtons(b) ? a : b),
    null,
  );
}

/**
 * A torque as a manual prints it, with its full figure: `10 N·m, manual 2-17`. `quantity` is null when no figure of
 * torque was read (`see manual`, `3/4 turn`), or not all of the text: one of `10 N·m upper, 8 N·m lower` is none to set.
 * `where` is all that stands beside the figure on the wrench: that it is the most, what is on the thread, where it is printed.
 */
export function readTorque(text: string): Torque {
  const read = readStages(text);
  const full = read.stages.findLast((s) => s.do === 'torque');
  const beside = [full?.most ? AT_MOST : null, read.thread, read.where].filter((t) => t !== null);
  // A text that only says where to look is no place beside a figure.
  const where = read.stages.length === 0 ? null : beside.join(', ') || null;
  const quantity = read.rest.length > 0 ? null : fullOf(read);
  return { ...asPrinted(text), quantity, where };
}
