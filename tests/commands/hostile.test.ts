import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { allCommands } from '../../src/commands/table.ts';
import { Pinned } from './pinned.ts';

/** What a file from a stranger may hold: a window title, a hidden link, reversed text, a cleared screen, C1 controls. */
const PAYLOADS = [
  '\\x1b]0;title\\x07',
  '\\x1b]8;;http://example.invalid\\x1b\\\\link\\x1b]8;;\\x1b\\\\',
  '\\u202eright to left',
  '\\x1b[2J\\x1b[H',
  '\\u009b31mred',
  'zero\\u200bwidth',
  'line\\rover',
  '\\x1bPq#0~\\x1b\\\\',
  '\\x1b]52;c;b3duZWQ=\\a',
  '\\x1b[8mhidden\\x1b[0m',
  '\\u2066isolate\\u2069\\u200e\\u200f\\ufeff',
  '\\x00nul\\x08\\x7f\\u0085\\u2028',
  'fake\\nCover: 2 of 2 tight.',
];

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'putback-hostile-'));
  const all = PAYLOADS.join(' ');
  writeFileSync(
    join(folder, 'job.yaml'),
    `putback: 1
job: "${all}"
machine: "${all}"
bolts: {S: "M6x25 ${all}"}
pieces:
  cover: {name: "${all}", bolts: S S, torque: "10 N·m ${all}", "odd${all}": x}
tasks: {wash: {do: "${all}"}, look: {test: "${all}", limit: "${all}", after: cover on}, seal: {decide: "${all}", now: "${all}", chance: "${all}"}}
suspects: {coil: "${all}", plug: {what: "${all}", takes: "${all}", part: "${all}"}}
checks: {spark: {check: "${all}", bad: [coil, "odd ${all}"], takes: "${all}", needs: "${all}", caution: "${all}"}}
buy: {seal: {what: "=1+1 ${all}", price: "@${all}", from: "${all}", once: true, for: cover on}}
diary:
  - {at: 2026-04-11T18:25:40+02:00, id: aaaaaaa1, piece: cover, hole: 1, out: S, tray: "${all}"}
  - {at: 2026-04-11T18:25:40+02:00, id: aaaaaaa3, check: spark, looked: bad, result: "${all}", limit: "${all}"}
  - {at: 2026-04-11T18:25:40+02:00, id: aaaaaaa4, suspect: plug, tried: "${all}"}
  - {at: 2026-04-11T18:25:40+02:00, id: aaaaaaa2, piece: cover, hole: 1, out: S, says: "${all}"}
`,
  );
});
beforeAll(() => writeFileSync(join(folder, 'odd\x1b[2J.yaml'), 'putback: [\n'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('text from a file cannot steer the terminal', () => {
  const COMMANDS_TRIED: string[][] = [
    ['status', 'job.yaml'],
    ['check', 'job.yaml'],
    ['out', 'job.yaml', 'cover', '2'],
    ['off', 'job.yaml', 'cover'],
    ['in', 'job.yaml', 'cover', '1', '--kind', 'X'],
    ['done', 'job.yaml', 'wash'],
    ['undo', 'job.yaml'],
    ['undo', 'job.yaml', '\x1b[2J'],
    ['diary', 'job.yaml'],
    ['sequence', 'job.yaml', 'cover'],
    ['fit', 'job.yaml', 'cover'],
    ['mixup', 'job.yaml', 'cover', '--left', 'S'],
    ['mixup', 'job.yaml', 'cover', '--left', '\x1b[2J'],
    ['hole', 'job.yaml', 'cover', '1', 'stuck', '--says', '\x1b[2J'],
    ['settle', 'job.yaml', 'cover', '1', '\x1b[2J'],
    ['note', 'job.yaml', 'cover', '\u202e\x1b]0;x\x07'],
    ['write', 'job.yaml', 'cover', 'routes', '\u202e\x1b]0;x\x07\nCover: 2 of 2 tight.'],
    ['write', 'job.yaml', 'cover', 'map', '1 \x1b[2J'],
    ['add', 'job.yaml', '\x1b[2J\u202e bearing', '--piece', 'cover'],
    ['add', 'job.yaml', 'x', '--as', '\x1b[2J'],
    ['rename', 'job.yaml', 'S', '\x1b[2J'],
    ['write', 'job.yaml', 'cover', 'torque', '\x1b[2J'],
    ['correct', 'job.yaml', 'cover', 'torque', '\u202e\x1b]0;x\x07\nCover: 2 of 2 tight.'],
    ['correct', 'job.yaml', 'wash', 'step', '\x1b[2J'],
    ['correct', 'job.yaml', 'cover', 'torque', 'x', '--printed', '\x1b[2J'],
    ['correct', 'job.yaml', 'cover', '\x1b[2J', 'x'],
    ['status', 'job.yaml'],
    ['plan', 'job.yaml'],
    ['diary', 'job.yaml'],
    ['find', 'weeps', '\x1b[2J'],
    ['last', 'job.yaml'],
    ['last', 'job.yaml', 'cover', '--take'],
    ['keep', 'job.yaml'],
    ['reading', 'job.yaml', '\x1b[2J'],
    ['template', 'job.yaml', '--as', '\x1b[2J'],
    ['template', 'job.yaml', '--as', 'one'],
    ['due'],
    ['due', '--ics'],
    ['book', '.', '\x1b[2J'],
    ['last', 'job.yaml', 'cover', '--from', '\x1b[2J'],
    ['find', 'putback', 'cover'],
    ['torque', 'convert', '\x1b[2J'],
    ['new', '\x1b[2J.yaml', '\x1b[2J'],
    ['bench', '\x1b[2J'],
    ['merge', '\x1b[2J', 'job.yaml', 'job.yaml'],
    ['check', 'odd\x1b[2J.yaml'],
    ['status', '\x1b]0;x\x07'],
    ['\x1b[2J'],
    ['out', 'job.yaml', '\x1b[2J', '1'],
    ['tight', 'job.yaml', 'cover', '1', '--pass', '\x1b[2J'],
    ['plan', 'job.yaml'],
    ['plan', 'job.yaml', '--minutes', '20'],
    ['plan', 'job.yaml', '--reach', '\x1b[2J'],
    ['gate', 'job.yaml', 'sealing', 'cover'],
    ['gate', 'job.yaml', 'start'],
    ['gate', 'job.yaml', 'start', '--added', '\x1b[2J\nCover: 2 of 2 tight.'],
    ['inside', 'job.yaml', 'cover', '2 \x1b[2J'],
    ['completions', 'bash', '--', 'out', 'job.yaml', ''],
    ['completions', 'bash', '--', 'done', 'job.yaml', ''],
    ['trace', 'job.yaml'],
    ['trace', 'job.yaml', 'spark', 'good', '--reading', '\u202e\x1b]0;x\x07\nCover: 2 of 2 tight.'],
    ['trace', 'job.yaml', '\x1b[2J', 'good'],
    ['trace', 'job.yaml', '--suspect', '\x1b[2J\nCover: 2 of 2 tight.'],
    ['trace', 'job.yaml', 'coil', 'found'],
    ['while-open', 'job.yaml', 'cover'],
    ['while-open', 'job.yaml', 'cover', 'renew', '\x1b[2J\nCover: 2 of 2 tight.'],
    ['weigh', 'job.yaml', 'seal'],
    ['weigh', 'job.yaml', '\x1b[2J'],
    ['help', '\x1b[2J'],
    ['buy', 'job.yaml'],
    ['buy', 'job.yaml', '--csv'],
    ['buy', 'job.yaml', '--raw'],
    ['buy', 'job.yaml', '\x1b[2J', 'here'],
    ['torque', 'sane', '10 N·m', '--thread', '\x1b[2J'],
    ['paper', 'job.yaml', 'card', 'cover'],
    ['paper', 'job.yaml', 'sheet', '--text'],
    ['map', 'job.yaml', 'cover', '--svg'],
    ['photo', 'job.yaml', '\x1b[2J\u202e'],
    ['photo', 'job.yaml', 'a', '--piece', '\x1b[2J'],
  ];

  it('every command that reads a job is among them', () => {
    const tried = new Set<string>(COMMANDS_TRIED.map(([name]) => name ?? ''));
    const left = allCommands()
      .filter((c) => !c.names.some((n) => tried.has(n)))
      .map((c) => c.names[0] ?? '');
    expect(left).toEqual(['schema', 'practice', 'keys', 'doctor']);
  });

  it('a cell of the table for spreadsheets is no formula', async () => {
    const { out } = await new Pinned(folder).run('buy', 'job.yaml', '--csv');
    expect(out).toMatch(/"'=1\+1 /);
    expect(out).toMatch(/"'@/);
    expect(out).not.toMatch(/"[=@+]/);
  });

  it.each(COMMANDS_TRIED)('putback %j', async (...argv) => {
    const pinned = new Pinned(folder);
    for (const json of [[], ['--json']]) {
      const { out, err } = await pinned.run(...argv, ...json);
      // A tab parts what a shell completes from what it means.
      const said = argv[0] === 'completions' ? out.replace(/^(\S+)\t/gm, '$1 ') : out;
      expect(`${said}${err}`).not.toMatch(
        /[\x00-\x09\x0b-\x1f\x7f-\x9f\u200b-\u200f\u202a-\u202e\u2066-\u2069]/,
      );
      expect(`${out}${err}`).not.toMatch(/[\ud800-\udfff](?![\udc00-\udfff])|[\u2028\u2029\ufeff]/);
      expect(`${out}${err}`).not.toMatch(/^Cover: 2 of 2 tight\./m);
      expect(`${out}${err}`.length).toBeGreaterThan(3);
    }
  });
});
