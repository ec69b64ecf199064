/** What was disturbed, and what sort of thing it is: what has to be looked at afterwards follows from that. */
import type { Care, Job, PieceNow, PieceSpec } from '../model/types.ts';
import { caresOf } from './care.ts';
import type { Lines } from './lines.ts';

export type Sort =
  | 'cover'
  | 'hose'
  | 'cable'
  | 'lever'
  | 'switch'
  | 'fuel'
  | 'wiring'
  | 'exhaust'
  | 'brake'
  | 'steering';

/** By the words of its name; the trade's own words, no source. */
const WORDS: readonly [Sort, RegExp][] = [
  ['cover', /\b(?:cover|lid|sump|pan|case|housing)\b/],
  ['hose', /\b(?:hose|pipe|tube|line|union)s?\b/],
  ['cable', /\bcables?\b/],
  ['lever', /\b(?:lever|pedal|linkage)\b/],
  ['switch', /\b(?:switch|switches|lamp|light|lights|bulb)\b/],
  ['wiring', /\b(?:wire|wires|wiring|loom|harness|connectors?|leads?|coil)\b/],
  ['exhaust', /\b(?:exhaust|silencer|muffler|manifold|downpipe)\b/],
];

/** Of what is dangerous: what is tested once it is back. */
const TESTED = ['fuel', 'brake', 'steering'] as const;

function isSort(care: Care): care is (typeof TESTED)[number] {
  return TESTED.some((c) => c === care);
}

export function sortsOf(spec: PieceSpec): Sort[] {
  const words = `${spec.key.replaceAll('-', ' ')} ${spec.name}`.toLowerCase();
  const found = WORDS.filter(([, said]) => said.test(words)).map(([sort]) => sort);
  const by = new Set<Sort>(found);
  // What has a joint can weep at it, whatever it is called.
  if (spec.joint.length > 0 && !by.has('exhaust')) by.add('cover');
  for (const care of caresOf(spec).care) if (isSort(care)) by.add(care);
  // A fuel line is a hose, but what it shows is a smell; an exhaust pipe holds no liquid.
  if (by.has('exhaust')) by.delete('hose');
  return [...by];
}

/** Pieces that came off or were moved aside at any time, in the order of the file. */
export function disturbedOf(job: Job, lines: Lines): PieceNow[] {
  return [...job.pieces.values()].filter((piece) => lines.off.has(piece.spec.key));
}
