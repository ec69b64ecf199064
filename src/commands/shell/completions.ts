/** The script of a shell; with words behind it, what can stand at the last of them. */
import { near } from '../../model/nearword.ts';
import { safeLine } from '../../model/safe.ts';
import { answer, type Call, misuse } from '../base/command.ts';
import { candidates } from './complete.ts';
import { SCRIPTS, SHELLS } from './shells.ts';

export function run({ words, commands, world }: Call) {
  const [said = '', ...typed] = words;
  const shell = SHELLS.find((s) => s === said);
  if (!shell) {
    const close = near(said, SHELLS);
    const hint = close ? `Did you mean ${close}?` : `There are ${SHELLS.join(', ')}.`;
    return misuse('no-such-shell', `No completions for ${said}. ${hint}`);
  }
  if (typed.length === 0) return answer({ script: SCRIPTS[shell] }, SCRIPTS[shell]);
  const found = candidates(typed, commands, world);
  const lines = found.map(({ word, say }) => (say === '' ? word : `${word} -- ${safeLine(say)}`));
  return answer({ found }, lines.join('\n'));
}
