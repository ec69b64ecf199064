/** Puts a text into a key of a piece: how it runs, what it lies under, its picture. */

import { sayEntryOf } from '../../job/fold/say-entry.ts';
import { near } from '../../model/nearword.ts';
import { WRITABLE, type Writable } from '../../model/types.ts';
import { type Call, misuse } from '../base/command.ts';
import { mark } from '../base/mark.ts';
import { slipOfPiece } from '../base/new-piece.ts';

export async function run(call: Call) {
  const [, piece = '', key = '', said = ''] = call.words;
  const known = WRITABLE.find((k): k is Writable => k === key);
  if (!known) {
    const close = near(key, WRITABLE);
    const hint = close ? `Did you mean ${close}?` : `There are ${WRITABLE.join(', ')}.`;
    return misuse('no-such-key', `${key} is no key that a text can be written to. ${hint}`, {
      key,
    });
  }
  // Only these bring a piece along.
  const slip = known === 'map' || known === 'bolts' ? slipOfPiece(call, piece) : null;
  if (slip) return slip;
  // On a command line a picture's lines may stand behind one another.
  const text = known === 'map' ? said.replace(/ *(?:^|\s)\/(?:\s|$) */g, '\n') : said;
  return mark(call, { do: 'write', piece, key: known, text }, ({ entry, job }) =>
    entry ? `${sayEntryOf(entry, job)}.` : '',
  );
}
