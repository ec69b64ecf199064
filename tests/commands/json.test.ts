import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { allCommands } from '../../src/commands/table.ts';
import { COVER } from '../job/bench.ts';
import { Pinned } from './pinned.ts';

let folder: string;
let pinned: Pinned;
const path = () => join(folder, 'job.yaml');
const text = () => readFileSync(path(), 'utf8');
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'putback-json-'));
  pinned = new Pinned(folder);
  writeFileSync(path(), COVER);
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

describe('a mark as JSON', () => {
  it('says what changed, hole by hole', async () => {
    const { exit, json } = await pinned.json('out', 'job.yaml', 'cover', '1', '3', '--tray', 'lid');
    expect(exit).toBe(0);
    expect(json).toEqual({
      ok: true,
      changed: true,
      piece: 'cover',
      holes: [
        { hole: '1', state: 'out', kind: 'S', passes: [], trouble: null },
        { hole: '3', state: 'out', kind: 'M+clip', passes: [], trouble: null },
      ],
      warnings: [{ code: 'still-over', say: 'Lever is noted as over it, and is still on.' }],
      id: 'mark0001',
    });
  });

  it('already so: changed false, exit 0, the file untouched', async () => {
    await pinned.json('out', 'job.yaml', 'cover', '1');
    const before = text();
    const { exit, json } = await pinned.json('out', 'job.yaml', 'cover', '1');
    expect([exit, json.ok, json.changed, json.id, text() === before]).toEqual([
      0,
      true,
      false,
      null,
      true,
    ]);
  });

  it('adds exactly one line', async () => {
    execFileSync('git', ['init', '-q'], { cwd: folder });
    execFileSync('git', ['add', '.'], { cwd: folder });
    await pinned.json('out', 'job.yaml', 'cover', '--all');
    const stat = execFileSync('git', ['diff', '--numstat'], { cwd: folder, encoding: 'utf8' });
    expect(stat).toBe('1\t0\tjob.yaml\n');
  });

  it('a wrong bolt: exit 1, with what it takes and where the bolt belongs, and nothing is written', async () => {
    await pinned.json('out', 'job.yaml', 'cover', '--all');
    const before = text();
    const { exit, json } = await pinned.json('in', 'job.yaml', 'cover', '1', '--kind', 'M');
    expect(exit).toBe(1);
    expect(json).toMatchObject({
      ok: false,
      refused: { code: 'wrong-bolt', takes: 'S', inHand: 'M', belongs: ['3'] },
    });
    expect(text()).toBe(before);
  });

  it('a reason overrules, and stands in the entry', async () => {
    await pinned.json('out', 'job.yaml', 'cover', '--all');
    const { json } = await pinned.json(
      'in',
      'job.yaml',
      'cover',
      '1',
      '--kind',
      'M',
      '--because',
      'S is lost',
    );
    expect(json).toMatchObject({ ok: true, holes: [{ hole: '1', state: 'in', kind: 'M' }] });
    expect(text()).toContain('in: M, because: "S is lost"}');
  });

  it('a conflict shows as one', async () => {
    await pinned.json('out', 'job.yaml', 'cover', '--all');
    const line = (id: string, kind: string) =>
      `  - {at: 2026-05-01T10:00:00+02:00, id: ${id}, piece: cover, hole: 1, in: ${kind}}\n`;
    writeFileSync(path(), `${text()}${line('fromhere', 'S')}${line('fromther', 'M')}`);
    const { json } = await pinned.json('status', 'job.yaml');
    expect(json.pieces).toMatchObject([
      {},
      {},
      { conflicts: [{ hole: '1', ids: ['fromhere', 'fromther'] }] },
    ]);
    const { json: stopped } = await pinned.json('in', 'job.yaml', 'cover', '1', '--kind', 'S');
    expect(stopped).toMatchObject({ refused: { code: 'unsettled' } });
    await pinned.json('settle', 'job.yaml', 'cover', '1', 'S');
    const { json: after } = await pinned.json('status', 'job.yaml');
    expect(after.pieces).toMatchObject([{}, {}, { conflicts: [], in: 1 }]);
  });

  it('--at is now and --id the next id', async () => {
    await pinned.json(
      'out',
      'job.yaml',
      'cover',
      '1',
      '--at',
      '2026-04-11T18:25:40+02:00',
      '--id',
      'k3Vb9xQe',
    );
    expect(text()).toContain(
      '- {at: 2026-04-11T18:25:40+02:00, id: k3Vb9xQe, piece: cover, hole: 1, out: S}',
    );
    const { exit, json } = await pinned.json('out', 'job.yaml', 'cover', '2', '--at', 'yesterday');
    expect([exit, json]).toMatchObject([2, { refused: { code: 'bad-time' } }]);
  });
});

describe('status as JSON', () => {
  it('says where each piece is and what is next', async () => {
    await pinned.json('out', 'job.yaml', 'cover', '--row', 'S S M+clip ! S');
    const { exit, json } = await pinned.json('status', 'job.yaml');
    expect(exit).toBe(0);
    expect(json).toEqual({
      ok: true,
      job: 'Cover weeps',
      machine: null,
      pieces: [
        {
          piece: 'lever',
          name: 'Lever',
          where: 'home',
          care: [],
          guessed: false,
          offWith: null,
          round: 1,
          holes: 1,
          out: 0,
          in: 0,
          tight: 0,
          torqueOther: [],
          torqueUnknown: [],
          trouble: [],
          conflicts: [],
        },
        {
          piece: 'hose',
          name: 'Hose',
          where: 'home',
          care: [],
          guessed: false,
          offWith: null,
          round: 1,
          holes: 0,
          out: 0,
          in: 0,
          tight: 0,
          torqueOther: [],
          torqueUnknown: [],
          trouble: [],
          conflicts: [],
        },
        {
          piece: 'cover',
          name: 'Cover',
          where: 'off',
          care: [],
          guessed: false,
          offWith: null,
          round: 1,
          holes: 5,
          out: 4,
          in: 0,
          tight: 0,
          torqueOther: [],
          torqueUnknown: [],
          trouble: [],
          conflicts: [],
        },
      ],
      next: { piece: 'cover', hole: '4', do: 'out', say: 'Cover: 4 comes out next.' },
      nextOnJob: {
        piece: 'cover',
        task: null,
        waits: false,
        say: 'Cover: 1 bolt to come out.',
      },
      cures: [],
      open: [],
      corrections: [],
      back: expect.objectContaining({
        days: 0,
        half: [{ piece: 'cover', name: 'Cover', out: 4, of: 5, tray: null }],
        fingerTight: [],
        finish: null,
      }),
    });
  });
});

describe('words of the command line', () => {
  it('a text may begin with a hyphen, a row with an empty hole', async () => {
    await pinned.json('note', 'job.yaml', 'cover', '- rust in 3');
    expect(text()).toContain('note: "- rust in 3"');
    const { json } = await pinned.json('out', 'job.yaml', 'cover', '--row', '- S M+clip L S');
    expect(json.holes).toMatchObject([
      { hole: '1', state: 'out', trouble: 'empty' },
      {},
      {},
      {},
      {},
    ]);
  });

  it('holes stand one by one, with commas, or as a span', async () => {
    const { json } = await pinned.json('out', 'job.yaml', 'cover', '1-3,5');
    expect((json.holes as { hole: string }[]).map((h) => h.hole)).toEqual(['1', '2', '3', '5']);
  });
});

describe('what cannot be answered', () => {
  it.each([
    [2, 'no-such-file', ['status', 'nothere.yaml']],
    [2, 'bad-name', ['off', 'job.yaml', 'Not here']],
    [2, 'no-such-piece', ['in', 'job.yaml', 'covr', '1', '--kind', 'S']],
    [2, 'no-such-hole', ['out', 'job.yaml', 'cover', '9']],
    [2, 'no-such-command', ['offf', 'job.yaml']],
    [2, 'no-such-option', ['out', 'job.yaml', 'cover', '--al']],
    [2, 'usage', ['out', 'job.yaml', 'cover']],
    [2, 'usage', ['in', 'job.yaml', 'cover', '1']],
    [2, 'no-such-state', ['hole', 'job.yaml', 'cover', '1', 'stuk']],
    [1, 'still-in', ['off', 'job.yaml', 'cover']],
    [1, 'not-out', ['in', 'job.yaml', 'cover', '1', '--kind', 'S']],
    [2, 'nothing', ['undo', 'job.yaml']],
  ])('exit %i, %s: putback %j', async (exit, code, argv) => {
    const answer = await pinned.json(...argv);
    const codeOf = (answer.json.refused as { code: string }).code;
    expect([answer.exit, codeOf]).toEqual([exit, code]);
    expect(answer.json.ok).toBe(false);
  });

  it('an unreadable job gives its faults with their places, and is not written', async () => {
    writeFileSync(
      path(),
      'putback: 1\njob: X\n<<<<<<< ours\nfound: a\n=======\nfound: b\n>>>>>>> theirs\n',
    );
    const before = text();
    for (const argv of [
      ['status', 'job.yaml'],
      ['note', 'job.yaml', 'x'],
      ['check', 'job.yaml'],
    ]) {
      const { exit, json } = await pinned.json(...argv);
      expect([exit, json.ok]).toEqual([1, false]);
      expect(json.faults).toMatchObject([
        { code: 'conflict', severity: 'error', file: 'job.yaml', line: 3, column: 1 },
      ]);
    }
    expect(text()).toBe(before);
  });

  it('a newer form is read, and not written', async () => {
    writeFileSync(path(), COVER.replace('putback: 1', 'putback: 2'));
    expect((await pinned.json('status', 'job.yaml')).exit).toBe(0);
    const { exit, json } = await pinned.json('out', 'job.yaml', 'cover', '1');
    expect([exit, json]).toMatchObject([1, { faults: [{ code: 'newer-version' }] }]);
  });
});

describe('help', () => {
  it('names every command on lines that 80 columns hold', async () => {
    const { exit, out } = await pinned.run('--help');
    expect(exit).toBe(0);
    for (const { names, say } of allCommands()) {
      expect(out).toContain(names.join('|'));
      expect(out).toContain(say);
    }
    expect(Math.max(...out.split('\n').map((line) => line.length))).toBeLessThanOrEqual(80);
  });

  it.each(allCommands().map((c) => c.names[0] ?? ''))(
    'putback %s --help says what it takes',
    async (name) => {
      const { exit, out } = await pinned.run(name, '--help');
      expect(exit).toBe(0);
      expect(out).toMatch(new RegExp(`^putback .*${name}.*\\n[^]*--json`));
    },
  );
});
