/** Another letter for a kind, everywhere at once. */
import type { Call } from '../base/command.ts';
import { mark } from '../base/mark.ts';

export async function run(call: Call) {
  const [, kind = '', to = ''] = call.words;
  return mark(
    call,
    { do: 'rename', kind, to },
    ({ entry }) => `${entry?.was} is ${entry?.value} now.`,
  );
}
