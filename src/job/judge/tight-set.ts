/** What is set in a pass: the figure and the text it comes from, and what it would do to these holes. */
import { fullOf, hardestOf, readStages } from '../../bolt/stages.ts';
import { convert, printQuantity } from '../../bolt/units.ts';
import { aim } from '../../bolt/wrench.ts';
import type {
  HoleNow,
  Job,
  PassSpec,
  PieceNow,
  Quantity,
  Refusal,
  Warning,
} from '../../model/types.ts';
import { passAt } from '../../piece/passes.ts';
import { heldTorque, LOOK_UP, sayBreaks, torqueOf, wouldBreak } from '../fold/against.ts';
import { withPrinted } from '../truth/corrections.ts';
import { refuse } from './parts.ts';

/** The figure of this pass, or what was set, held against each of these holes: the first that it would break. */
export function breaking(
  job: Job,
  piece: PieceNow,
  pass: PassSpec,
  open: readonly HoleNow[],
  set: string | undefined,
): { ok: false; refused: Refusal } | null {
  const { kinds } = job.upper;
  const typed = set === undefined ? null : hardestOf(readStages(set));
  for (const hole of open) {
    const { torque, angle } = passAt(piece.spec, kinds, pass, hole.name);
    // A pass that is not read whole is done as it is printed, with the hardest of its figures.
    const figure = typed ?? torque?.quantity ?? null;
    if (figure === null && (torque === null || angle !== null)) continue;
    const held = heldTorque(piece, hole, kinds, figure);
    if (held && wouldBreak(held)) {
      const { verdict } = held.against;
      return refuse('would-break', `${hole.name}: ${sayBreaks(held)} ${LOOK_UP}`, {
        hole: hole.name,
        verdict,
      });
    }
  }
  return null;
}

/** Somebody gave a reason for this pass on this piece in this round already, and was told what would break. */
export function overruled(job: Job, { spec, round }: PieceNow, pass: PassSpec): boolean {
  return job.entries.some(
    (e) =>
      e.verb === 'tight' &&
      e.piece === spec.key &&
      e.value === pass.name &&
      e.because !== undefined &&
      job.living.has(e.id) &&
      (job.rounds.get(e.id) ?? round) === round,
  );
}

/** The figure of a pass, where all these holes take the same; a hole may have a torque of its own. */
export function figureOf(
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
  const { key } = piece.spec;
  const texts = holes.map((hole) => {
    const { torque, angle } = passAt(piece.spec, job.upper.kinds, pass, hole.name);
    const whole = torqueOf(piece, hole.name);
    if (whole === null || (torque === null && angle === null)) return torque?.text;
    const own = piece.spec.holes.get(hole.name)?.torque ? { hole: hole.name } : {};
    return withPrinted(job, { piece: key, ...own }, 'torque', whole.text);
  });
  return texts.every((text) => text === texts[0]) ? texts[0] : undefined;
}

/** A setting may be off by so much of the printed figure: the steps of a scale (common practice, no source). */
const OFF = 0.1;

/** What was set and could not be read, or is another figure than the one to set. */
export function setSaid(set: string, figure: Quantity | undefined): Warning[] {
  const read = readStages(set);
  const typed = read.rest.length === 0 ? fullOf(read) : null;
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
