/** Help, made from the table of commands. */
import type { Command, Options } from './command.ts';
import { COMMANDS, COMMON } from './table.ts';

export function help(): string {
  const rows: [string, string][] = [['[FILE|FOLDER]', 'the screens']];
  for (const c of COMMANDS) rows.push([`${c.names.join('|')} ${c.usage}`.trim(), c.say]);
  const width = Math.max(...rows.map(([left]) => left.length));
  const lines = rows.map(([left, say]) => `  ${left.padEnd(width)}  ${say}`);
  return [
    'putback: what came off goes back, each bolt in its own hole. Behind putback:',
    '',
    ...lines,
    '',
    'putback COMMAND --help says more. With --json each answers in one JSON value.',
    'Exit: 0 done or already so; 1 the answer is no; 2 wrong use; 3 not saved.',
    "The maker's manual, local rules and licensed mechanics go first.",
  ].join('\n');
}

export function commandHelp(command: Command): string {
  return [
    `putback ${command.names.join('|')} ${command.usage}`.trim(),
    `  ${command.say}`,
    ...(command.more ?? []).map((line) => `  ${line}`),
    '',
    ...optionLines({ ...command.options, ...COMMON }),
  ].join('\n');
}

function optionLines(options: Options): string[] {
  const rows = Object.entries(options).map(([name, { value, say }]): [string, string] => [
    value === null ? `--${name}` : `--${name} ${value}`,
    say,
  ]);
  const width = Math.max(...rows.map(([left]) => left.length));
  return rows.map(([left, say]) => `  ${left.padEnd(width)}  ${say}`);
}
