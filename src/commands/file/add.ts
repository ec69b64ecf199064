/** One line into the job, as what it is: said with --as, else the best guess, which is named with the answer. */
import { sayEntryOf } from '../../job/fold/say-entry.ts';
import { addRow } from '../../model/keys/addable.ts';
import { near } from '../../model/nearword.ts';
import { ADDABLE, type Addable, type Job } from '../../model/types.ts';
import { sentence } from '../../model/words.ts';
import { boughtTyped } from '../../plan/typed/bought.ts';
import { lineIs } from '../../plan/typed/line-is.ts';
import { nowHere } from '../../world.ts';
import { type Call, misuse, optionText } from '../base/command.ts';
import { mark } from '../base/mark.ts';

export async function run(call: Call) {
  const line = call.words[1] ?? '';
  const said = optionText(call, 'as');
  const as = said === undefined ? undefined : ADDABLE.find((a): a is Addable => a === said);
  if (said !== undefined && as === undefined) {
    const close = near(said, ADDABLE);
    const hint = close ? `Did you mean ${close}?` : `There are ${ADDABLE.join(', ')}.`;
    return misuse('no-such-as', `Nothing is added as ${said}. ${hint}`, { as: said });
  }
  const guess = lineIs(line);
  // `tip: top bolt last` said to be a tip is the tip alone.
  const what = as === undefined || as === guess.as ? guess : { as, text: line };
  const piece = optionText(call, 'piece');
  const hole = optionText(call, 'hole');
  const place = {
    ...(piece === undefined ? {} : { piece }),
    ...(hole === undefined ? {} : { hole }),
  };
  const guessed = as === undefined;
  return mark(
    call,
    { do: 'add', ...what, ...place },
    ({ entry, job }) => {
      const note = what.as === 'note' ? `${addRow('note').told}: ` : '';
      const added = entry ? sentence(note + sayEntryOf(entry, job)) : '';
      const lines = [
        added,
        ...(guessed ? [`Taken as ${what.as}; --as says otherwise.`] : []),
        ...(what.as === 'buy'
          ? inItsName(call.words[0] ?? '', job, what.text, nowHere(call.world))
          : []),
      ];
      return lines.join('\n');
    },
    { as: what.as, guessed },
  );
}

/** `gasket, ordered` is its name as it stands: how far it has come is a mark of its own. */
function inItsName(file: string, job: Job, text: string, now: string): string[] {
  const bought = boughtTyped(text, now);
  const key = [...job.upper.buys.values()].findLast((buy) => buy.what === text)?.key;
  if (!bought || key === undefined) return [];
  const { state, promised } = bought;
  const day = promised === null ? '' : ` --promised ${promised}`;
  return [`“${state}” stands in its name. putback buy ${file} ${key} ${state}${day} notes it.`];
}
