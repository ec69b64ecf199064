/** The script of a shell; with words behind it, what can stand at the last of them. */
import { near } from '../../model/nearword.ts';
import { safeLine } from '../../model/safe.ts';
import { answer, type Call, misuse, optionText } from '../base/command.ts';
import { anyFile, candidates } from './complete.ts';
import { SCRIPTS, SHELLS } from './shells.ts';
import { readTypedLine } from './typed-line.ts';

export function run(call: Call) {
  const { words, commands, world } = call;
  const [said = '', ...typed] = words;
  const shell = SHELLS.find((s) => s === said);
  if (!shell) {
    const close = near(said, SHELLS);
    const hint = close ? `Did you mean ${close}?` : `There are ${SHELLS.join(', ')}.`;
    return misuse('no-such-shell', `No completions for ${said}. ${hint}`);
  }
  const line = optionText(call, 'line');
  if (typed.length === 0 && line === undefined)
    return answer({ script: SCRIPTS[shell] }, SCRIPTS[shell]);
  const read =
    line === undefined ? { words: typed, kept: '', redirected: false } : readTypedLine(line, shell);
  const last = read.words.at(-1) ?? '';
  const found = read.redirected
    ? anyFile(last, commands, world)
    : candidates(read.words, commands, world);
  const shown = found.filter(({ word }) => safeLine(word) === word);
  const lines = shown.map(({ word, say }) => {
    const left = word.slice(read.kept.length);
    return say === '' ? left : `${left}\t${safeLine(say)}`;
  });
  // Byte for byte: a tab stands between a word and what it means.
  return { ...answer({ found: shown }, ''), exact: lines.map((l) => `${l}\n`).join('') };
}
