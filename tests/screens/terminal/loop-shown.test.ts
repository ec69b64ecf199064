/** Marks that were shown here, and what editors, git and links make of the file meanwhile. */
import { execFileSync } from 'node:child_process';
import {
  chmodSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { readJob } from '../../../src/job/read.ts';
import type { Wish } from '../../../src/model/types.ts';
import { filesIn } from '../../../src/screens/terminal/loop-files.ts';
import { shelf } from '../../../src/screens/terminal/open.ts';
import { pinnedEnv } from '../../terminal/world.ts';

const JOB =
  'putback: 1\njob: Left cover\npieces:\n  cover: {bolts: S S S S}\nbolts: {S: M6x25}\ndiary:\n';

class Sitting {
  readonly folder = mkdtempSync(join(tmpdir(), 'putback-shown-'));
  readonly job = join(this.folder, 'a.yaml');
  private ids = 0;
  readonly files;

  constructor(text = JOB) {
    onTestFinished(() => rmSync(this.folder, { recursive: true, force: true }));
    writeFileSync(this.job, text);
    // Git tells its own time, in whole seconds.
    const now = () => `${new Date().toISOString().slice(0, 19)}+00:00`;
    const id = () => `mark000${++this.ids}`;
    this.files = filesIn(this.folder, { now, id }, shelf);
  }

  async open() {
    const answer = await this.files.hands.open({ do: 'open', file: 'a.yaml' });
    return answer.on === 'file' ? answer : null;
  }

  async out(hole: string) {
    const wish: Wish = { do: 'out', piece: 'cover', holes: [hole] };
    const answer = await this.files.hands.record({ do: 'record', file: 'a.yaml', wish });
    return answer.on === 'recorded' && answer.result.ok ? answer.result : null;
  }

  ids_(): string {
    const read = readJob(readFileSync(this.job, 'utf8'), 'a.yaml');
    expect(read.faults).toEqual([]);
    return read.entries.map((e) => e.id).join(' ');
  }

  git(...args: string[]): string {
    const env = { ...process.env, ...pinnedEnv(this.folder) };
    return execFileSync('git', ['-C', this.folder, ...args], { env, encoding: 'utf8' });
  }
}

/** Two marks, after the text an editor has read. */
async function sitting(): Promise<Sitting> {
  const s = new Sitting();
  await s.open();
  await s.out('1');
  await s.out('2');
  return s;
}

const AGAIN = (marks: string) => `An older text was saved over the file. Written again: ${marks}.`;

describe('an editor that saves what it had read before the marks', () => {
  it('keeps what was edited, and the marks are written again, with a line that says so', async () => {
    const s = await sitting();
    writeFileSync(s.job, JOB.replace('Left', 'Right'));
    const answer = await s.open();
    expect(answer?.say).toBe(AGAIN('2 marks that were shown'));
    expect(readFileSync(s.job, 'utf8')).toMatch(/^putback: 1\njob: Right cover\n/);
    expect(s.ids_()).toBe('mark0001 mark0002');
    expect(answer?.read.ok && answer.read.job.pieces.get('cover')?.holes[1]?.state).toBe('out');
    expect(s.files.changed('a.yaml')).toBe(false);
    expect((await s.open())?.say).toBeUndefined();
  });

  it('in the instant before a mark: the mark and those before it stand', async () => {
    const s = await sitting();
    writeFileSync(s.job, JOB);
    const result = await s.out('3');
    expect(result?.warnings).toEqual([
      { code: 'written-again', say: AGAIN('2 marks that were shown') },
    ]);
    expect(s.ids_()).toBe('mark0001 mark0002 mark0003');
    expect(result?.job.entries).toHaveLength(3);
  });

  it('with an undo of one of them keeps that undo', async () => {
    const s = await sitting();
    const undo = '  - {at: 2026-05-02T10:11:05+02:00, id: undo0001, undo: mark0001}\n';
    writeFileSync(s.job, readFileSync(s.job, 'utf8').replace(/.*mark0002.*\n/, '') + undo);
    expect((await s.open())?.say).toBe(AGAIN('1 mark that was shown'));
    expect(s.ids_()).toBe('mark0001 undo0001 mark0002');
  });

  it('into a file that nobody may write: told, and tried again with the next mark', async () => {
    const s = await sitting();
    writeFileSync(s.job, JOB);
    chmodSync(s.job, 0o444);
    expect((await s.open())?.say).toBe(
      '2 marks that were shown are gone from the file. a.yaml may not be written. Give yourself the right to write it.',
    );
    chmodSync(s.job, 0o644);
    await s.out('3');
    expect(s.ids_().split(' ').toSorted().join(' ')).toBe('mark0001 mark0002 mark0003');
  });

  it('while half typed changes nothing, and nothing is lost when it is whole again', async () => {
    const s = await sitting();
    writeFileSync(s.job, `${JOB}  - {at: [\n`);
    expect((await s.open())?.read.ok).toBe(false);
    writeFileSync(s.job, JOB.replace('Left', 'Right'));
    expect((await s.open())?.say).toBe(AGAIN('2 marks that were shown'));
  });
});

describe('git that puts another version in place', () => {
  async function committed(): Promise<Sitting> {
    const s = new Sitting();
    s.git('init', '-q', '-b', 'main');
    s.git('add', 'a.yaml');
    s.git('commit', '-q', '-m', 'start');
    await s.open();
    await s.out('1');
    await s.out('2');
    s.git('commit', '-q', '-am', 'two marks');
    return s;
  }

  it('by another branch is left alone, and a line says what is not in it', async () => {
    const s = await committed();
    s.git('checkout', '-q', 'HEAD~1');
    expect((await s.open())?.say).toBe(
      'Git put another version in place, without 2 marks that were shown.',
    );
    expect(s.git('status', '--porcelain', '-uno')).toBe('');
    s.git('checkout', '-q', 'main');
    expect((await s.open())?.say).toBeUndefined();
    expect(s.ids_()).toBe('mark0001 mark0002');
  });

  it('with a rebase half done is left alone until it is done', async () => {
    const s = await committed();
    mkdirSync(join(s.folder, '.git', 'rebase-merge'));
    writeFileSync(s.job, JOB);
    expect((await s.open())?.say).toBe(
      'Git is at work on the file: 2 marks that were shown are not in it just now.',
    );
    expect(readFileSync(s.job, 'utf8')).toBe(JOB);
    await s.out('3');
    rmSync(join(s.folder, '.git', 'rebase-merge'), { recursive: true });
    writeFileSync(s.job, `${JOB}# done\n`);
    expect((await s.open())?.say).toBe(AGAIN('3 marks that were shown'));
  });

  it('is not blamed for an editor that saves the text of before the commit', async () => {
    const s = await committed();
    writeFileSync(s.job, JOB);
    expect((await s.open())?.say).toBe(AGAIN('2 marks that were shown'));
    expect(s.git('status', '--porcelain', '-uno')).toBe('');
  });

  it('runs nothing that the repository names, to find that out', async () => {
    const s = await committed();
    const ran = join(s.folder, 'ran');
    const canary = join(s.folder, 'canary');
    writeFileSync(canary, `#!/bin/sh\necho ran >> '${ran}'\ncat\n`);
    chmodSync(canary, 0o755);
    const named = ['core.fsmonitor', 'diff.external', 'core.pager', 'filter.x.clean'];
    writeFileSync(join(s.folder, '.gitattributes'), '*.yaml filter=x diff=x\n');
    for (const key of [...named, 'filter.x.smudge', 'diff.x.textconv', 'core.sshCommand']) {
      s.git('-c', 'core.fsmonitor=false', 'config', key, canary);
    }
    writeFileSync(s.job, JOB);
    expect((await s.open())?.say).toBe(AGAIN('2 marks that were shown'));
    expect(() => readFileSync(ran)).toThrow('ENOENT');
  });
});

describe('a link in a bench', () => {
  it('that leads out of it is named and not followed; one inside is a job', async () => {
    const s = new Sitting();
    const out = new Sitting(JOB.replace('Left', 'Secret'));
    symlinkSync(out.job, join(s.folder, 'b.yaml'));
    symlinkSync('a.yaml', join(s.folder, 'c.yaml'));
    symlinkSync('/dev/zero', join(s.folder, 'd.yaml'));
    symlinkSync('nowhere', join(s.folder, 'e.yaml'));
    execFileSync('mkfifo', [join(s.folder, 'f.yaml')]);
    const answer = await s.files.hands.list({ do: 'list', folder: s.folder });
    const rows = answer.on === 'bench' ? answer.jobs.map((j) => [j.file, j.job, j.next]) : [];
    expect(rows).toEqual([
      ['a.yaml', 'Left cover', expect.any(String)],
      ['b.yaml', 'b.yaml', 'b.yaml is a link that leads out of this bench.'],
      ['c.yaml', 'Left cover', expect.any(String)],
    ]);
    const opened = await s.files.hands.open({ do: 'open', file: 'b.yaml' });
    expect(opened).toMatchObject({ read: { ok: false, unread: { code: 'elsewhere' } } });
    expect(JSON.stringify(opened)).not.toContain('Secret');
  });
});
