/**
 * What can hurt somebody at a step, beside what the file itself says. Common practice of the trade, no source: the
 * maker's manual, local rules and licensed mechanics go first, and the screens say so.
 */
import { MAKER_FIRST } from '../bolt/cautions.ts';
import type { Care, PieceSpec, TaskSpec } from '../model/types.ts';
import { sortsOf } from './disturbed.ts';
import { letOut } from './fluids.ts';

export interface Caution {
  /** Read once for each key, piece and round. */
  key: string;
  say: string;
}

const BY_CARE: Readonly<Record<Care, string>> = {
  head: 'Only cold, and only in the maker’s order: a head warps.',
  case: 'Only in the maker’s order: a case cracks or leaks where it is pulled down askew.',
  cap: 'Each cap in its own place and the same way round, in the maker’s order.',
  brake: 'Brakes: keep fluid off paint and skin. Nothing moves before the lever is firm again.',
  steering:
    'Steering: what is let go here keeps the rider upright. A licensed mechanic looks at it.',
  structure: 'It carries weight: hold the machine up by a stand or straps before a bolt is out.',
  spring:
    'A spring pushes behind it: half a turn each, all round, and never a face in front of it.',
};
const FUEL: Caution = {
  key: 'fuel',
  say: 'Fuel: no flame, no spark, no smoking; air through the room; a closed can for what runs out.',
};

/** Of what keeps somebody alive: whose word goes before anything that is said here. */
const MAKER: Caution = { key: 'maker', say: `${MAKER_FIRST} Local rules go before both.` };
const LICENSED: readonly Care[] = ['brake', 'steering', 'structure'];

/** For a piece that comes off or goes on: the file's own first. */
export function cautionsFor(spec: PieceSpec, way: 'off' | 'on'): Caution[] {
  const own = (way === 'off' ? spec.caution.removal : spec.caution.fitting).map(
    (say, i): Caution => ({ key: `caution-${i + 1}`, say }),
  );
  const care = spec.care === null ? [] : [{ key: spec.care, say: BY_CARE[spec.care] }];
  const maker = spec.care !== null && LICENSED.includes(spec.care) ? [MAKER] : [];
  return [...own, ...care, ...(sortsOf(spec).includes('fuel') ? [FUEL] : []), ...maker];
}

const HOT: Caution = {
  key: 'hot',
  say: 'What runs out may be hot: let it cool, wear gloves, catch all of it.',
};
const RAISED: Caution = {
  key: 'raised',
  say: 'Raised: on stands, never on a jack alone; rocked by hand before anybody reaches under it.',
};

/** For a task, by its words. */
export function cautionsForTask({ say }: TaskSpec): Caution[] {
  const out = letOut(say);
  // A tap that is opened to look for drops wets as well as one that is drained.
  const fuel = /\b(?:fuel|petrol|gasoline|diesel)\b/i.test(say);
  return [
    ...(out !== null && !fuel ? [HOT] : []),
    ...(fuel ? [FUEL] : []),
    ...(/\b(?:raise|jack|lift|hoist)\b/i.test(say) ? [RAISED] : []),
  ];
}

/** Before an engine runs. */
export const RUNNING: readonly Caution[] = [
  {
    key: 'air',
    say: 'An engine outdoors, or its exhaust led out: it kills in a closed room.',
  },
  {
    key: 'stand',
    say: 'It stands firm, in neutral, and nothing that is driven touches the floor.',
  },
  { key: 'near', say: 'Nothing is near what turns: hands, sleeves, hair, rags, tools, cables.' },
];
