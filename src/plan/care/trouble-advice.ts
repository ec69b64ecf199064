/**
 * What to do now about a bolt or hole in trouble, by what its piece is: what frees a stuck bolt elsewhere (oil, heat) takes
 * a brake away or sets fuel alight, and what keeps somebody alive is not drilled by a list. Common practice of the
 * trade, no source: the maker's manual, local rules and licensed mechanics go first.
 */
import type { RepairStep } from '../../bolt/fit/repair.ts';
import { repair } from '../../bolt/fit/repair.ts';
import { placeOf } from '../../job/fold/place.ts';
import { safetySaid } from '../../model/states/cares.ts';
import { troubleOf } from '../../model/states/troubles.ts';
import type { Care, HoleNow, Kind, PieceNow, PieceSpec, Trouble } from '../../model/types.ts';
import { list } from '../../model/words.ts';
import { CARES, caresOf } from './care.ts';

/** Beside such a piece a stuck bolt is not soaked or heated as elsewhere: why not. Null: it is freed as anywhere. */
const UNSOAKED: Readonly<Record<Care, string | null>> = {
  head: null,
  case: null,
  cap: null,
  brake:
    'Brakes: oil on disc, pad or lining takes the brake away, and a lining that had it is renewed. Heat boils the fluid and cooks seals and hose.',
  steering:
    'Steering: heat takes its hardness out and nobody sees it. A part that was heated is renewed.',
  structure: 'It carries weight: heat takes its strength out, and nobody sees it.',
  wheel:
    'A wheel: no oil on brake or tyre. Heat ruins tyre, bearing and seal, and a hot wheel cracks or loses its shape.',
  suspension:
    'Suspension: a damper holds oil and gas under pressure, and bursts when heated; a heated spring or arm breaks later.',
  spring: 'A spring: heat takes its temper out.',
  fuel: 'Fuel: no flame, no hot air, no drill and no grinder: one spark is enough.',
  battery: 'A battery: its gas burns. No flame, no spark, no oil over its poles.',
  mains:
    'Mains: no oil into what carries current, no flame at its insulation; dead before a tool goes near.',
  blade: 'A blade: heat takes its hardness out, and it breaks.',
  lift: 'It lifts or holds up: heat takes its strength out, and what is under pressure bursts.',
  airbag:
    'An airbag: heat, a blow or a spark sets it off. It is left to those who are licensed for it.',
};

/** What one does instead. */
const COLD = 'A tight six-point socket and a steady pull, and a new bolt afterwards.';
const LICENSED = 'If it does not come by that, it is one for a licensed mechanic.';

/** The first sentence is said at once, the rest on the page of what to do. */
export function adviceOf(spec: PieceSpec, trouble: Trouble): readonly string[] {
  const { advice, bolt } = troubleOf(trouble);
  if (bolt !== 'in') return advice;
  const { care } = caresOf(spec);
  const why = care.flatMap((c) => UNSOAKED[c] ?? []);
  if (why.length === 0) return advice;
  const licensed = care.some((c) => CARES[c].licensed);
  return [
    'Leave it for now: no penetrating oil and no heat here. Go on with the others.',
    ...why,
    licensed ? `${COLD} ${LICENSED}` : COLD,
  ];
}

/** What it keeps, where nobody mends its thread by a list: `the brakes`; null where that may be tried. */
export function notByList(spec: PieceSpec): string | null {
  const keeps = caresOf(spec).care.flatMap((c) => (CARES[c].licensed ? (safetySaid(c) ?? []) : []));
  return keeps.length === 0 ? null : list(keeps);
}

/** The ways out of a pulled thread, in their order. */
export function waysOut(
  piece: PieceNow,
  hole: HoleNow,
  kinds: ReadonlyMap<string, Kind>,
): readonly RepairStep[] {
  const keeps = notByList(piece.spec);
  if (keeps === null) return repair({ place: placeOf(piece, hole, kinds) });
  return [
    {
      do: `It keeps ${keeps}: not by this list. A new part, or a licensed mechanic.`,
      why: 'The maker alone says whether such a thread may be mended at all.',
    },
    {
      do: 'Do not use the machine until that is done.',
      why: 'Thread locker, tape or a tighter turn hold nothing here.',
    },
  ];
}
