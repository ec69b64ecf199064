/** The words and options behind a command's name. */
import { parseArgs } from 'node:util';
import { near } from '../../model/nearword.ts';
import { type Answer, type Call, type Command, misuse } from '../base/command.ts';
import { COMMON } from '../base/common.ts';

export function parseWords(
  command: Command,
  name: string,
  rest: readonly string[],
): Omit<Call, 'world' | 'commands'> | { answer: Answer } {
  const known = { ...command.options, ...COMMON };
  const usage = `putback ${name} ${command.usage}`.trim();
  // Words alone need no reader of options: Node's has to be loaded first.
  const { tokens } = rest.every((word) => word !== '' && !word.startsWith('-'))
    ? { tokens: rest.map((value, index) => ({ kind: 'positional' as const, index, value })) }
    : parseArgs({
        args: [...rest],
        options: Object.fromEntries(
          Object.entries(known).map(([k, o]) => [
            k,
            {
              type: o.value === null ? ('boolean' as const) : ('string' as const),
              ...(o.letter === undefined ? {} : { short: o.letter }),
            },
          ]),
        ),
        allowPositionals: true,
        strict: false,
        tokens: true,
      });
  const words: string[] = [];
  const options: Record<string, string | true> = {};
  let text = -1;
  for (const token of tokens) {
    if (token.kind === 'positional') words.push(token.value);
    if (token.kind !== 'option' || token.index === text) continue;
    const whole = rest[token.index] ?? '';
    if (whole === '-h') {
      options.help = true;
      continue;
    }
    if (!token.rawName.startsWith('--') && isText(whole)) {
      words.push(whole);
      text = token.index;
      continue;
    }
    const option = known[token.name];
    if (!option) {
      const close = near(token.name, Object.keys(known));
      const hint = close ? ` Did you mean --${close}?` : '';
      return { answer: misuse('no-such-option', `${name} has no option ${token.rawName}.${hint}`) };
    }
    if (option.value !== null && token.value === undefined) {
      return { answer: misuse('no-value', `--${token.name} wants ${option.value}.`) };
    }
    if (option.value === null && token.value !== undefined) {
      return { answer: misuse('no-value', `--${token.name} takes no value.`) };
    }
    options[token.name] = token.value ?? true;
  }
  if (!options.help && (words.length < command.words.least || words.length > command.words.most)) {
    return { answer: misuse('usage', `Usage: ${usage}`) };
  }
  return { name, words, options };
}

/** Short options are few and have no figures: a hyphen before a blank or a digit begins a text (`- rust in it`, `-2 mm`). */
function isText(word: string): boolean {
  return /^-[\s\d]|\s/.test(word);
}
