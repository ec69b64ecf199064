/** What is wrong with a hole or its bolt, or that it is mended. */
import { near } from '../job/nearword.ts';
import { HOLE_STATES, type HoleSays } from '../job/types.ts';
import { type Call, misuse } from './command.ts';
import { beside, mark } from './mark.ts';

export async function run(call: Call) {
  const [, piece = '', hole = '', state = ''] = call.words;
  const known = HOLE_STATES.find((s): s is HoleSays => s === state);
  if (!known) {
    const close = near(state, HOLE_STATES);
    const hint = close ? `Did you mean ${close}?` : `There are ${HOLE_STATES.join(', ')}.`;
    return misuse('no-such-state', `No state ${state}. ${hint}`);
  }
  return mark(call, { do: 'state', piece, hole, state: known, ...beside(call) }, ({ job }) => {
    const name = job.pieces.get(piece)?.spec.name;
    return `${name}, ${hole}: ${known}.`;
  });
}
