/** The words and options behind a command's name. */
import { parseArgs } from 'node:util';
import { near } from '../../model/nearword.ts';
import { type Answer, type Call, type Command, misuse, type Options } from '../base/command.ts';
import { COMMON } from '../base/common.ts';

export function parseWords(
  command: Command,
  name: string,
  rest: readonly string[],
): Omit<Call, 'world' | 'commands'> | { answer: Answer } {
  const known = { ...command.options, ...COMMON };
  const words: string[] = [];
  const options: Record<string, string | true> = {};
  let text = -1;
  for (const token of tokensOf(rest, known)) {
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
    const odd = oddOption(token, name, known);
    if (odd) return { answer: odd };
    options[token.name] = token.value ?? true;
  }
  const odd = options.help ? null : oddWords(command, name, words);
  return odd ? { answer: odd } : { name, words, options };
}

/** What stands behind the command's name, one by one; what looks like an option of no name is told as that. */
function tokensOf(rest: readonly string[], known: Options) {
  // Words alone need no reader of options: Node's has to be loaded first.
  if (rest.every((word) => word !== '' && !word.startsWith('-')))
    return rest.map((value, index) => ({ kind: 'positional' as const, index, value }));
  const { tokens } = parseArgs({
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
  return tokens;
}

interface OptionToken {
  name: string;
  rawName: string;
  value?: string | undefined;
  inlineValue?: boolean | undefined;
}

function oddOption(token: OptionToken, name: string, known: Options): Answer | null {
  const option = known[token.name];
  if (!option) {
    const close = near(token.name, Object.keys(known));
    const hint = close ? ` Did you mean --${close}?` : '';
    return misuse('no-such-option', `${name} has no option ${token.rawName}.${hint}`);
  }
  if (option.value !== null && !hasValue(token, known))
    return misuse('no-value', `--${token.name} wants ${option.value}.`);
  return option.value === null && token.value !== undefined
    ? misuse('no-value', `--${token.name} takes no value.`)
    : null;
}

/** More words than it takes, or fewer, or an empty one. */
function oddWords(command: Command, name: string, words: readonly string[]): Answer | null {
  const usage = `putback ${name} ${command.usage}`.trim();
  const { least, most } = command.words;
  if (words.length < least || words.length > most) return misuse('usage', `Usage: ${usage}`);
  const empty = emptyWord(command.usage, words);
  if (empty < 0) return null;
  const which =
    words.length === 1 ? `What stands behind ${name}` : `Word ${empty + 1} behind ${name}`;
  return misuse('empty', `${which} is empty. Usage: ${usage}`);
}

/** `--` ends the options, and an option is no value: a text that looks like one takes `--because=--json`. */
function hasValue({ value, inlineValue }: OptionToken, known: Options): boolean {
  if (value === undefined || inlineValue) return value !== undefined;
  return value !== '--' && !(value.startsWith('--') && value.slice(2) in known);
}

/** Usages that end with a text or a figure: of an empty one its command says what is wanted there. */
const TEXT_LAST = ['TEXT', 'WORDS…', 'THINGS', 'FIGURE', 'FIGURE]'];

/** Which word is empty where something is named: a file, a folder, a piece; -1 for none. */
function emptyWord(usage: string, words: readonly string[]): number {
  const named = usage.endsWith('…') || usage.endsWith('…]') ? Infinity : usage.split(' ').length;
  const last = TEXT_LAST.some((end) => usage.endsWith(end)) ? words.length - 1 : Infinity;
  return words.findIndex((word, at) => word === '' && at < named && at < last);
}

/** Short options are few and have no figures: a hyphen before a blank or a digit begins a text (`- rust in it`, `-2 mm`). */
function isText(word: string): boolean {
  return /^-[\s\d]|\s/.test(word);
}
