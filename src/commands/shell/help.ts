/** Help, made from the table of commands; it comes in, so that a command may show it. */
import { ended } from '../../model/safe.ts';
import { VERSION } from '../../version.ts';
import type { Command, Options } from '../base/command.ts';
import { COMMON, SCREEN_LOOKS } from '../base/common.ts';

const EXITS = '0 done or already so; 1 the answer is no; 2 wrong use; 3 not saved.';
const MAKER = "The maker's manual, local rules and licensed mechanics go first.";
const ABOUT = [
  'Keeps a plain text file for each repair: every piece with its holes, what came out of each and what went',
  'back. Without a command it opens the screens on a job file or on a folder of them; the list of keys is',
  'behind ? there. With --lines, or where INK_SCREEN_READER is set, they are read out as plain lines, also',
  'from a pipe of keys; with --ascii they keep to 7-bit characters; NO_COLOR takes the colours away.',
  'A job file is YAML; putback schema describes it for editors.',
  MAKER,
];

const SCREENS = '[--lines] [--ascii] [FILE|FOLDER]';
/** Options that no command takes. */
const ALONE: Options = {
  ...SCREEN_LOOKS,
  version: { value: null, say: 'which putback this is', letter: 'V' },
  help: { value: null, say: 'what there is', letter: 'h' },
};
/** What of the surroundings is heeded. */
const ENVIRONMENT: readonly (readonly [string, string])[] = [
  ['NO_COLOR', 'no colours'],
  ['INK_SCREEN_READER', 'the screens as plain lines, as with --lines'],
  ['LC_ALL, LC_CTYPE, LANG', 'where they name no UTF-8 the screens are in plain characters'],
  ['XDG_CONFIG_HOME', 'where your own settings lie; otherwise ~/.config'],
  ['XDG_STATE_HOME', 'where half-typed texts outlive the program; otherwise ~/.local/state'],
  ['XDG_CACHE_HOME', 'where what makes a start quick is kept; otherwise ~/.cache'],
];
const FILES: readonly (readonly [string, string])[] = [
  ['bench.yaml', 'the settings of a bench, beside its jobs or above them'],
  ['~/.config/putback/settings.yaml', 'your own: colours, presses of keys, paper, other benches'],
  ['.putback', 'beside the jobs, for a lock and an index; it may be thrown away'],
];

export function help(commands: readonly Command[]): string {
  const rows: [string, string][] = [
    ['[FILE|FOLDER]', 'the screens'],
    ...Object.entries(SCREEN_LOOKS).map(([name, { say }]): [string, string] => [
      `  --${name}`,
      say,
    ]),
  ];
  for (const c of commands) rows.push([`${c.names.join('|')} ${c.usage}`.trim(), c.say]);
  const width = Math.max(...rows.map(([left]) => left.length));
  const lines = rows.map(([left, say]) => `  ${left.padEnd(width)}  ${say}`);
  return [
    'putback: what came off goes back, each bolt in its own hole. Behind putback:',
    '',
    ...lines,
    '',
    'putback help COMMAND says more. With --json each answers in one JSON value.',
    `Exit: ${EXITS}`,
    MAKER,
  ].join('\n');
}

export function commandHelp(command: Command): string {
  return [
    `putback ${command.names.join('|')} ${command.usage}`.trim(),
    `  ${command.more === undefined ? command.say : ended(command.say)}`,
    ...(command.more ?? []).map((line) => `  ${line}`),
    '',
    ...optionLines({ ...command.options, ...COMMON }),
    '',
    ...command.examples.map((line) => `  putback ${line}`),
  ].join('\n');
}

/**
 * A text in a page for man, where a backslash and a dot or quote at the start of a line are commands. Other letters than
 * those of ASCII by their numbers: not every man reads UTF-8.
 */
function roff(text: string): string {
  return text
    .replaceAll('\\', '\\e')
    .replaceAll('-', '\\-')
    .replace(/^[.']/gm, '\\&$&')
    .replaceAll('…', '\\&...')
    .replace(
      /[^\0-\x7f]/gu,
      (c) => `\\[u${(c.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}]`,
    );
}

const named = (rows: readonly (readonly [string, string])[]): string[] =>
  rows.flatMap(([name, say]) => ['.TP', `.B ${roff(name)}`, roff(say)]);

/** The whole help as `man` shows it. */
export function manPage(commands: readonly Command[]): string {
  const sections = commands.flatMap((c) => [
    `.SS ${roff(`${c.names.join('|')} ${c.usage}`.trim())}`,
    roff([c.more === undefined ? c.say : ended(c.say), ...(c.more ?? [])].join('\n')),
    ...optionEntries(c.options),
    '.PP',
    '.nf',
    ...c.examples.map((line) => roff(`putback ${line}`)),
    '.fi',
  ]);
  const common = optionEntries(COMMON);
  return [
    `.TH PUTBACK 1 "" "putback ${VERSION}"`,
    '.SH NAME',
    roff('putback - what came off goes back, each bolt in its own hole'),
    '.SH SYNOPSIS',
    '.B putback',
    roff(SCREENS),
    '.br',
    '.B putback',
    roff('COMMAND …'),
    '.SH DESCRIPTION',
    roff(ABOUT.join('\n')),
    '.SH OPTIONS',
    ...optionEntries(ALONE),
    '.SH COMMANDS',
    ...sections,
    '.SH OPTIONS OF ALL COMMANDS',
    ...common,
    '.SH EXIT STATUS',
    roff(EXITS),
    '.SH ENVIRONMENT',
    ...named(ENVIRONMENT),
    '.SH FILES',
    ...named(FILES),
    '.SH FAULTS OF THE PROGRAM ITSELF',
    roff(
      'They end with lines that say which putback this is and where it stopped: send them, and what you did\njust before, to whoever gave you putback. putback doctor says what is odd about a machine.',
    ),
  ].join('\n');
}

/** `--all`, `-o, --out FILE`. */
function spelled(name: string, { value, letter }: Options[string]): string {
  const short = letter === undefined ? '' : `-${letter}, `;
  return `${short}--${name}${value === null ? '' : ` ${value}`}`;
}

function optionEntries(options: Options): string[] {
  return Object.entries(options).flatMap(([name, option]) => [
    '.TP',
    `.B ${roff(spelled(name, option))}`,
    roff(option.say),
  ]);
}

function optionLines(options: Options): string[] {
  const rows = Object.entries(options).map(([name, option]): [string, string] => [
    spelled(name, option),
    option.say,
  ]);
  const width = Math.max(...rows.map(([left]) => left.length));
  return rows.map(([left, say]) => `  ${left.padEnd(width)}  ${say}`);
}
