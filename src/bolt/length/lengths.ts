/**
 * Which lengths may go into a hole: long enough to hold, short enough not to bottom, whatever a bolt of that length
 * measures within its tolerance. With x = L − k (see reach.ts) and k between two
 * bounds: L − minus − k is to be the need at least, L + plus − k the depth at most. All in mm.
 */
import type { Kind, Quantity } from '../../model/types.ts';
import { isOpen } from '../fit/fit-known.ts';
import type { Measure } from '../fit/fit-types.ts';
import { type Place, reachOf } from '../fit/reach.ts';
import { type Band, bands, lengthTolerance } from '../fit/tolerance.ts';
import { withLength } from '../read/kind.ts';
import { printNumber } from '../read/numbers.ts';
import { convert } from '../read/units.ts';
import { insertHole } from '../thread/insert.ts';
import { materialOf } from '../thread/materials.ts';
import { type Thread, threadOf } from '../thread/threads.ts';
import { strip } from '../torque/stripping.ts';
import { standardLengths } from './standard-lengths.ts';

export interface Range {
  /** Nominal lengths; null where that end is not known, or (`longest`) where there is none. */
  shortest: number | null;
  longest: number | null;
  /** To be had between them, shortest first; those in brackets in the standard are the second choice. */
  standard: { length: number; text: string; second: boolean }[];
  /** What to buy, as one says it; null where no standard length will do, or too little is known. */
  buy: string | null;
}

export interface Lengths extends Range {
  /** Nothing to bottom in: a nut, a through hole, one that opens into the case. */
  open: boolean;
  /** Engagement that was asked for; null where the material is not known. */
  need: number | null;
  /** The same with a wire insert of so many mm, drilled so deep; null where the thread has no figures. */
  afterInsert: (Range & { insert: number; depth: number }) | null;
  /** What would have to be measured for more. */
  measure: Measure[];
  /** What was taken for granted, one sentence each. */
  notes: string[];
}

export interface LengthsInput {
  place: Place;
  /** Words of the joint, for its gasket. */
  joint: readonly string[];
  /** As printed; null: by the rule of the trade alone. */
  torque: Quantity | null;
}

/** A gasket nobody measured is nothing to so thick (common practice, no source). */
const GASKET = { from: 0, to: 1.5 };
/** A figure beyond this beside a gasket is that of a bolt or a stud (common practice, no source). */
const THICKEST = 5;
/** Turns are counted to half a turn, heights seen to half a millimetre (common practice, no source). */
const BY_EYE = 0.5;

/** L − x, at its least and most; null where too little is measured. */
interface Offset {
  least: number;
  most: number;
}

/** Thickness of the gasket that the joint names, in the same words or the next ones: nothing without a gasket. */
export function gasketOf(joint: readonly string[]): { from: number; to: number; known: boolean } {
  const parts = joint.flatMap((text) => text.split(/;|,(?!\d)/).map((part) => part.trim()));
  const at = parts.findIndex((p) => /\bgasket/i.test(p) && !/\b(?:no|without|not)\b/i.test(p));
  if (at < 0) return { from: 0, to: 0, known: true };
  const alone = /^\d+(?:[.,]\d+)? ?mm(?: thick)?$/i.exec(parts[at + 1] ?? '')?.[0] ?? '';
  const said = /(\d+(?:[.,]\d+)?)\s*mm\b/i.exec(`${parts[at]} ${alone}`)?.[1]?.replace(',', '.');
  return said === undefined || Number(said) > THICKEST
    ? { ...GASKET, known: false }
    : { from: Number(said), to: Number(said), known: true };
}

type Offsets = Offset & { counted: boolean };

/** What is measured of a place, or counted on its own bolt; that the two are apart, or null where neither is. */
function offsetOf(place: Place, joint: readonly string[]): Offsets | 'apart' | null {
  const own = place.takes;
  if (!own) return null;
  const { hole } = place;
  const thread = hole?.thread ?? place.piece?.thread ?? null;
  // Where the thread ends does not matter here.
  const endless = thread && { from: thread.from, to: null };
  const at = (kind: Kind, counts: { turns: number | null; proud: number | null }) =>
    reachOf(kind, own.with, {
      ...place,
      takes: { kind, with: own.with },
      hole: hole && { ...hole, ...counts, thread: endless },
      piece: place.piece && { ...place.piece, thread: endless },
    });
  const { turns = null, proud = null } = hole ?? {};
  const reach = own.kind.length === null ? null : at(own.kind, { turns, proud });
  if (reach?.disputed) return 'apart';
  // A bolt of no length at all shows where any would end.
  const direct = at({ ...own.kind, length: 0 }, { turns: null, proud: null });
  if (direct.x !== null) {
    const gasket = gasketOf(joint);
    return { least: gasket.from - direct.x, most: gasket.to - direct.x, counted: false };
  }
  if (reach?.x == null) return null;
  const by = BY_EYE * (turns === null ? 1 : (threadOf(own.kind.thread)?.pitch ?? 1));
  const k = (own.kind.length ?? 0) - reach.x;
  return { least: k - by, most: k + by, counted: true };
}

const TENTH = 0.1;
const up = (mm: number) => Math.ceil(mm / TENTH - 1e-6) / 10;
const down = (mm: number) => Math.floor(mm / TENTH + 1e-6) / 10;

/** The least length, in tenths, of which every bolt reaches so far. */
function shortestFor(reaches: number, all: readonly Band[]): number | null {
  for (const { from, to, minus } of all) {
    const length = up(Math.max(reaches + minus, from + TENTH));
    if (length <= to + 1e-9) return length;
  }
  return null;
}

/** The greatest length, in tenths, of which none reaches farther; 0 where none is short enough. */
function longestFor(reaches: number, all: readonly Band[]): number {
  const found = all.findLast(
    ({ from, to, plus }) => down(Math.min(reaches - plus, to)) > from + 1e-9,
  );
  return found ? down(Math.min(reaches - found.plus, found.to)) : 0;
}

/** What the thread asks for: the rule of the trade, and enough for the printed torque at the hardest pull. */
function needOf(t: Thread, into: string, kind: Kind, torque: Quantity | null): number | null {
  const material = materialOf(into);
  if (!material) return null;
  const nm = torque && convert(torque.to ?? torque.value, torque.unit, 'N·m');
  const asked = { thread: t.name, engagement: t.d, into, class: kind.class };
  const held = nm === null ? null : strip({ ...asked, torque: nm });
  return Math.max(material.atLeast * t.d, held?.required.value ?? 0);
}

interface Bounds {
  /** x that a bolt has to reach, and may not pass; null: not known, infinite: nothing to bottom in. */
  need: number | null;
  depth: number | null;
  offset: Offset | null;
}

function rangeOf(kind: Kind, t: Thread, { need, depth, offset }: Bounds): Range {
  const all = bands(t.d, t.system === 'inch');
  const own = kind.length;
  const least = offset && need !== null ? need + offset.most : null;
  const most = offset && depth !== null ? depth + offset.least : null;
  // Where too little is measured, what came out whole is what is known to be right.
  const shortest = least === null ? own : shortestFor(least, all);
  const longest =
    most === null ? own : most === Number.POSITIVE_INFINITY ? null : longestFor(most, all);
  const does = (length: number) => {
    const { minus, plus } = lengthTolerance(length, t.d, t.system === 'inch');
    const holds =
      least === null ? own !== null && length >= own - NEARLY : length - minus >= least - 1e-9;
    const clears =
      most === null ? own !== null && length <= own + NEARLY : length + plus <= most + 1e-9;
    return holds && clears;
  };
  const standard = standardLengths(t.system)
    .filter(({ length }) => does(length))
    .map((s) => ({ ...s, text: withLength(kind, s.length).text }));
  return { shortest, longest, standard, buy: null };
}

/** The same length, as a standard length is in inches and in mm. */
const NEARLY = 0.05;

/** The right length where it is made, else the next shorter one that will do, else the next longer. */
function bestOf({ standard }: Range, own: number | null): string | null {
  const same = standard.find(({ length }) => own !== null && Math.abs(length - own) < NEARLY);
  const first = standard.filter(({ second }) => !second);
  const shorter = first.findLast(({ length }) => own !== null && length < own);
  return (same ?? shorter ?? first[0] ?? standard[0])?.text ?? null;
}

function isMade(length: number, t: Thread): boolean {
  return standardLengths(t.system).some((s) => Math.abs(s.length - length) < NEARLY);
}

/** Null where nobody knows what belongs in the hole, or its thread has no figures. */
export function lengthsFor({ place, joint, torque }: LengthsInput): Lengths | null {
  const kind = place.takes?.kind ?? null;
  const t = threadOf(kind?.thread ?? null);
  if (!kind || !t) return null;
  const into = (place.hole?.into ?? place.piece?.into)?.text ?? null;
  const thread = place.hole?.thread ?? place.piece?.thread ?? null;
  const open = isOpen(place, into);
  const found = offsetOf(place, joint);
  const offset = found === 'apart' ? null : found;
  const probed = thread?.to == null ? null : thread.to - thread.from;
  const need = into === null ? null : needOf(t, into, kind, torque);
  const depth = open ? Number.POSITIVE_INFINITY : probed;
  const range = rangeOf(kind, t, { need, depth, offset });
  const own = kind.length;
  const buy = own !== null && isMade(own, t) ? kind.text : bestOf(range, own);
  const gasket = gasketOf(joint);
  const measure: [Measure, boolean][] = [
    ['length', own === null],
    ['turns', offset === null],
    ['probe', depth === null],
    ['into', need === null],
  ];
  return {
    ...range,
    buy,
    open,
    need,
    afterInsert: insertFor(kind, t, into, torque, offset, open),
    measure: measure.filter(([, lacks]) => lacks).map(([what]) => what),
    notes: [
      ...(found === 'apart'
        ? ['What was measured and what was counted are apart: measure again.']
        : []),
      ...(offset && !offset.counted && !gasket.known
        ? [`The gasket is not measured: reckoned as ${GASKET.from} to ${GASKET.to} mm.`]
        : []),
      ...(need !== null && probed !== null && probed < need
        ? [
            `Only ${printNumber(probed)} mm of thread: ${printNumber(need, 3)} are asked for, and no length holds so.`,
          ]
        : []),
      ...ownSaid(kind, t, { need, depth, offset }),
    ],
  };
}

/** What speaks against the length that belongs there. */
function ownSaid(kind: Kind, t: Thread, { need, depth, offset }: Bounds): string[] {
  const own = kind.length;
  if (own === null || offset === null) return [];
  const { minus, plus } = lengthTolerance(own, t.d, t.system === 'inch');
  const [least, most] = [own - minus - offset.most, own + plus - offset.least];
  const one = (mm: number) => printNumber(Math.round(mm * 10) / 10);
  const short =
    need !== null && least < need
      ? [
          `A short one of ${kind.text} bites ${one(Math.max(0, least))} mm; ${one(need)} are asked for here.`,
        ]
      : [];
  const long =
    depth !== null && most > depth
      ? [
          `A long one of ${kind.text} would bottom by ${one(most - depth)} mm: measure it, and probe the hole.`,
        ]
      : [];
  return [...short, ...long];
}

/**
 * With a wire insert set half a turn deep: it bites 0.75 P less than it is long, and the hole ends where it was drilled
 * to (ASME B18.29.2M). Below the insert no thread is left that a bolt could use.
 */
function insertFor(
  kind: Kind,
  t: Thread,
  into: string | null,
  torque: Quantity | null,
  offset: Offset | null,
  open: boolean,
): Lengths['afterInsert'] {
  if (t.system !== 'metric') return null;
  const soft = into === null || !['iron', 'steel'].includes(materialOf(into)?.name ?? '');
  const hole = insertHole(t, soft ? 1.5 : 1);
  const around = `wire insert in ${into ?? 'aluminium'}`;
  const asked = needOf(t, around, kind, torque) ?? t.d;
  const bites = Math.min(asked, hole.length - 0.75 * t.pitch);
  const range = rangeOf({ ...kind, length: offset ? kind.length : null }, t, {
    need: bites + 0.5 * t.pitch,
    depth: open ? Number.POSITIVE_INFINITY : hole.depth,
    offset,
  });
  return { ...range, buy: bestOf(range, kind.length), insert: hole.length, depth: hole.depth };
}
