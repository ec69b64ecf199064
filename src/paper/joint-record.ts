/**
 * The joint record: of each piece that was bolted up again, what the assembly record of ASME PCC-1 (2013, section 14,
 * Joint Assembly Records) asks for, under its names. The list is from memory, not copied: see JOINT_FIELDS. It is what
 * was noted, seen and not proved.
 */
import { livingOf } from '../job/fold/living-of.ts';
import type { Entry, Job, PieceNow } from '../model/types.ts';
import { list, many } from '../model/words.ts';
import { passesAt, passesOf } from '../piece/passes.ts';
import { printItem } from '../piece/row.ts';
import { sequence } from '../piece/sequence/sequence.ts';
import { type Buy, buysOf } from '../plan/buy/list.ts';
import { saidBack } from '../plan/buy/say.ts';
import { isHere } from '../plan/buy/state.ts';
import { standingOf } from '../plan/order/standing.ts';
import { type TestItem, testListOf } from '../plan/tests/testlist.ts';
import { counted, dayOf, kindSaid, texts, torqueSaid } from './said.ts';

/** In the order of the standard; each is filled in, or said to be not noted. */
export const JOINT_FIELDS = [
  'Date of assembly',
  'Names of assemblers',
  'Joint identification',
  'Joint class and size',
  'Fasteners, washers, gasket: specification and condition',
  'Disassembly method',
  'Adverse conditions',
  'Flatness measurements',
  'Assembly procedure and tightening method',
  'Target and what was set',
  'Unanticipated problems and their solutions',
  'Tool data',
  'Recommendations for the next assembly and maintenance',
] as const;
export type JointField = (typeof JOINT_FIELDS)[number];

export interface JointRecord {
  piece: string;
  name: string;
  /** False: bolts are not all tight. */
  complete: boolean;
  /** Texts of each field; empty: not noted. */
  fields: Readonly<Record<JointField, readonly string[]>>;
}

/** Pieces with bolts on which something was tightened in their present round, in the order of the file. */
export function jointRecords(job: Job, now: string, by: string | null): JointRecord[] {
  const standing = standingOf(job, now);
  const whole: Whole = { job, tests: testListOf(standing), buys: buysOf(standing) };
  const living = livingOf(job);
  return [...job.pieces.values()].flatMap((piece) => {
    const own = living.filter(
      (e) => e.piece === piece.spec.key && job.rounds.get(e.id) === piece.round,
    );
    const tight = own.filter((e) => e.verb === 'tight');
    return tight.length === 0 ? [] : [recordOf(whole, piece, own, tight, by)];
  });
}

/** What of the whole job all its joints are told from. */
interface Whole {
  job: Job;
  tests: readonly TestItem[];
  buys: readonly Buy[];
}

function recordOf(
  { job, tests, buys }: Whole,
  piece: PieceNow,
  own: readonly Entry[],
  tight: readonly Entry[],
  by: string | null,
): JointRecord {
  const { spec, holes, round } = piece;
  const days = [...new Set(tight.map((e) => dayOf(e.at)))];
  const isTight = holes.filter((h) => h.state === 'tight').length;
  const complete = isTight === holes.length && begunPass(job, piece) === null;
  const items = holes.flatMap((h) => h.holds ?? h.belongs ?? []);
  return {
    piece: spec.key,
    name: spec.name,
    complete,
    fields: {
      'Date of assembly': [list(days)],
      'Names of assemblers': by === null ? [] : [by],
      'Joint identification': [
        [spec.name, job.upper.machine, round > 1 ? `round ${round}` : null]
          .filter((s) => s !== null)
          .join(', '),
      ],
      'Joint class and size': counted(items.map(({ kind }) => ({ kind, with: [] }))).map(
        ({ count, kind }) => `${count} × ${kindSaid(job.upper.kinds, kind)}${classOf(job, kind)}`,
      ),
      'Fasteners, washers, gasket: specification and condition': [
        ...underHeads(holes),
        ...(spec.into === null ? [] : [`into ${spec.into.text}`]),
        ...texts(spec.joint),
        ...partsFor(buys, spec.key),
      ],
      'Disassembly method': own
        .filter((e) => e.verb === 'out' || e.verb === 'removed')
        .flatMap((e) => e.says ?? []),
      'Adverse conditions': own.flatMap((e) =>
        e.because === undefined ? [] : [`${dayOf(e.at)}: ${e.because}`],
      ),
      'Flatness measurements': flatness(job, spec.key),
      'Assembly procedure and tightening method': [
        ...pattern(job, piece, tight),
        passesSaid(job, piece, complete, isTight),
      ],
      'Target and what was set': [
        `printed: ${torqueSaid(piece) ?? 'not noted'}`,
        ...setSaid(job, piece, tight),
      ],
      'Unanticipated problems and their solutions': troubles(own),
      'Tool data': tools(tight),
      'Recommendations for the next assembly and maintenance': tests
        .filter((item) => item.pieces.includes(spec.key) && item.state !== 'passed')
        .map((item) => `${item.say}${item.when === null ? '' : `, ${item.when}`}`),
    },
  };
}

function classOf(job: Job, letter: string): string {
  const mark = job.upper.kinds.get(letter)?.class ?? null;
  return mark === null ? ' (class not noted)' : '';
}

/** `2 × M+clip (3 7)`: what lies under which heads. */
function underHeads(holes: PieceNow['holes']): string[] {
  const at = Map.groupBy(
    holes.filter((h) => (h.holds ?? h.belongs)?.with.length),
    (h) => printItem(h.holds ?? h.belongs ?? { kind: '', with: [] }),
  );
  return [...at].map(
    ([item, all]) => `${all.length} × ${item} (${all.map((h) => h.name).join(' ')})`,
  );
}

/** What is listed for it and was here when it went on. */
function partsFor(buys: readonly Buy[], key: string): string[] {
  return buys
    .filter((buy) => buy.for.includes(`${key} on`) && isHere(buy.state))
    .map(
      (buy) =>
        `${buy.what}: ${saidBack(buy) === null ? buy.state : `${buy.state}; ${saidBack(buy)}`}`,
    );
}

function flatness(job: Job, key: string): string[] {
  return [...job.tasks.values()]
    .filter(
      ({ spec, done }) => done !== null && FLAT.test(spec.say.text) && isAbout(spec.while, key),
    )
    .map(({ spec, result, done }) => `${spec.say.text}: ${result ?? done ?? ''}`);
}
const FLAT = /\b(?:flat(?:ness)?|warp(?:ed|age)?|straight[- ]?edge)\b/i;

function isAbout(steps: readonly string[], key: string): boolean {
  return steps.some((step) => step.trim().split(/\s+/)[0] === key);
}

/** Each bolt marked by itself in the last pass that all had: the order in which they were marked; null where none was so. */
function orderMarked(job: Job, { spec, holes }: PieceNow, tight: readonly Entry[]): string | null {
  const passes = passesOf(spec, job.upper.kinds).map((p) => p.name);
  for (const pass of passes.reverse()) {
    const marked = tight.filter((e) => e.value === pass && e.hole?.length === 1);
    const order = [...new Set(marked.flatMap((e) => e.hole ?? []))];
    if (order.length === holes.length) return `${pass} marked in this order: ${order.join(' ')}`;
  }
  return null;
}

function pattern(job: Job, piece: PieceNow, tight: readonly Entry[]): string[] {
  const { spec, holes } = piece;
  if (holes.length < 2) return [];
  const { why, tighten } = sequence(
    spec,
    job.upper.kinds,
    holes.map((h) => h.name),
  );
  const marked =
    orderMarked(job, piece, tight) ?? 'in which order they were tightened is not noted';
  return [`order shown on the screen: ${tighten.join(' ')} (${why})`, marked];
}

function passesSaid(job: Job, piece: PieceNow, complete: boolean, tight: number): string {
  const all = passesOf(piece.spec, job.upper.kinds);
  const said = all.map((pass) => {
    const n = piece.holes.filter((h) => h.passes.includes(pass.name)).length;
    return `${pass.name} ${n} of ${piece.holes.length}`;
  });
  const begun = begunPass(job, piece);
  const lacks =
    tight < piece.holes.length || begun === null
      ? `${tight} of ${many(piece.holes.length, 'bolt')} tight`
      : `${begun} not gone through`;
  const open = complete ? '' : `. NOT COMPLETE: ${lacks}`;
  return `passes noted: ${said.join(', ')}${open}`;
}

/** A pass that some of its holes had and some lack; null where each that was begun was gone through. */
function begunPass({ upper: { kinds } }: Job, { spec, holes }: PieceNow): string | null {
  for (const { name } of passesOf(spec, kinds)) {
    const own = holes.filter((h) => passesAt(spec, kinds, h.name).some((p) => p.name === name));
    const had = own.filter((h) => h.passes.includes(name)).length;
    if (had > 0 && had < own.length) return name;
  }
  return null;
}

/** `full: 10 N·m`, with the holes where it was not all: one line a pass and setting. */
function setSaid(job: Job, { spec, holes }: PieceNow, tight: readonly Entry[]): string[] {
  const passes = passesOf(spec, job.upper.kinds);
  const all = holes.map((h) => h.name);
  const byText = new Map<string, { pass: string; set: string; holes: Set<string> }>();
  for (const e of tight) {
    const pass = passes.find((p) => p.name === e.value);
    const own = pass?.angle == null ? 'set to what is not noted' : `${pass.angle}°`;
    const set = e.set ?? (e.value === 'snug' ? 'by hand' : own);
    const row = byText.get(`${e.value} ${set}`) ?? { pass: e.value, set, holes: new Set() };
    for (const hole of e.hole ?? all) row.holes.add(hole);
    byText.set(`${e.value} ${set}`, row);
  }
  return [...byText.values()].map((row) => {
    const which = all.every((hole) => row.holes.has(hole)) ? '' : ` (${[...row.holes].join(' ')})`;
    return `${row.pass}${which}: ${row.set}`;
  });
}

function troubles(own: readonly Entry[]): string[] {
  return own.flatMap((e) => {
    const holes = e.hole ? `${list(e.hole)} ` : '';
    if (e.verb === 'state')
      return [`${holes}${e.value}${e.says === undefined ? '' : `: ${e.says}`}`];
    if (e.verb === 'note') return [`${holes}${e.value}`];
    return [];
  });
}

/** The wrench is noted in words: `set 10 N·m on the small wrench`. */
function tools(tight: readonly Entry[]): string[] {
  const found = tight.flatMap((e) =>
    [e.set, e.says].flatMap(
      (text) => /\b(?:on|with) (?:the )?(.+? wrench)\b/i.exec(text ?? '')?.[1] ?? [],
    ),
  );
  return [...new Set(found)];
}
