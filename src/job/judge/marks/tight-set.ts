/** What is set in a pass: the figure and the text it comes from, and what it would do to these holes. */

import { convert, printQuantity } from '../../../bolt/read/units.ts';
import { fullOf, hardestOf, readStages } from '../../../bolt/torque/stages.ts';
import { aim } from '../../../bolt/torque/wrench.ts';
import type { HoleNow, Job, PassSpec, PieceNow, Quantity, Warning } from '../../../model/types.ts';
import { passAt } from '../../../piece/passes.ts';
import {
  type HeldTorque,
  heldTorque,
  LOOK_UP,
  sayBreaks,
  torqueOf,
  wouldBreak,
} from '../../fold/against.ts';
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

/** A setting may be off by so much of the printed figure: the steps of a scale (common practice, no source). */
const OFF = 0.1;

/** The torque that a text says, all of it read; null: it says none. */
function torqueIn(set: string) {
  const read = readStages(set);
  return read.rest.length === 0 ? fullOf(read) : null;
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
  const value = figure && convert(aim(typed), typed.unit, figure.unit);
  if (!figure || value == null) return [];
  const [low, high] = [figure.value * (1 - OFF), (figure.to ?? figure.value) * (1 + OFF)];
  return value >= low && value <= high
    ? []
    : [
        {
          code: 'other-figure',
          say: `${set} was set; ${printQuantity(figure)} is to be set here.`,
        },
      ];
}
