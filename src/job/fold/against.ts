/** A torque of a piece held against one of its holes, with all that is known of that hole. */

import { gather } from '../../bolt/fit/fit-known.ts';
import { type Against, againstHole } from '../../bolt/torque/against-hole.ts';
import { type Sane, sane } from '../../bolt/torque/sane.ts';
import { drySaid, type Smear, smearIn } from '../../bolt/torque/smeared.ts';
import { likelyMark, maybeHollow, notSteel } from '../../bolt/torque/solid.ts';
import { hardestOf, readStages } from '../../bolt/torque/stages.ts';
import { kept } from '../../model/kept.ts';
import { textsIn } from '../../model/said.ts';
import type { HoleNow, Kind, PieceNow, Quantity, Torque } from '../../model/types.ts';
import { torqueOf } from './once.ts';
import { placeOf } from './place.ts';

type Kinds = ReadonlyMap<string, Kind>;

/** The kind of the bolt that is in a hole, or belongs there; null where that is not known. */
function kindOf(hole: HoleNow, kinds: Kinds): Kind | null {
  return kinds.get((hole.holds ?? hole.belongs)?.kind ?? '') ?? null;
}

/** What is on the threads: as the torque is printed for, else as joint and notes say. */
export function onThread({ spec }: PieceNow, hole: string, kind: Kind | null): Smear | null {
  const notes = [
    spec.holes.get(hole)?.note?.text,
    kind?.note,
    ...textsIn(spec.joint),
    spec.note?.text,
  ];
  return notes.map((text) => smearIn(text ?? '')).find((smear) => smear !== null) ?? null;
}

function wetOrDry(piece: PieceNow, hole: string, kind: Kind, printed: Torque | null) {
  const said = readStages(printed?.text ?? '').thread;
  if (said === null) return onThread(piece, hole, kind);
  return smearIn(said) ?? (drySaid(said) ? 'dry' : null);
}

/** Hollow, a plug, no steel, or turned on by an angle: nothing is too low for it. */
function unlikeAt(piece: PieceNow, hole: HoleNow, kind: Kind) {
  const { spec } = piece;
  const own = [kind.text, kind.head, kind.note];
  const stages = readStages(torqueOf(piece, hole.name)?.text ?? '').stages;
  const hollow = maybeHollow([...own, spec.holes.get(hole.name)?.note?.text ?? null], spec.name);
  return {
    unlike: hollow ? 'hollow' : notSteel(own) ? 'not steel' : null,
    likely: likelyMark(kind.class, own),
    angle:
      stages.some((s) => s.do === 'angle') || (spec.passes ?? []).some((p) => p.angle !== null),
  } as const;
}

export interface HeldTorque {
  against: Against;
  /** Against the thread alone, where slips of unit and point show; null without figures. */
  slip: Sane | null;
}

/**
 * The hardest that is set on the bolt of a hole, or this figure, against that hole. Null where nothing is printed, or
 * nobody knows the bolt.
 */
export function heldTorque(
  piece: PieceNow,
  hole: HoleNow,
  kinds: Kinds,
  set: Quantity | null = null,
): HeldTorque | null {
  const kind = kindOf(hole, kinds);
  const printed = torqueOf(piece, hole.name);
  const torque = set ?? hardestOf(readStages(printed?.text ?? '')) ?? printed?.quantity ?? null;
  if (!kind || torque === null) return null;
  const { spec } = piece;
  const known = kept(spec, 'torques held', () => new Map<string, HeldTorque>(), kinds);
  // Of a ring of holes most are the same question.
  const own = spec.holes.has(hole.name) ? hole.name : null;
  const question = JSON.stringify([own, hole.holds, hole.belongs, torque]);
  const held = known.get(question) ?? holdAgainst(piece, hole, kinds, kind, torque);
  known.set(question, held);
  return held;
}

/** Nothing of a hole counts here but what the question above names, and what the file says of it. */
function holdAgainst(
  piece: PieceNow,
  hole: HoleNow,
  kinds: Kinds,
  kind: Kind,
  torque: Quantity,
): HeldTorque {
  const place = placeOf(piece, hole, kinds);
  const item = hole.holds ?? hole.belongs;
  const own = place.takes?.kind.letter === kind.letter ? place.takes.kind : kind;
  const known = gather(own, item?.with ?? null, place);
  const unlike = unlikeAt(piece, hole, kind);
  const against = againstHole({
    torque,
    thread: kind.thread,
    class: kind.class,
    bite: known.engagement,
    biteMost: known.most ?? kind.length,
    into: (place.hole?.into ?? piece.spec.into)?.text ?? null,
    on: wetOrDry(piece, hole.name, kind, torqueOf(piece, hole.name)),
    ...unlike,
  });
  const firm = unlike.unlike === null && !unlike.angle;
  return { against, slip: sane(torque, kind.thread ?? '', kind.class, firm) };
}

/** The maker's figure goes first, and so it is looked for. */
export const LOOK_UP = "The maker's figure goes first: look it up again.";

/** Whether it would break the bolt or the thread: that alone stops. */
export function wouldBreak(held: HeldTorque): boolean {
  return held.against.verdict === 'strips' || held.against.verdict === 'yields';
}

/** Why it would break, and what may have been meant. */
export function sayBreaks({ against, slip }: HeldTorque): string {
  const [first] = slip?.suggest ?? [];
  const ask = first ? ` Was ${first.value} ${first.unit} meant?` : '';
  return `${against.why}${ask}`;
}

/** What is to be said of it before it is set; null where nothing is. */
export function sayHeld(held: HeldTorque | null): string | null {
  if (held === null) return null;
  if (wouldBreak(held)) return `${sayBreaks(held)} ${LOOK_UP}`;
  return held.slip?.say ?? (held.against.near === 'thread' ? held.against.why : null);
}
