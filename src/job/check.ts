/** All that is wrong with a job file: what the reader finds, what stands in the diary and cannot be, and torques no bolt stands. */
import { sane } from '../bolt/sane.ts';
import type { Fault, Job, PieceSpec, Torque } from '../model/types.ts';
import { livingEntries } from './diary/living.ts';
import { collector, type Report } from './faults/faults.ts';
import { toFaults } from './faults/place.ts';
import { fold } from './fold/fold.ts';
import { readJob } from './read.ts';
import { lostTruths, rivalTruths } from './truth/corrections.ts';
import { openYaml } from './yaml/doc.ts';
import { type Spot, spotAt } from './yaml/spot.ts';

/** Faults of a text, by line and column; never throws. `file` is only named in them. */
export function checkJob(text: string, file: string): Fault[] {
  const read = readJob(text, file);
  if (read.unreadable) return read.faults;
  const job = fold(read.upper, read.entries);
  const { found, report } = collector();
  for (const { piece, hole, say, ids } of job.conflicts) {
    const name = job.pieces.get(piece)?.spec.name ?? piece;
    report('two-truths', placeOfEntry(text, ids.at(-1) ?? ''), { piece, hole, say, name });
  }
  const living = livingEntries(read.entries);
  for (const { entry, holds } of rivalTruths(read.upper, living)) {
    const { what, printed, says } = holds;
    const data = { what, printed, says, value: entry.says ?? '' };
    report('two-corrections', placeOfEntry(text, entry.id), data);
  }
  for (const { id, value, was = '', says = '' } of lostTruths(read.upper, living)) {
    report('lost-truth', placeOfEntry(text, id), { what: value, was, says, id });
  }
  checkTorques(job, text, report);
  if (found.length === 0) return read.faults;
  return [...read.faults, ...toFaults(found, text, file)].sort(
    (a, b) => a.line - b.line || a.column - b.column,
  );
}

/** Where an entry's id stands; the end of the file for one that is not there. */
function placeOfEntry(text: string, id: string): number {
  const found = new RegExp(`\\bid: *"?${id.replace(/[^\w-]/g, '')}\\b`).exec(text);
  return found ? found.index : text.length;
}

function checkTorques(job: Job, text: string, report: Report): void {
  const odd = [...job.upper.pieces.values()].flatMap((spec) => oddTorques(spec, job));
  if (odd.length === 0) return;
  const { root } = openYaml(text);
  for (const { path, say, by } of odd) {
    const at = by === null ? placeOf(root, path) : placeOfEntry(text, by);
    report('odd-torque', at, { say });
  }
}

interface Odd {
  path: string[];
  say: string;
  /** Id of the entry that says that this is true, where it is not as printed. */
  by: string | null;
}

function oddTorques(spec: PieceSpec, job: Job): Odd[] {
  const row = spec.row ?? [];
  const threads = new Map(
    row.flatMap(({ kind }) => {
      const { thread = null, class: mark = null } = job.upper.kinds.get(kind) ?? {};
      return thread === null ? [] : [[`${thread} ${mark}`, { thread, mark }] as const];
    }),
  );
  const odd = (torque: Torque | null, path: string[], hole?: string): Odd[] => {
    for (const { thread, mark } of threads.values()) {
      const held = torque?.quantity ? sane(torque.quantity, thread, mark) : null;
      if (held?.verdict !== 'insane' || held.say === null) continue;
      const by = job.corrections.find(
        (c) => c.what === 'torque' && c.piece === spec.key && c.hole === hole,
      );
      return [{ path, say: held.say, by: by?.id ?? null }];
    }
    return [];
  };
  const own = [...spec.holes.values()].flatMap((hole) =>
    odd(hole.torque, ['pieces', spec.key, 'holes', hole.name, 'torque'], hole.name),
  );
  return [...odd(spec.torque, ['pieces', spec.key, 'torque']), ...own];
}

function placeOf(root: Spot | null, path: readonly string[]): number {
  return root ? spotAt(root, path).spot.at : 0;
}
