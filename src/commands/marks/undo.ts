/** Takes a mark back; taking back an undo brings the mark back. */
import { sayEntryOf } from '../../job/fold/say-entry.ts';
import { sentence } from '../../model/words.ts';
import type { Answer, Call } from '../base/command.ts';
import { beside, mark } from '../base/mark.ts';

export async function run(call: Call): Promise<Answer> {
  const [file = '', id] = call.words;
  const wish = { do: 'undo', ...(id === undefined ? {} : { id }), ...beside(call) } as const;
  const made = await mark(call, wish, ({ entry, job }) => {
    const was = job.entries.find((e) => e.id === entry?.value);
    const along = job.entries.filter((e) => e.came === was?.id && !job.living.has(e.id));
    const said = was && [was, ...along].map((e) => sayEntryOf(e, job)).join('; ');
    const what = said ?? entry?.value;
    return `${sentence(`Taken back: ${what}`)} To have it again: undo ${entry?.id}.`;
  });
  const again = made.json.refused as { code: string; piece: string; from: string } | undefined;
  if (again?.code !== 'take-again') return made;
  // What was taken over is in no diary: it is taken from where it came from.
  const { run: last } = await import('../memory/last.ts');
  const options = { ...call.options, take: true as const, from: again.from };
  return last({ ...call, name: 'last', words: [file, again.piece], options });
}
