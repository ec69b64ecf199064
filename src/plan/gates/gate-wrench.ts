/** What a gate asks of the wrench, with what to set on the wrenches of this bench. */
import type { Wrench } from '../../bolt/torque/wrench.ts';
import type { Job, PieceNow } from '../../model/types.ts';
import { capital } from '../../model/words.ts';
import { piecePasses } from '../../piece/passes.ts';
import { onWrench } from '../piece/on-wrench.ts';
import type { ItemInWords } from './items.ts';

/** `Wrench set for 95 lbf·in. Set 10.7 on the small wrench.`: the figure of the first pass that has one. */
export function onThisWrench(
  item: ItemInWords,
  job: Job,
  piece: PieceNow | null,
  wrenches: readonly Wrench[],
): ItemInWords {
  if (item.key !== 'wrench' || piece === null) return item;
  const passes = piecePasses(piece.spec, job.upper.kinds).filter((p) => p.after === null);
  const first = passes.find((p) => p.torque?.quantity)?.torque?.quantity;
  if (!first) return item;
  const { converted, set, off } = onWrench(first, wrenches);
  const said = [converted, set, off].filter((t) => t !== null).map(capital);
  return { ...item, say: [item.say, ...said.map((t) => t.replace(/[.]?$/, '.'))].join(' ') };
}
