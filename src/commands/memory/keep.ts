/** An entry of the diary is worth knowing next time; or what the machine's counter says. */
import type { Call } from '../base/command.ts';
import { beside, mark } from '../base/mark.ts';

export function run(call: Call) {
  const [, word] = call.words;
  if (call.name === 'reading') {
    return mark(call, { do: 'reading', reading: word ?? '', ...beside(call) }, ({ entry }) => {
      return `The machine says ${entry?.value ?? ''}.`;
    });
  }
  return mark(call, { do: 'keep', ...(word === undefined ? {} : { id: word }) }, () => {
    return 'Kept for next time.';
  });
}
