/** What nobody puts back from memory is photographed before it comes off: one quiet line, once a sitting. */
import { caresOf } from '../../plan/care/care.ts';
import { sortsOf } from '../../plan/tests/disturbed.ts';
import type { At } from '../base/moves.ts';
import type { State } from '../base/state.ts';
import { photosOf } from '../paper/photos.ts';

const SAID = 'photograph';
/** What lies in an order, and lies in it no more once it is touched. */
const ORDERED = /\b(?:shims?|springs?|stacks?|washers?|balls?|rollers?|needles?|clips?)\b/i;

export function namePhotograph(here: At & { state: State }): State {
  const { state, piece, key } = here;
  const mark = `${SAID} ${key} ${piece.round}`;
  if (state.quiet !== null || state.read.includes(mark)) return state;
  const say = photographSaid(here);
  return say === null ? state : { ...state, quiet: say, read: [...state.read, mark] };
}

/** Null where there is nothing to get wrong, where it is away already, and where a photograph is noted. */
function photographSaid({ job, piece }: At): string | null {
  const { spec } = piece;
  if (piece.away === 'removed' || photosOf(job, spec.key).length > 0) return null;
  const sorts = sortsOf(spec);
  const runs = ['cable', 'hose', 'wiring'].some((sort) => sorts.some((s) => s === sort));
  if (runs || spec.routes.length > 0) return 'Photograph how it runs before it comes off.';
  const springs = caresOf(spec).care.includes('spring');
  if (springs || spec.loose.some((thing) => ORDERED.test(thing.text))) {
    return 'Photograph what lies behind it, and in which order, before it is moved.';
  }
  return spec.loose.length > 0 ? 'Photograph where its loose things lie.' : null;
}
