/** A note on the job, on a piece, or on a hole. */
import type { Call } from '../base/command.ts';
import { mark } from '../base/mark.ts';

export async function run(call: Call) {
  const text = call.words.at(-1) ?? '';
  const [piece, hole] = call.words.slice(1, -1);
  const place = {
    ...(piece === undefined ? {} : { piece }),
    ...(hole === undefined ? {} : { hole }),
  };
  return mark(call, { do: 'note', text, ...place }, () => 'Noted.');
}
