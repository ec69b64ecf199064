/** Another letter for a kind, everywhere at once. */
import type { Call } from './command.ts';
import { mark } from './mark.ts';

export async function run(call: Call) {
  const [, kind = '', to = ''] = call.words;
  return mark(
    call,
    { do: 'rename', kind, to },
    ({ entry }) => `${entry?.was} is ${entry?.value} now.`,
  );
}
