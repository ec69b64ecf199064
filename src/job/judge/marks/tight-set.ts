/** What is set in a pass: the figure and the text it comes from, and what it would do to these holes. */

import { printQuantity } from '../../../bolt/read/units.ts';
import { hardestOf, readStages } from '../../../bolt/torque/stages.ts';
import type { HoleNow, Job, PassSpec, PieceNow, Quantity, Warning } from '../../../model/types.ts';
import { passAt } from '../../../piece/passes.ts';
import { type HeldTorque, heldTorque, LOOK_UP, sayBreaks, wouldBreak } from '../../fold/against.ts';
import { torqueOf } from '../../fold/once.ts';
import { isOff, mendOf, otherThread, torqueIn } from '../../fold/other-figure.ts';
import { inWords } from '../../truth/said.ts';
import { type Refused, refuse } from '../base/verdict.ts';

/** The figure of this pass, or what was set, held against each of these holes: what it would break. */
export function breaking(
  job: Job,
  piece: PieceNow,
  pass: PassSpec,
  open: readonly HoleNow[],
  set: string | undefined,
): { hole: HoleNow; held: HeldTorque }[] {
  const { kinds } = job.upper;
  const typed = set === undefined ? null : hardestOf(readStages(set));
  return open.flatMap((hole) => {
    const { torque, angle } = passAt(piece.spec, kinds, pass, hole.name);
    // A pass that is not read whole is done as it is printed, with the hardest of its figures.
    const figure = typed ?? torque?.quantity ?? null;
    if (figure === null && (torque === null || angle !== null)) return [];
    const held = heldTorque(piece, hole, kinds, figure);
    return held && wouldBreak(held) ? [{ hole, held }] : [];
  });
}

export type Breaking = ReturnType<typeof breaking>;

export function sayBreaking([first]: Breaking): string {
  return first ? `${first.hole.name}: ${sayBreaks(first.held)} ${LOOK_UP}` : '';
}

/** STOP for the first of which nobody gave a reason, for this figure in this pass and round; null where all have one. */
export function stopsBreaking(job: Job, piece: PieceNow, pass: PassSpec, found: Breaking) {
  if (found.length === 0) return null;
  const said = overruled(job, piece, pass);
  const left = found.filter(({ hole }) => !said.has(printedFor(job, piece, pass, [hole])));
  const [first] = left;
  if (!first) return null;
  const data = { hole: first.hole.name, verdict: first.held.against.verdict };
  return refuse('would-break', sayBreaking(left), data);
}

/** The printed torques of which somebody was told what they would break, and gave a reason. */
function overruled(job: Job, piece: PieceNow, pass: PassSpec): Set<string | undefined> {
  const { spec, round } = piece;
  // Once more round is at the same torque.
  const names = pass.name === 'final' ? ['full', 'final'] : [pass.name];
  const reasons = job.entries.filter(
    (e) =>
      e.verb === 'tight' &&
      e.piece === spec.key &&
      names.includes(e.value) &&
      e.because !== undefined &&
      job.living.has(e.id) &&
      (job.rounds.get(e.id) ?? round) === round,
  );
  const at = new Set(reasons.flatMap((e) => e.hole ?? piece.holes.map((h) => h.name)));
  const holes = piece.holes.filter((h) => at.has(h.name));
  return new Set(holes.map((hole) => printedFor(job, piece, pass, [hole])));
}

/** The figure of a pass, where all these holes take the same; a hole may have a torque of its own. */
export function figureOfPass(
  job: Job,
  { spec }: PieceNow,
  pass: PassSpec,
  holes: readonly HoleNow[],
): Quantity | undefined {
  const figures = holes.map(
    (hole) => passAt(spec, job.upper.kinds, pass, hole.name).torque?.quantity ?? undefined,
  );
  const [first, ...rest] = figures;
  const same = (q: Quantity | undefined) => q && first && printQuantity(q) === printQuantity(first);
  return rest.every((q) => q === first || same(q)) ? first : undefined;
}

/** The text that the figure comes from, as it is printed; of a turn by angle too. Undefined where they differ. */
export function printedFor(
  job: Job,
  piece: PieceNow,
  pass: PassSpec,
  holes: readonly HoleNow[],
): string | undefined {
  const texts = holes.map((hole) => {
    const { torque, angle } = passAt(piece.spec, job.upper.kinds, pass, hole.name);
    const whole = torqueOf(piece, hole.name);
    if (whole === null || (torque === null && angle === null)) return torque?.text;
    return inWords([whole]);
  });
  return texts.every((text) => text === texts[0]) ? texts[0] : undefined;
}

/** A figure that is no torque is asked about; null: it is one, or words that nobody takes for a figure. */
export function asksUnread(set: string | undefined): Refused | null {
  if (set === undefined || !/\d/.test(set) || torqueIn(set)) return null;
  return refuse('unread-set', `“${set}” is no torque. Give it with its unit, like 10 N·m.`);
}

/** What was set and could not be read, or is another figure than the one to set. */
export function setSaid(set: string, figure: Quantity | undefined): Warning[] {
  const typed = torqueIn(set);
  if (!typed) {
    return [
      { code: 'unread-set', say: `“${set}” was not read as a torque: nothing is held against it.` },
    ];
  }
  if (!figure || !isOff(set, figure)) return [];
  const say = `${set} was set; ${printQuantity(figure)} is to be set here.`;
  return [{ code: 'other-figure', say }];
}

/**
 * Holes that were mended to another size, in a pass with a figure: that is printed for the old one. Asked until somebody says
 * what is set, or why it holds for these too; null where nothing is to be asked.
 */
export function asksOtherThread(
  job: Job,
  piece: PieceNow,
  pass: PassSpec,
  open: readonly HoleNow[],
  set: string | undefined,
): Refused | null {
  if (set !== undefined) return null;
  const asked = open.flatMap((hole) => {
    const other = passAt(piece.spec, job.upper.kinds, pass, hole.name).torque?.quantity
      ? otherThread(job, piece, hole)
      : null;
    return other === null || isAnswered(job, piece, hole) ? [] : [{ hole, ...other }];
  });
  const [first] = asked;
  if (!first) return null;
  const { hole, of, printedFor: bolt } = first;
  const text = printedFor(job, piece, pass, [hole]) ?? '';
  const say = `${hole.name} was mended to ${of}, and ${text} is printed for ${bolt}. Look up what ${of} takes in this metal, and say what is set.`;
  return refuse('other-thread', say, { holes: asked.map((a) => a.hole.name) });
}

/** Since its mend somebody set a figure for it alone, or gave a reason. */
function isAnswered(job: Job, { spec }: PieceNow, hole: HoleNow): boolean {
  const at = job.entries.findIndex((e) => e.id === mendOf(job, spec.key, hole)?.id);
  return job.entries.some(
    (e, i) =>
      i > at &&
      e.verb === 'tight' &&
      e.piece === spec.key &&
      e.because !== undefined &&
      (e.hole === undefined || e.hole.includes(hole.name)) &&
      job.living.has(e.id),
  );
}
