/** What one entry does to one hole. Never refuses: what cannot be becomes a conflict of the hole. */

import { TROUBLES, troubleOf } from '../../model/states/troubles.ts';
import type { Entry, HoleNow, RowItem } from '../../model/types.ts';
import {
  FOUND_EMPTY,
  printItem,
  readFound,
  readItem,
  STILL_IN,
  sameItem,
} from '../../piece/row.ts';

export function freshHole(name: string, claim: RowItem | null): HoleNow {
  return {
    name,
    claim,
    found: null,
    belongs: claim,
    unsettled: false,
    state: 'home',
    holds: claim,
    passes: [],
    trouble: null,
    conflict: null,
    by: null,
  };
}

/** A kind that is known: `?` is a bolt that nobody has named. */
export function knownItem(item: RowItem | null): RowItem | null {
  return item === null || item.kind === '?' ? null : item;
}

export function bringOut(hole: HoleNow, entry: Entry, word: string): void {
  const found = readFound(word);
  if (found === null || found === STILL_IN) return;
  if (hole.conflict) {
    hole.conflict = null; // it was taken out and looked at
  } else if (hole.state === 'out' && found !== FOUND_EMPTY) {
    const again = knownItem(found);
    if (again && hole.found && !sameItem(again, hole.found) && !entry.because) {
      clash(hole, entry, `${printItem(hole.found)} came out, and ${printItem(again)} came out`);
      return;
    }
  }
  hole.state = 'out';
  hole.holds = null;
  hole.passes = [];
  hole.by = entry.id;
  if (found === FOUND_EMPTY) {
    hole.trouble = 'empty';
    return;
  }
  hole.found = knownItem(found) ?? hole.found;
  if (hole.trouble && troubleOf(hole.trouble).overWhenOut) hole.trouble = null;
}

export function putIn(hole: HoleNow, entry: Entry, word: string): void {
  const item = knownItem(readItem(word));
  const full = hole.state === 'in' || hole.state === 'tight';
  if (full && sameItem(hole.holds, item)) return;
  if (hole.conflict && !entry.because) {
    clash(hole, entry, hole.conflict.say);
    return;
  }
  // Who gives a reason says which bolt it is.
  hole.conflict = null;
  const untouched = hole.state === 'home' && !(item && sameItem(hole.belongs, item));
  if ((full || untouched) && !entry.because) {
    const there = full ? 'went in' : 'never came out';
    clash(hole, entry, `${say(hole.holds)} ${there}, and ${say(item)} went in`);
    return;
  }
  hole.state = 'in';
  hole.holds = item;
  hole.passes = [];
  hole.by = entry.id;
  if (hole.trouble && troubleOf(hole.trouble).overWhenIn) hole.trouble = null;
}

/** `makesTight`: whether a pass makes the bolt of a hole tight. */
export function tighten(
  hole: HoleNow,
  entry: Entry,
  makesTight: (hole: string, pass: string) => boolean,
): void {
  if (hole.state === 'out' && entry.because) {
    // Somebody says that it is in, and only the mark of it is missing.
    hole.state = 'in';
    hole.holds = hole.belongs ?? hole.found;
  }
  if (hole.conflict || hole.state === 'out') {
    const what = `was tightened (${entry.value}) with nothing in it`;
    clash(hole, entry, hole.conflict?.say ?? what);
    return;
  }
  if (!hole.passes.includes(entry.value)) hole.passes.push(entry.value);
  if (makesTight(hole.name, entry.value)) hole.state = 'tight';
  hole.by = entry.id;
}

/** Only this pass of a bolt still counts; one that has no other stays as it is. */
export function loosenTo(hole: HoleNow, pass: string): void {
  if (hole.passes.every((p) => p === pass)) return;
  hole.passes = hole.passes.filter((p) => p === pass);
  if (hole.state === 'tight') hole.state = 'in';
}

/** What a pass did to it counts no more; its bolt is in. */
export function loosened(hole: HoleNow): void {
  hole.passes = [];
  if (hole.state === 'tight') hole.state = 'in';
}

/** `away`: the piece is off. */
export function setTrouble(hole: HoleNow, entry: Entry, away: boolean): void {
  const trouble = TROUBLES.find((t) => t === entry.value) ?? null;
  hole.trouble = trouble;
  if (hole.conflict || trouble === null) return;
  if (trouble === 'pulled' && hole.state === 'tight') {
    hole.state = 'in'; // what turns without tightening holds nothing
    hole.passes = [];
  }
  const { bolt } = troubleOf(trouble);
  if (bolt === 'gone') {
    hole.state = 'out';
    hole.holds = null;
    hole.passes = [];
    hole.by = entry.id;
  }
  // A bolt that is stuck is in: whoever noted it as out before was wrong, and a piece that is pried then cracks.
  if (bolt === 'in' && hole.state === 'out' && !away) {
    hole.state = 'home';
    hole.holds = hole.found ?? hole.belongs;
    hole.by = entry.id;
  }
}

/** Says what belongs; two bolts in one hole are settled by the one that is really there, not yet tight. */
export function settle(hole: HoleNow, entry: Entry, settled: Map<string, RowItem>): void {
  const item = knownItem(readItem(entry.value));
  if (!item) return;
  settled.set(hole.name, item);
  if (!hole.conflict) return;
  hole.conflict = null;
  hole.state = hole.holds ? 'in' : 'out';
  if (hole.state === 'in') hole.holds = item;
  else hole.found = item;
  hole.passes = [];
  hole.by = entry.id;
}

/** What belongs in the hole, once all entries have been read. */
export function conclude(hole: HoleNow, settled: RowItem | undefined): void {
  const differs = hole.claim !== null && hole.found !== null && !sameItem(hole.claim, hole.found);
  hole.unsettled = differs && !(settled && sameItem(settled, hole.claim));
  hole.belongs = hole.claim ?? settled ?? hole.found;
}

/** A hole as it was before `conclude`. */
export function reopened(hole: HoleNow): HoleNow {
  return { ...hole, unsettled: false, belongs: hole.claim };
}

function clash(hole: HoleNow, entry: Entry, say: string): void {
  const ids = [...(hole.conflict?.ids ?? (hole.by ? [hole.by] : [])), entry.id];
  hole.conflict = { piece: entry.piece ?? '', hole: hole.name, say, ids };
  hole.state = 'conflict';
}

function say(item: RowItem | null): string {
  return item ? printItem(item) : 'a bolt';
}
