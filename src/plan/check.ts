/** All that is wrong with a job file, and with its order: what `putback check` tells. */
import { checkTree } from '../job/check.ts';
import type { Report } from '../job/faults/faults.ts';
import { livingAt } from '../job/fold/living-of.ts';
import { hasNoFigure } from '../job/fold/no-figure.ts';
import { type ReadTree, readWithTree } from '../job/read.ts';
import { spotAt } from '../job/yaml/spot.ts';
import type { Entry, Fault, Job, PieceNow } from '../model/types.ts';
import { list } from '../model/words.ts';
import { holeNames } from '../piece/order.ts';
import { caresOf } from './care/care.ts';
import { circlesOf } from './order/relations.ts';
import { jointOf } from './seal/joint.ts';
import { notCounted } from './time/due.ts';
import { checkTrace } from './trace/check-trace.ts';

/** Faults of a text, by line and column; never throws. `file` is only named in them. The file is read once. */
export function checkAll(text: string, file: string): Fault[] {
  return checkTree(readWithTree(text, file), file, (tree, report, job) => {
    checkTrace(tree.read.upper, tree.root, report);
    checkCircles(tree, report);
    checkCares(tree, report);
    checkTorques(tree, report);
    checkNeverOut(job, tree.root, report);
    checkWhens(tree, report);
    checkCures(tree, report);
  });
}

/** A circle among pieces alone is told where the pieces are read. */
function checkCircles({ read: { upper }, root }: ReadTree, report: Report): void {
  for (const { steps, keys } of circlesOf(upper)) {
    const task = keys.find((key) => upper.tasks.has(key));
    if (task === undefined) continue;
    const at = root ? spotAt(root, ['tasks', task]).key : 0;
    report('circle-steps', at, { value: [...steps, steps[0] ?? ''].join(' → ') });
  }
}

/** Days and distances that nothing counts. */
function checkWhens({ read: { upper }, root }: ReadTree, report: Report): void {
  for (const { key, when } of upper.tasks.values()) {
    const value = notCounted(when?.text ?? null);
    if (value === null) continue;
    const at = root ? spotAt(root, ['tasks', key, 'when']).spot.at : 0;
    report('odd-when', at, { value, like: 'next day, after 50 km, in 6 months' });
  }
}

/** A joint that cures, of which no time was read. */
function checkCures({ read: { upper }, root }: ReadTree, report: Report): void {
  for (const { key, joint } of upper.pieces.values()) {
    const value = jointOf({ joint }).untimed;
    if (value === null) continue;
    const at = root ? spotAt(root, ['pieces', key, 'joint']).spot.at : 0;
    report('unread-cure', at, { value });
  }
}

/** What is dangerous about a piece by its name alone. */
function checkCares({ read: { upper }, root }: ReadTree, report: Report): void {
  for (const spec of upper.pieces.values()) {
    const { care, guessed: names } = caresOf(spec);
    if (names.length === 0) continue;
    const at = root ? spotAt(root, ['pieces', spec.key]).key : 0;
    const said = (words: readonly string[]) =>
      `care: ${words.length === 1 ? words[0] : `[${words.join(', ')}]`}`;
    const own = care.filter((c) => !names.includes(c));
    const data = {
      name: spec.name,
      what: list(names),
      like: said(care),
      without: said([...own, 'none']),
    };
    report('guessed-care', at, data);
  }
}

/**
 * Bolts that were tightened by no figure, on what can hurt somebody or wants the maker's order. A plain cover may do
 * without, and until a bolt is tightened the figure is merely missing.
 */
function checkTorques({ read: { upper, entries }, root }: ReadTree, report: Report): void {
  const tightened = new Set(entries.flatMap((e) => (e.verb === 'tight' ? [e.piece] : [])));
  for (const spec of upper.pieces.values()) {
    if (!tightened.has(spec.key)) continue;
    const { care } = caresOf(spec);
    const unknown = (hole: string) => hasNoFigure(spec, upper.kinds, hole);
    if (care.length === 0 || !holeNames(spec).some(unknown)) continue;
    const at = root ? spotAt(root, ['pieces', spec.key]).key : 0;
    report('no-torque', at, { name: spec.name, what: list(care) });
  }
}

/**
 * Holes of a piece that was off with all its bolts out, of which no mark of that round says that theirs came out: such a
 * hole was added to the row since, and is neither untouched nor tight.
 */
function checkNeverOut(job: Job, root: ReadTree['root'], report: Report): void {
  for (const piece of job.pieces.values()) {
    const { key, name } = piece.spec;
    const marks = livingAt(job, key).filter(
      (e) => (job.rounds.get(e.id) ?? piece.round) === piece.round,
    );
    const removed = marks.findLast((e) => e.verb === 'removed' && e.value === 'all');
    if (!removed || removed.because !== undefined) continue;
    const out = new Set(marks.filter((e) => e.verb === 'out').flatMap((e) => namedIn(piece, e)));
    const never = piece.holes.map((h) => h.name).filter((hole) => !out.has(hole));
    if (out.size === 0 || never.length === 0) continue;
    const at = root ? spotAt(root, ['pieces', key, 'bolts']).spot.at : 0;
    report('never-out', at, { name, hole: list(never) });
  }
}

/** The holes that a mark of bolts is about; a row without holes is about as many as it has words. */
function namedIn({ holes }: PieceNow, { hole, value }: Entry): string[] {
  const words = value.trim().split(/\s+/);
  return hole ?? holes.map((h) => h.name).slice(0, words.length > 1 ? words.length : undefined);
}
