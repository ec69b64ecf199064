/** Which text of the file the figure of a pass comes from: the torque of a hole, of the piece, or of the pass itself. */
import type { Job, PassSpec, PieceNow } from '../../model/types.ts';
import { passesOf } from '../../piece/passes.ts';
import { type KnownRow, knownRows } from './rows.ts';

/** Rows of what is known, the one on the wrench first; none where no torque is printed. */
export function torqueRows(
  job: Job,
  piece: PieceNow,
  pass: PassSpec | null,
  hole: string | null,
): KnownRow[] {
  const { spec } = piece;
  const rows = knownRows(job, { piece: spec.key });
  const own = rows.find((r) => r.figure?.what === 'torque' && r.figure.hole === (hole ?? ''));
  const whole = rows.find((r) => r.figure?.what === 'torque' && r.figure.hole === undefined);
  const torque = own ?? whole;
  const index = passesOf(spec, job.upper.kinds).findIndex((p) => p.name === pass?.name);
  const said = spec.passes?.[index]?.torque?.quantity;
  const ofPass = said ? rows.filter((r) => r.figure?.what === 'passes')[index] : undefined;
  // A share of a torque hangs on both; a figure in the pass itself on that alone.
  const all = said?.unit === '%' ? [torque, ofPass] : [ofPass ?? torque];
  return all.filter((row) => row !== undefined);
}
