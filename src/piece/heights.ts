/**
 * Heights at which heads stand when the bolts are dropped in and not turned: a wrong bolt shows before it
 * is screwed in. In mm.
 */

import { readLength } from '../bolt/read/length.ts';
import { mm } from '../bolt/read/numbers.ts';
import type { Kind } from '../model/types.ts';
import { list } from '../model/words.ts';
import {
  type HeightHole,
  heightGroups,
  heightOf,
  type MeasuredHoles,
  measuredOf,
  notDown,
  type Reference,
  references,
  standingProud,
} from './heights-against.ts';
import { isDash, noFigure, type Typed, type TypedFault, typed } from './typed.ts';
import { byLetter } from './words.ts';

export interface OddHeight {
  hole: string;
  mm: number;
  /** Where its own bolt would stand; null where its like stand at several heights and none can be said to be right. */
  expected: number | null;
  /** Higher than that, negative: lower; null as above. */
  by: number | null;
  /** Kinds that would stand like this, by letter. */
  like: string[];
  say: string;
}

export interface Heights {
  /** To be looked at, in the order given. */
  odd: OddHeight[];
  /** All stand too high (by > 0) or too low alike: the piece is not where it belongs. */
  notDown: { by: number; say: string } | null;
  /** Measured, but with nothing to hold it against. */
  unjudged: string[];
}

/** Kinds that would stand like this, nearest first. */
function like(h: MeasuredHoles, reference: Reference, kinds: ReadonlyMap<string, Kind>): string[] {
  const takes = h.takes?.kind ?? '';
  const off = (kind: string) => {
    const height = kind === takes ? null : heightOf(reference, takes, kind, kinds);
    return height === null ? Number.POSITIVE_INFINITY : Math.abs(height - h.mm);
  };
  return [...kinds.keys()]
    .filter((kind) => off(kind) <= reference.within)
    .sort((a, b) => off(a) - off(b) || byLetter(a, b));
}

function judged(
  h: MeasuredHoles,
  reference: Reference,
  kinds: ReadonlyMap<string, Kind>,
): OddHeight {
  const expected = standingProud(reference.mm);
  const by = h.mm - expected;
  const found = like(h, reference, kinds);
  const how = `${mm(Math.abs(by))} ${by > 0 ? 'higher' : 'lower'} than ${h.takes?.kind} should`;
  const as = found.length === 0 ? 'Look at it.' : `As ${list(found, 'or')} would: look at it.`;
  const say = `${h.name} stands ${mm(h.mm)} off, ${how}. ${as}`;
  return { hole: h.name, mm: h.mm, expected, by, like: found, say };
}

/** Its like stand at several heights: nobody can say which is right. */
function uneven(h: MeasuredHoles, group: readonly MeasuredHoles[]): OddHeight {
  const others = group.map((g) => g.name);
  const say = `${list(others)} take the same and stand at different heights: look at each.`;
  return { hole: h.name, mm: h.mm, expected: null, by: null, like: [], say };
}

function sayShift(by: number, measured: readonly MeasuredHoles[]): string {
  const one = new Set(measured.map((h) => h.item)).size === 1;
  const kind = one ? ', or every one of these bolts is another kind' : '';
  const high = `All heads stand ${mm(Math.abs(by))} too high alike: the piece is not down on its dowels, its holes are out of line with the threads${kind}. Look there, and for dirt in the holes, before anything is turned.`;
  // The seat of the heads is up by the gap, the bolts still stand on their threads.
  const low = `All heads stand ${mm(Math.abs(by))} too low alike: the piece is not down, its joint stands open by so much${kind}. Look at the dowels, for dirt and for a second gasket.`;
  return by > 0 ? high : low;
}

/** Judges the heights of the heads of one piece; holes in any order, those not measured may be among them. */
export function heights(holes: readonly HeightHole[], kinds: ReadonlyMap<string, Kind>): Heights {
  const measured = measuredOf(holes);
  const against = references(holes);
  const groups = heightGroups(measured);
  const shift = notDown(holes);
  const odd: OddHeight[] = [];
  const unjudged = holes.flatMap((h) => (h.mm !== null && h.takes === null ? h.name : []));
  for (const h of measured) {
    const reference = against.get(h.name);
    const group = groups.get(h.item) ?? [];
    if (reference) {
      if (Math.abs(h.mm - standingProud(reference.mm)) > reference.within)
        odd.push(judged(h, reference, kinds));
    } else if (group.length > 1) odd.push(uneven(h, group));
    else unjudged.push(h.name);
  }
  const say = () => sayShift(shift, measured);
  return { odd, unjudged, notDown: shift === 0 ? null : { by: shift, say: say() } };
}

/**
 * A row of heights as typed, one for each hole in its order: `2.5 2,4 - 12.5`. `-` was not measured; a figure with a
 * decimal comma needs a space, a semicolon or a comma and a space behind it.
 */
export function readHeights(text: string, holes: readonly string[]): Typed<Map<string, number>> {
  const value = new Map<string, number>();
  const faults: TypedFault[] = [];
  const words = [...text.matchAll(/[^\s;]+(?:\s+(?:mm|in)\b)?/g)];
  for (const [i, { 0: found, index: at }] of words.entries()) {
    const word = found.replace(/,$/, '');
    const hole = holes[i];
    if (hole === undefined) break;
    const height = readLength(word);
    if (height !== null) value.set(hole, height);
    else if (!isDash(word)) faults.push(noFigure(at, word, `hole ${hole}`));
  }
  if (words.length !== holes.length) {
    const extra = words[holes.length];
    const code = extra ? 'too-many' : 'too-few';
    const say = `${words.length} heights for ${holes.length} holes: one for each in its order, and - where it was not measured.`;
    faults.push({ code, at: extra?.index ?? text.length, word: extra?.[0] ?? '', say });
  }
  return typed(value, faults);
}
