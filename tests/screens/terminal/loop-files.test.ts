import { mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { start } from '../../../src/screens/base/start.ts';
import type { State } from '../../../src/screens/base/state.ts';
import { update } from '../../../src/screens/show/update.ts';
import { createLoop } from '../../../src/screens/terminal/loop.ts';
import { type Files, filesIn } from '../../../src/screens/terminal/loop-files.ts';
import { attendFiles } from '../../../src/screens/terminal/loop-watch.ts';
import { type Shelf, shelf } from '../../../src/screens/terminal/shelf.ts';

const JOB =
  'putback: 1\njob: Left cover\npieces:\n  cover: {bolts: S S}\nbolts: {S: M6x25}\ndiary:\n';
const NOW = '2026-05-02T10:11:05+02:00';

function newFolder(files: Record<string, string>): string {
  const folder = mkdtempSync(join(tmpdir(), 'putback-files-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
  return folder;
}

function filesOf(folder: string): Files {
  let n = 0;
  const id = () => `id00000${n++}`;
  return filesIn(folder, { now: () => NOW, id }, shelf);
}

const out = (...holes: string[]) => ({ do: 'out', piece: 'cover', holes }) as const;

describe('the jobs of a folder', () => {
  it('are its job files, broken ones too, and no other YAML', async () => {
    const folder = newFolder({
      'b.yaml': JOB,
      'a.yml': '# a note first\nputback: 1\njob: [never closed\n',
      'bench.yaml': 'commit: milestones\n',
      'compose.yaml': 'services: {}\n',
      'notes.txt': JOB,
    });
    const answer = await filesOf(folder).hands.list({ do: 'list', folder });
    const rows = answer?.on === 'bench' ? answer.jobs.map((j) => [j.file, j.job, j.stands]) : null;
    expect(rows).toEqual([
      ['a.yml', 'a.yml', 'cannot be read'],
      ['b.yaml', 'Left cover', 'not begun'],
    ]);
  });

  it('are none where the folder has gone', async () => {
    const folder = join(newFolder({}), 'gone');
    const answer = await filesOf(folder).hands.list({ do: 'list', folder });
    expect(answer).toEqual({ on: 'bench', jobs: [] });
  });
});

describe('a job that begins', () => {
  const begin = { do: 'start', file: 'won-t-start.yaml', job: "Won't start" } as const;

  it('is on disk and open, and an editor knows its keys', async () => {
    const folder = newFolder({ 'bench.yaml': 'commit: never\n' });
    const answer = await filesOf(folder).hands.start({ ...begin, machine: 'Tarn 125, 2003' });
    expect(answer).toMatchObject({ on: 'file', file: begin.file, read: { ok: true, faults: [] } });
    expect(readFileSync(join(folder, begin.file), 'utf8')).toBe(
      '# yaml-language-server: $schema=./putback.schema.json\nputback: 1\njob: "Won\'t start"\nmachine: Tarn 125, 2003\ndiary:\n',
    );
    expect(readFileSync(join(folder, 'putback.schema.json'), 'utf8')).toContain('"title"');
  });

  it('is never put over a file that is there', async () => {
    const folder = newFolder({ [begin.file]: 'mine\n' });
    const answer = await filesOf(folder).hands.start({ ...begin, machine: null });
    expect(answer).toMatchObject({
      read: { ok: false, unread: { code: 'exists' } },
      unmade: true,
    });
    expect(readFileSync(join(folder, begin.file), 'utf8')).toBe('mine\n');
  });

  it('in a folder that has gone is said in words', async () => {
    const folder = join(newFolder({}), 'gone');
    const answer = await filesOf(folder).hands.start({ ...begin, machine: null });
    expect(answer).toMatchObject({ on: 'file', read: { ok: false } });
  });
});

describe('a job file', () => {
  it('that is not there, or no text, is said in words', async () => {
    const files = filesOf(newFolder({}));
    const gone = await files.hands.open({ do: 'open', file: 'x.yaml' });
    expect(gone).toMatchObject({ on: 'file', file: 'x.yaml', read: { ok: false } });
    expect(JSON.stringify(gone)).toContain('x.yaml is not there');
  });

  it('comes with the torque wrenches of its bench, and opens without them', async () => {
    const wrench = 'wrenches:\n  small: {range: 2..12 N·m, step: 0.5}\n';
    const folder = newFolder({ 'a.yaml': JOB, 'bench.yaml': wrench });
    const open = { do: 'open', file: 'a.yaml' } as const;
    const small = { name: 'small', from: 2, to: 12, unit: 'N·m', step: 0.5 };
    expect(await filesOf(folder).hands.open(open)).toMatchObject({ wrenches: [small] });
    const bare = filesOf(newFolder({ 'a.yaml': JOB }));
    expect(await bare.hands.open(open)).toMatchObject({ read: { ok: true }, wrenches: [] });
    rmSync(join(folder, 'bench.yaml'));
    mkdirSync(join(folder, 'bench.yaml'));
    expect(await filesOf(folder).hands.open(open)).toMatchObject({
      read: { ok: true },
      wrenches: [],
    });
  });

  it('is marked on disk before the answer, and is then not changed by anybody else', async () => {
    const folder = newFolder({ 'a.yaml': JOB });
    const files = filesOf(folder);
    await files.hands.open({ do: 'open', file: 'a.yaml' });
    const answer = await files.hands.record({ do: 'record', file: 'a.yaml', wish: out('1') });
    expect(answer).toMatchObject({ on: 'recorded', file: 'a.yaml', result: { ok: true } });
    expect(readFileSync(join(folder, 'a.yaml'), 'utf8')).toContain('hole: 1, out: ');
    expect(files.changed('a.yaml')).toBe(false);
  });

  it('changed by an editor is seen, and read anew', async () => {
    const folder = newFolder({ 'a.yaml': JOB });
    const files = filesOf(folder);
    expect(files.changed('a.yaml'), 'never read here').toBe(false);
    await files.hands.open({ do: 'open', file: 'a.yaml' });
    expect(files.changed('a.yaml')).toBe(false);
    writeFileSync(join(folder, 'a.yaml'), JOB.replace('Left', 'Right'));
    expect(files.changed('a.yaml')).toBe(true);
    const answer = await files.hands.open({ do: 'open', file: 'a.yaml' });
    expect(JSON.stringify(answer)).toContain('Right cover');
    expect(files.changed('a.yaml')).toBe(false);
  });

  it('outside a bench that asks for it is never committed', async () => {
    const files = filesOf(newFolder({ 'a.yaml': JOB }));
    await files.hands.open({ do: 'open', file: 'a.yaml' });
    const effect = { do: 'milestone', file: 'a.yaml', piece: 'cover', place: 'off' } as const;
    expect(await files.hands.milestone(effect)).toBeNull();
  });
});

/** The real loop over real files; answers when the state has become true of something. */
async function opened(
  folder: string,
  on: { file: string } | { folder: string },
  its: Shelf = shelf,
) {
  const files = filesIn(folder, { now: () => NOW, id: () => 'id000000' }, its);
  const { state, effects } = start({
    on,
    columns: 80,
    rows: 24,
    colour: true,
    ascii: false,
    now: NOW,
  });
  const hands = { ...files.hands, ring: () => {}, soon: setImmediate };
  const loop = createLoop<State>({ first: state, effects, update }, hands);
  let clock = NOW;
  const timers = {
    later: (ms: number, call: () => void) => {
      const timer = setTimeout(call, ms);
      return () => clearTimeout(timer);
    },
    soon: setImmediate,
  };
  const watching = attendFiles(loop, folder, files, its, timers, () => clock);
  onTestFinished(watching.stop);
  const until = (isTrue: (state: State) => boolean) =>
    new Promise<void>((done) => {
      const stop = loop.subscribe(() => look());
      const look = () => {
        if (!isTrue(loop.state())) return;
        stop();
        done();
      };
      look();
    });
  const setClock = (time: string) => {
    clock = time;
  };
  return { loop, watching, until, setClock };
}

const jobName = (state: State) => state.open?.job.upper.job;
const deaf: Shelf = { ...shelf, watch: () => () => {} };

describe('while a job is shown', () => {
  it('what an editor saves is shown without a key', async () => {
    const folder = newFolder({ 'a.yaml': JOB });
    const { until } = await opened(folder, { file: 'a.yaml' });
    await until((s) => jobName(s) === 'Left cover');
    writeFileSync(join(folder, 'a.yaml'), JOB.replace('Left', 'Right'));
    await until((s) => jobName(s) === 'Right cover');
  });

  it('through a link into another folder too', async () => {
    const real = newFolder({ 'real.yaml': JOB });
    const folder = newFolder({});
    symlinkSync(join(real, 'real.yaml'), join(folder, 'a.yaml'));
    const { until } = await opened(folder, { file: 'a.yaml' });
    await until((s) => jobName(s) === 'Left cover');
    writeFileSync(join(real, 'real.yaml'), JOB.replace('Left', 'Right'));
    await until((s) => jobName(s) === 'Right cover');
  });

  it('on a disk that tells nothing, the next key looks', async () => {
    const folder = newFolder({ 'a.yaml': JOB });
    const { until, watching } = await opened(folder, { file: 'a.yaml' }, deaf);
    await until((s) => jobName(s) === 'Left cover');
    writeFileSync(join(folder, 'a.yaml'), JOB.replace('Left', 'Right'));
    watching.pressed();
    await until((s) => jobName(s) === 'Right cover');
  });

  it('the time is said with a key, once a minute', async () => {
    const folder = newFolder({ 'a.yaml': JOB });
    const { loop, watching, setClock } = await opened(folder, { file: 'a.yaml' }, deaf);
    setClock('2026-05-02T10:11:59+02:00');
    watching.pressed();
    expect(loop.state().now).toBe(NOW);
    setClock('2026-05-02T10:12:01+02:00');
    watching.pressed();
    expect(loop.state().now).toBe('2026-05-02T10:12:01+02:00');
  });
});

describe('while the bench is shown', () => {
  it('a new job file appears without a key', async () => {
    const folder = newFolder({ 'a.yaml': JOB });
    const { until } = await opened(folder, { folder });
    await until((s) => s.bench?.jobs?.length === 1);
    writeFileSync(join(folder, 'b.yaml'), JOB);
    await until((s) => s.bench?.jobs?.length === 2);
  });
});
