/** Kinds of this job whose threads start in each other's holes: said once a sitting, where one says what is in the hand. */
import { lookAlikes } from '../../bolt/thread/lookalikes.ts';
import { threadOf } from '../../bolt/thread/threads.ts';
import { kindsIn } from '../../job/fold/fit-of.ts';
import type { At } from '../base/moves.ts';
import type { State } from '../base/state.ts';
import { list } from '../kit/words.ts';

const TOLD = 'look-alike threads';

export function nameAlikes(here: At & { state: State }): State {
  const { state } = here;
  if (state.quiet !== null || state.read.includes(TOLD)) return state;
  const said = alikes(here);
  return said === null ? state : { ...state, quiet: said, read: [...state.read, TOLD] };
}

/** Pairs of the whole job of which one belongs in this piece: the other may lie on the same bench. */
function alikes({ job, piece }: At): string | null {
  const { kinds } = job.upper;
  const mine = kindsIn(piece).map((k) => threadOf(kinds.get(k)?.thread ?? null)?.name);
  const pairs = lookAlikes([...kinds.values()].flatMap((k) => k.thread ?? []));
  const [first, ...more] = pairs.filter((p) => mine.includes(p.a) || mine.includes(p.b));
  if (!first) return null;
  const others = more.map((m) => `${m.a} and ${m.b}`);
  return `${first.why}${others.length === 0 ? '' : ` Alike too: ${list(others)}.`}`;
}
