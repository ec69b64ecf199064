/** What is wrong with a hole or its bolt, or that it is mended. */

import { near } from '../../model/nearword.ts';
import { troubleOf } from '../../model/states/troubles.ts';
import { HOLE_STATES, type HoleSays } from '../../model/types.ts';
import { adviceOf, waysOut } from '../../plan/care/trouble-advice.ts';
import { type Call, misuse } from '../base/command.ts';
import { beside, mark } from '../base/mark.ts';

export async function run(call: Call) {
  const [, piece = '', hole = '', state = ''] = call.words;
  const known = HOLE_STATES.find((s): s is HoleSays => s === state);
  if (!known) {
    const close = near(state, HOLE_STATES);
    const hint = close ? `Did you mean ${close}?` : `There are ${HOLE_STATES.join(', ')}.`;
    return misuse('no-such-state', `No state ${state}. ${hint}`);
  }
  return mark(call, { do: 'state', piece, hole, state: known, ...beside(call) }, ({ job }) => {
    const now = job.pieces.get(piece);
    const lines = [`${now?.spec.name}, ${hole}: ${known}.`];
    // What is said at once of any other piece may be wrong of this one.
    const trouble = known === 'mended' ? null : known;
    if (now && trouble) {
      const said = adviceOf(now.spec, trouble);
      if (said !== troubleOf(trouble).advice) lines.push(...said);
    }
    const pulled = known === 'pulled' ? now?.holes.find((h) => h.name === hole) : undefined;
    if (now && pulled) {
      for (const step of waysOut(now, pulled, job.upper.kinds)) {
        lines.push(`  [ ] ${step.do}${step.why === null ? '' : ` ${step.why}`}`);
      }
    }
    return lines.join('\n');
  });
}
