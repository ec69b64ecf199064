/** Takes a mark back; taking back an undo brings the mark back. */
import { sayEntryOf } from '../job/fold/say-entry.ts';
import { sentence } from '../model/words.ts';
import type { Call } from './command.ts';
import { beside, mark } from './mark.ts';

export async function run(call: Call) {
  const id = call.words[1];
  const wish = { do: 'undo', ...(id === undefined ? {} : { id }), ...beside(call) } as const;
  return mark(call, wish, ({ entry, job }) => {
    const was = job.entries.find((e) => e.id === entry?.value);
    const what = was ? sayEntryOf(was, job) : entry?.value;
    return `${sentence(`Taken back: ${what}`)} To have it again: undo ${entry?.id}.`;
  });
}
