/** What was meant by words that are no command, or no right use of one. */
import { near } from '../model/nearword.ts';
import { quoted } from '../model/safe.ts';
import type { World } from '../world.ts';
import { type Answer, type Command, misuse } from './base/command.ts';
import { pathKind } from './base/open-path.ts';

/** A path that the shell cut at its blanks, two paths, a slip. */
export function slipIn(
  words: readonly string[],
  commands: readonly Command[],
  world: World,
): Answer {
  const [name = '', ...rest] = words;
  const whole = words.join(' ');
  if (rest.length > 0 && pathKind(whole, world) !== null)
    return misuse('blanks', `A path with blanks goes in quotes: putback ${quoted(whole)}`);
  if (rest.length > 0 && pathKind(name, world) !== null) {
    const say = `One job or one bench is opened at a time: putback ${quoted(name)}`;
    return misuse('one-path', say);
  }
  const shown = quoted(name);
  if (rest.length === 0 && name.endsWith('.yaml') && !name.startsWith('-'))
    return misuse('no-such-file', `No job file ${shown}. putback new ${shown} starts it.`);
  const close = near(
    name,
    commands.flatMap((c) => c.names),
  );
  const hint = close ? `Did you mean ${close}?` : 'putback --help says what there is.';
  return misuse('no-such-command', `No command and no file ${shown}. ${hint}`);
}

/** The same behind a command that takes a file or folder first; null: it was something else. */
export function pathSlip(
  name: string,
  { usage }: Command,
  rest: readonly string[],
  world: World,
): Answer | null {
  if (!/^\[?(?:FILE|FOLDER)/.test(usage)) return null;
  const [first = ''] = rest;
  const words = rest.findIndex((word) => word.startsWith('-'));
  const plain = words < 0 ? rest : rest.slice(0, words);
  if (pathKind(first, world) === null) {
    for (let n = 2; n <= plain.length; n += 1) {
      const whole = plain.slice(0, n).join(' ');
      if (pathKind(whole, world) === null) continue;
      const line = ['putback', name, quoted(whole), ...rest.slice(n).map(quoted)].join(' ');
      return misuse('blanks', `A path with blanks goes in quotes: ${line}`);
    }
    return null;
  }
  const second = plain[1] ?? '';
  const isPath = /\.ya?ml$/.test(second) || (second !== '' && pathKind(second, world) !== null);
  if (/[ …]/.test(usage) || !isPath) return null;
  const what = usage.includes('FILE') ? 'job' : 'folder';
  return misuse(
    'one-path',
    `${name} takes one ${what} at a time: putback ${name} ${quoted(first)}`,
  );
}
