/** One piece while the diary is read over it. */

import { oneLine } from '../../model/safe.ts';
import type {
  Entry,
  HoleNow,
  PieceNow,
  PieceSpec,
  RowItem,
  TaskNow,
  Upper,
  Verb,
  Where,
} from '../../model/types.ts';
import { verbRow } from '../../model/verbs/verbs.ts';
import { holeNames } from '../../piece/order.ts';
import { makesTight } from '../../piece/passes.ts';
import { UNKNOWN } from '../../piece/row.ts';
import {
  bringOut,
  conclude,
  freshHole,
  knownItem,
  loosened,
  loosenTo,
  putIn,
  reopened,
  setTrouble,
  settle,
  tighten,
} from './hole.ts';
import { isTested, reopen } from './tested.ts';

type Tasks = ReadonlyMap<string, TaskNow>;

/** By fingers or a turn of the wrist: no figure belongs to it. */
const SNUG = 'snug';

/** A piece while the diary is read over it. */
export interface Making {
  now: PieceNow;
  byName: Map<string, HoleNow>;
  settled: Map<string, RowItem>;
  /** Whether this pass makes the bolt of a hole tight. */
  makesTight: (hole: string, pass: string) => boolean;
  /** Holes whose bolt was tightened with no word of what the wrench was set to. */
  byFeel: Set<string>;
  /** Something came off in this round. */
  wasOff: boolean;
}

/** A piece of which nothing has happened yet, and none of whose holes are known. */
export function atHome(spec: PieceSpec): PieceNow {
  return {
    spec,
    where: 'home',
    round: 1,
    away: 'no',
    fitted: false,
    holes: [],
    tray: spec.tray,
    last: null,
  };
}

export function begin(spec: PieceSpec, upper: Upper): Making {
  const holes = holeNames(spec).map((name, i) => freshHole(name, knownItem(spec.row?.[i] ?? null)));
  const now = { ...atHome(spec), holes };
  return {
    now,
    byName: byName(holes),
    settled: new Map(),
    byFeel: new Set(),
    makesTight: (hole, pass) => makesTight(spec, upper.kinds, hole, pass),
    wasOff: false,
  };
}

/** A copy of one that was closed, as it was before that. */
export function unclosed(closed: Making): Making {
  const { now, settled } = closed;
  const holes = now.holes.map((h) => ({ ...reopened(h), passes: [...h.passes] }));
  return {
    ...closed,
    now: { ...now, holes },
    byName: byName(holes),
    settled: new Map(settled),
    byFeel: new Set(closed.byFeel),
  };
}

function byName(holes: readonly HoleNow[]): Map<string, HoleNow> {
  return new Map(holes.map((h) => [h.name, h]));
}

export function finish(task: TaskNow | undefined, entry: Entry): void {
  if (!task || entry.verb !== 'done') return;
  task.done = oneLine(entry.value);
  task.was = oneLine(entry.was ?? '') || null;
  task.set = oneLine(entry.set ?? '') || null;
  task.result = oneLine(entry.result ?? '') || null;
  task.judged = entry.judged ?? null;
  task.overruled = entry.because !== undefined;
  task.early = false;
}

/** Whether the piece is back with it, that was not before. */
export function apply(making: Making, entry: Entry, tasks: Tasks): boolean {
  const { now } = making;
  now.last = entry.at;
  if (beginsRound(making, entry)) {
    nextRound(making);
    reopen(now.spec.key, tasks);
  }
  if (comesOff(entry)) making.wasOff = true;
  const wasBack = isDone(now);
  DOES[entry.verb]?.(making, entry);
  if (entry.verb === 'written' && entry.value === 'torque') figureKnown(making, entry, tasks);
  return !wasBack && isDone(now);
}

/** Bolts that were tightened while nobody knew the figure are gone round with it, unless the piece has proved itself since. */
function figureKnown(making: Making, { hole: named }: Entry, tasks: Tasks): void {
  const { now, byFeel } = making;
  if (isTested({ ...now, where: whereIs(now) }, tasks)) return;
  for (const hole of now.holes) {
    const meant = named === undefined || named.includes(hole.name);
    if (meant && byFeel.delete(hole.name)) loosenTo(hole, SNUG);
  }
}

const comesOff = (entry: Entry): boolean => verbRow(entry.verb).moves === 'off';

/** Such an entry opens tasks again too. */
export function beginsRound(making: Making, entry: Entry): boolean {
  return comesOff(entry) && making.wasOff && isDone(making.now);
}

/**
 * It came off before anybody noted its bolts, which were written down since: they are out, for with one in it the mark
 * would have had a reason.
 */
function cameWhole({ now }: Making, { value, because }: Entry): boolean {
  const untold = now.holes.every((h) => h.state === 'home' && h.trouble === null);
  return value !== 'aside' && because === undefined && untold;
}

type Does = (making: Making, entry: Entry) => void;

/** What each verb does to its piece; null: nothing. */
const DOES: Readonly<Record<Verb, Does | null>> = {
  out: (making, entry) => {
    for (const [hole, word] of targets(making, entry)) bringOut(hole, entry, word);
    intoTray(making, entry);
  },
  in: (making, entry) => {
    for (const [hole, word] of targets(making, entry)) putIn(hole, entry, word);
    // With a bolt in it, it is on its place.
    making.now.away = 'no';
    making.now.fitted = true;
  },
  tight: (making, entry) => {
    for (const [hole] of targets(making, entry)) {
      tighten(hole, entry, making.makesTight);
      if (entry.set !== undefined) making.byFeel.delete(hole.name);
      else if (entry.value !== SNUG) making.byFeel.add(hole.name);
    }
  },
  state: (making, entry) => {
    const away = making.now.away !== 'no';
    for (const [hole] of targets(making, entry)) {
      // Beside a hole that held nothing the others were never evenly tight: all are gone round again.
      if (hole.trouble === 'pulled' && entry.value === 'mended') making.now.holes.forEach(loosened);
      setTrouble(hole, entry, away);
    }
  },
  settle: (making, entry) => {
    for (const [hole] of targets(making, entry)) settle(hole, entry, making.settled);
  },
  removed: (making, entry) => {
    making.now.away = entry.value === 'aside' ? 'aside' : 'removed';
    making.now.fitted = false;
    if (cameWhole(making, entry)) {
      for (const hole of making.now.holes) bringOut(hole, entry, UNKNOWN);
    }
    intoTray(making, entry);
  },
  fitted: ({ now }) => {
    now.away = 'no';
    now.fitted = true;
  },
  done: null,
  inside: null,
  cleared: null,
  seen: null,
  struck: null,
  added: null,
  written: null,
  renamed: null,
  looked: null,
  tried: null,
  listed: null,
  chosen: null,
  figured: null,
  found: null,
  corrected: null,
  note: null,
  photo: null,
  keep: null,
  taken: null,
  reading: null,
  undo: null,
};

function intoTray({ now }: Making, { tray }: Entry): void {
  if (tray !== undefined) now.tray = oneLine(tray);
}

/** The holes that an entry is about, each with its word: one word for all, or a word for each. */
function targets(making: Making, entry: Entry): [HoleNow, string][] {
  const only = entry.hole?.length === 1 ? entry.hole[0] : undefined;
  // As nearly all lines of a diary are.
  if (only !== undefined && /^\S+$/.test(entry.value)) {
    return [[holeOf(making, only), entry.value]];
  }
  const words = entry.value.match(/\S+/g) ?? [];
  const { value: is } = verbRow(entry.verb);
  const isRow = is === 'found' || is === 'bolts';
  const names = entry.hole ?? allNames(making.now, isRow ? words.length : 0);
  const one = !isRow || words.length === 1;
  return names.flatMap((name, i) => {
    const word = one ? words[0] : words[i];
    return word === undefined ? [] : [[holeOf(making, name), word] as [HoleNow, string]];
  });
}

/** All holes of the piece; a row that came out of a piece without holes tells how many there are. */
function allNames(now: PieceNow, words: number): string[] {
  const names = now.holes.map((h) => h.name);
  if (now.spec.row !== null || words < 2) return names;
  for (let n = 1; names.length < words; n += 1) {
    if (!names.includes(`${n}`)) names.push(`${n}`);
  }
  return names;
}

/** A hole by name; one that only the diary knows is added, so that nothing noted is out of sight. */
function holeOf(making: Making, name: string): HoleNow {
  const knownItem = making.byName.get(name);
  if (knownItem) return knownItem;
  const hole = freshHole(name, null);
  making.byName.set(name, hole);
  making.now.holes.push(hole);
  return hole;
}

/** Off and on again, with nothing left to do: what comes off now begins another round. */
function isDone(now: PieceNow): boolean {
  return now.holes.length === 0 ? now.fitted : isTight(now.holes);
}

/** What was not touched counts as it is; the first hole that is open tells. */
function isTight(holes: readonly HoleNow[]): boolean {
  const back = holes.every((h) => h.state === 'tight' || h.state === 'home');
  return back && holes.some((h) => h.state === 'tight');
}

function nextRound(making: Making): void {
  const { now } = making;
  now.round += 1;
  now.fitted = false;
  making.settled.clear();
  for (const hole of now.holes) {
    hole.found = null;
    hole.state = 'home';
    hole.passes = [];
    hole.by = null;
  }
}

function whereIs(now: PieceNow): Where {
  const { holes } = now;
  if (holes.length === 0) {
    if (now.away !== 'no') return 'open';
    return now.fitted ? 'on' : 'home';
  }
  const count = (state: HoleNow['state']) => holes.filter((h) => h.state === state).length;
  const back = count('in') + count('tight');
  const out = count('out');
  if (isTight(holes)) return 'tight';
  if (back > 0 || now.fitted) return 'on';
  if (out === holes.length && now.away !== 'no') return 'open';
  return out > 0 || now.away !== 'no' || count('conflict') > 0 ? 'off' : 'home';
}

/** What stands at the end: what belongs in each hole, and where the piece is. */
export function close(making: Making, tasks: Tasks): void {
  const { now } = making;
  for (const hole of now.holes) conclude(hole, making.settled.get(hole.name));
  now.where = whereIs(now);
  if (isTested(now, tasks)) now.where = 'tested';
}
