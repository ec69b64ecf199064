/** All that is wrong with a job file: what the reader finds, what stands in the diary and cannot be, and torques no bolt stands. */

import { unreadLength } from '../bolt/read/kind.ts';
import { hasFigure, readLimit } from '../bolt/read/reading-limit.ts';
import { printQuantity } from '../bolt/read/units.ts';
import { unreadOf } from '../bolt/torque/no-figure-said.ts';
import { readStages } from '../bolt/torque/stages.ts';
import type {
  Fault,
  HoleNow,
  Job,
  PieceNow,
  PieceSpec,
  Quantity,
  RowItem,
  Upper,
} from '../model/types.ts';
import { printItem } from '../piece/row.ts';
import { livingEntries } from './diary/living.ts';
import { collector, type Report } from './faults/faults.ts';
import { toFaults } from './faults/place.ts';
import { heldTorque, sayBreaks, wouldBreak } from './fold/against.ts';
import { placer } from './form/read-fields.ts';
import { jobOf, type ReadTree, readWithTree } from './read.ts';
import { silentTruths } from './truth/corrections.ts';
import { type Spot, spotAt } from './yaml/spot.ts';

/** Faults of a text, by line and column; never throws. `file` is only named in them. */
export function checkJob(text: string, file: string): Fault[] {
  return checkTree(readWithTree(text, file), file, () => {});
}

/** The same of a file that was read; `more` adds what rooms above this one find, also in how it stands. */
export function checkTree(
  tree: ReadTree,
  file: string,
  more: (tree: ReadTree, report: Report, job: Job) => void,
): Fault[] {
  const { read, text } = tree;
  if (read.unreadable) return read.faults;
  const { found, report } = collector();
  const job = jobOf(read);
  checkTruths(tree, job, report);
  more(tree, report, job);
  if (found.length === 0) return read.faults;
  return [...read.faults, ...toFaults(found, text, file)].sort(
    (a, b) => a.line - b.line || a.column - b.column,
  );
}

function checkTruths({ read, root, text }: ReadTree, job: Job, report: Report): void {
  for (const { piece, hole, say, ids } of job.conflicts) {
    const name = job.pieces.get(piece)?.spec.name ?? piece;
    report('two-truths', placeOfEntry(text, ids.at(-1) ?? ''), { piece, hole, say, name });
  }
  const { lost, rivals } = silentTruths(read.upper, livingEntries(read.entries));
  for (const { entry, holds } of rivals) {
    const { what, printed, says } = holds;
    const data = { what, printed, says, value: entry.says ?? '' };
    report('two-corrections', placeOfEntry(text, entry.id), data);
  }
  for (const { id, value, was = '', says = '' } of lost) {
    report('lost-truth', placeOfEntry(text, id), { what: value, was, says, id });
  }
  checkTorques(job, root, text, report);
  checkStages(read.upper, root, text, report);
  for (const { what, says, id } of job.corrections) {
    const rest = what === 'torque' ? unreadOf(says) : [];
    for (const { text: said } of rest) {
      report('unread-torque', placeOfEntry(text, id), { rest: said, like: '20 N·m + 90°' });
    }
  }
  checkLimits(read.upper, root, report);
  checkKinds(read.upper, root, report);
}

/** Where an entry's id stands; the end of the file for one that is not there. */
function placeOfEntry(text: string, id: string): number {
  const found = new RegExp(`\\bid: *"?${id.replace(/[^\w-]/g, '')}\\b`).exec(text);
  return found ? found.index : text.length;
}

function checkTorques(job: Job, root: Spot | null, text: string, report: Report): void {
  const odd = [...job.upper.pieces.values()].flatMap((spec) => oddTorques(spec, job));
  for (const { path, say, by } of odd) {
    const at = by === null ? placeOf(root, path) : placeOfEntry(text, by);
    report('odd-torque', at, { say });
  }
}

/** What of the printed torques was not read, and what says two things; each at its own place. */
function checkStages({ pieces }: Upper, root: Spot | null, text: string, report: Report): void {
  const printed = [...pieces.values()].flatMap((spec) => [
    { path: ['pieces', spec.key, 'torque'], torque: spec.torque, passes: spec.passes },
    ...[...spec.holes.values()].map(({ name, torque }) => ({
      path: ['pieces', spec.key, 'holes', name, 'torque'],
      torque,
      passes: spec.passes,
    })),
  ]);
  const found = printed.flatMap(({ path, torque, passes }) => {
    if (torque === null) return [];
    const { stages, differ } = readStages(torque.text);
    const [first] = stages;
    // Where the file lists passes, those count and not the text.
    const unread = passes === null ? unreadOf(torque.text) : [];
    const told = first?.do === 'torque' ? printQuantity(first.quantity) : torque.text;
    const faults = [
      ...unread.map(({ text: said, at }) => ({
        at,
        code: 'unread-torque' as const,
        data: { rest: said, like: '20 N·m + 90°' },
      })),
      ...differ.map(({ text: said, at }) => ({
        at,
        code: 'units-differ' as const,
        data: { text: said, first: told },
      })),
    ];
    return faults.length > 0 ? [{ path, faults }] : [];
  });
  for (const { path, faults } of found) {
    const spot = root ? spotAt(root, path).spot : null;
    const place = spot?.is === 'text' ? placer(text, spot) : () => spot?.at ?? 0;
    for (const { at, code, data } of faults) report(code, place(at), data);
  }
}

/** Limits that look like figures and are none that a reading can be held against. */
function checkLimits({ tasks, checks }: Upper, root: Spot | null, report: Report): void {
  const unread = [
    ...[...tasks.values()].map(({ key, limit }) => ({
      path: ['tasks', key, 'limit'],
      limit: limit?.text ?? null,
    })),
    ...[...checks.values()].map(({ key, limit }) => ({ path: ['checks', key, 'limit'], limit })),
  ].filter(({ limit }) => limit !== null && hasFigure(limit) && readLimit(limit) === null);
  for (const { path } of unread) {
    report('unread-limit', placeOf(root, path), {
      like: '0.8..1.2 ohm, at least 3 bar, < 5 mm',
    });
  }
}

/** Bolts with a figure where their length stands, of which no length was read. */
function checkKinds({ kinds }: Upper, root: Spot | null, report: Report): void {
  for (const kind of kinds.values()) {
    const value = unreadLength(kind);
    if (value === null) continue;
    report('unread-length', placeOf(root, ['bolts', kind.letter]), { letter: kind.letter, value });
  }
}

interface Odd {
  path: string[];
  say: string;
  /** Id of the entry that says that this is true, where it is not as printed. */
  by: string | null;
}

/** Each printed torque, held against the holes that use it: what would break one of them, or cannot be right for it. */
function oddTorques(spec: PieceSpec, job: Job): Odd[] {
  const piece = job.pieces.get(spec.key);
  if (!piece) return [];
  const path = ['pieces', spec.key];
  const inPasses = (spec.passes ?? []).flatMap((pass, i) =>
    pass.torque?.quantity && pass.torque.quantity.unit !== '%'
      ? [{ path: [...path, 'passes', `${i}`], set: pass.torque.quantity, holes: piece.holes }]
      : [],
  );
  const own = piece.holes.flatMap((hole) =>
    spec.holes.get(hole.name)?.torque
      ? [
          {
            path: [...path, 'holes', hole.name, 'torque'],
            set: null,
            holes: [hole],
            hole: hole.name,
          },
        ]
      : [],
  );
  const rest = piece.holes.filter((hole) => !spec.holes.get(hole.name)?.torque);
  const all = [{ path: [...path, 'torque'], set: null, holes: rest }, ...own, ...inPasses];
  return all.flatMap(({ path, set, holes, ...of }) => {
    const said = unlike(holes, spec).map((hole) => oddAt(piece, hole, job, set));
    const first = said.find((say) => say !== null);
    if (first == null) return [];
    const name = 'hole' in of ? of.hole : undefined;
    const by = job.corrections.find(
      (c) => c.what === 'torque' && c.piece === spec.key && c.hole === name,
    );
    return [{ path, say: first, by: by?.id ?? null }];
  });
}

/** The first of the holes that are alike: a torque is held against what is in one, or belongs there, and its own words. */
function unlike(holes: readonly HoleNow[], { holes: own }: PieceSpec): HoleNow[] {
  const item = (of: RowItem | null) => (of === null ? '' : printItem(of));
  const sorts = new Map<string, HoleNow>();
  for (const hole of holes) {
    const sort = own.has(hole.name) ? hole.name : `${item(hole.holds)} ${item(hole.belongs)}`;
    if (!sorts.has(sort)) sorts.set(sort, hole);
  }
  return [...sorts.values()];
}

function oddAt(piece: PieceNow, hole: HoleNow, job: Job, set: Quantity | null): string | null {
  const held = heldTorque(piece, hole, job.upper.kinds, set);
  if (held === null) return null;
  if (wouldBreak(held)) return sayBreaks(held);
  return held.slip?.verdict === 'insane' ? held.slip.say : null;
}

function placeOf(root: Spot | null, path: readonly string[]): number {
  return root ? spotAt(root, path).spot.at : 0;
}
