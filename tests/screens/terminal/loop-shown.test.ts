/** Marks that were shown here, and what editors, git and links make of the file meanwhile. */
import { execFileSync } from 'node:child_process';
import {
  chmodSync,
  mkdirSync,
  readFileSync,
  renameSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { JOB, LONG, Sitting, STOOD } from './sitting.ts';

/** Two marks, after the text an editor has read. */
async function sitting(): Promise<Sitting> {
  const s = new Sitting();
  await s.open();
  await s.out('1');
  await s.out('2');
  return s;
}

const AGAIN = (marks: string) => `An older text was saved over the file. Written again: ${marks}.`;
const WAITS = 'Another program is saving a.yaml: it is waited for.';
const BOTH = '2 marks that were shown';

describe('an editor that saves what it had read before the marks', () => {
  it('keeps what was edited, and the marks are written again, with a line that says so', async () => {
    const s = await sitting();
    writeFileSync(s.job, JOB.replace('Left', 'Right'));
    expect((await s.again())?.say).toBe(WAITS);
    const answer = await s.again(STOOD);
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
    expect((await s.stood())?.say).toBe(AGAIN('1 mark that was shown'));
    expect(s.ids_()).toBe('mark0001 undo0001 mark0002');
  });

  it('into a file that nobody may write: told, and tried again with the next mark', async () => {
    const s = await sitting();
    writeFileSync(s.job, JOB);
    chmodSync(s.job, 0o444);
    expect((await s.stood())?.say).toBe(
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
    expect((await s.stood())?.say).toBe('a.yaml was changed and cannot be read just now.');
    expect(s.text()).toBe(`${JOB}  - {at: [\n`);
    writeFileSync(s.job, JOB.replace('Left', 'Right'));
    expect((await s.stood())?.say).toBe(AGAIN('2 marks that were shown'));
  });

  it('while half typed behind the marks: they stay on the screen, and nothing is written', async () => {
    const s = await sitting();
    const typed = `${s.text()}  - {at: [\n`;
    writeFileSync(s.job, typed);
    await s.stood();
    const answer = await s.again(LONG);
    expect(answer?.read.ok && answer.read.job.entries).toHaveLength(2);
    expect(s.text()).toBe(typed);
    expect(s.names()).toEqual(['a.yaml']);
  });

  it('in the instant behind a mark: seen, whatever it was that wrote', async () => {
    const s = await sitting();
    const before = s.text();
    await s.out('3');
    // Before anything was looked at again.
    writeFileSync(`${s.job}.new`, before);
    renameSync(`${s.job}.new`, s.job);
    expect(s.files.changed('a.yaml')).toBe(true);
    expect((await s.stood())?.say).toBe(AGAIN('1 mark that was shown'));
    expect(s.ids_()).toBe('mark0001 mark0002 mark0003');
  });
});

describe('a file in the middle of being saved', () => {
  /** As an editor leaves it that cut it off and has written so much of its own text. */
  const cut = (s: Sitting, part: number) => {
    const edited = s.text().replace('Left', 'Left hand');
    writeFileSync(s.job, edited.slice(0, Math.floor(edited.length * part)));
    return edited;
  };

  it.each([0, 0.1, 0.3, 0.5, 0.75, 0.95])(
    'cut off at %d of its length is waited for, and nothing is written into it',
    async (part) => {
      const s = await sitting();
      const edited = cut(s, part);
      const half = s.text();
      expect((await s.again())?.read.ok).toBe(true);
      const marked = s.mark('3');
      await s.again();
      expect(s.text()).toBe(half);
      writeFileSync(s.job, edited);
      await marked;
      await s.stood();
      expect(s.text()).toMatch(/^putback: 1\njob: Left hand cover\n/);
      expect(s.ids_().split(' ').slice(0, 2)).toEqual(['mark0001', 'mark0002']);
      expect(s.names()).toEqual(['a.yaml']);
    },
  );

  it('keeps a mark waiting, which is told, and then goes on as if nothing had been', async () => {
    const s = await sitting();
    const edited = cut(s, 0.3);
    const result = await s.mark('3');
    expect(result).toMatchObject({
      ok: false,
      unsaved: {
        code: 'waits',
        say: 'a.yaml is being saved by another program, or was cut short.',
      },
    });
    writeFileSync(s.job, edited);
    expect((await s.out('3'))?.job.entries).toHaveLength(3);
    expect(s.text()).toContain('Left hand cover');
  });

  it('that stays cut short: the marks are put beside it, named, and taken away when it is whole', async () => {
    const s = await sitting();
    const edited = cut(s, 0.3);
    await s.stood();
    expect((await s.again(LONG))?.say).toBe(
      'a.yaml was changed and cannot be read just now. It lacks 2 marks that were shown. They are kept in a.kept-1.yaml.',
    );
    expect(s.ids_('a.kept-1.yaml')).toBe('mark0001 mark0002');
    expect(s.text('a.kept-1.yaml')).toContain('job: Left cover\n');
    writeFileSync(s.job, edited);
    expect((await s.stood())?.say).toBe('a.yaml is whole again.');
    expect(s.names()).toEqual(['a.yaml']);
  });

  it('when the program is killed meanwhile, the next sitting knows the marks', async () => {
    const s = await sitting();
    writeFileSync(s.job, JOB.replace('Left', 'Right'));
    await s.again();
    const next = new Sitting(null, s.folder);
    expect((await next.open())?.say).toBe(AGAIN(BOTH));
    expect(next.ids_()).toBe('mark0001 mark0002');
    const last = new Sitting(null, s.folder);
    expect((await last.open())?.say).toBeUndefined();
  });
});

describe('another file under the name of the job', () => {
  const OTHER =
    'putback: 1\njob: Fork seals\npieces:\n  leg: {bolts: S S}\nbolts: {S: M8x30}\ndiary:\n';

  it('gets no marks of it: they are in the file that the job was moved to, and that is said', async () => {
    const s = await sitting();
    renameSync(s.job, join(s.folder, 'old.yaml'));
    writeFileSync(s.job, OTHER);
    const answer = await s.stood();
    expect(answer?.say).toBe(
      'This is another job now. 2 marks that were shown of “Left cover” are not in it. They are in old.yaml.',
    );
    expect(answer?.read.ok && answer.read.job.upper.job).toBe('Fork seals');
    expect(s.text()).toBe(OTHER);
    expect(s.names()).toEqual(['a.yaml', 'old.yaml']);
    expect(await s.files.leave()).toBeNull();
  });

  it('gets none that was pressed for the job that was shown', async () => {
    const s = new Sitting(JOB.replace('diary', 'tasks: {}\ndiary'));
    await s.open();
    const other = JOB.replace('Left cover', 'Right cover').replace('M6x25', 'M6x30');
    writeFileSync(s.job, other);
    const result = await s.mark('1');
    expect(result).toMatchObject({
      ok: false,
      refused: { code: 'other-job', say: 'This is another job now. Nothing was marked in it.' },
    });
    expect(s.text()).toBe(other);
    // And from now on that is the job.
    expect((await s.out('1'))?.job.upper.job).toBe('Right cover');
  });

  it('where the job is nowhere else, its marks are put beside it as a job of their own', async () => {
    const s = await sitting();
    writeFileSync(s.job, OTHER);
    expect((await s.stood())?.say).toBe(
      'This is another job now. 2 marks that were shown of “Left cover” are not in it. They are kept in a.kept-1.yaml.',
    );
    expect(s.text()).toBe(OTHER);
    expect(s.ids_('a.kept-1.yaml')).toBe('mark0001 mark0002');
  });

  it.each([
    'services: {web: {image: nginx}}\n',
    'putback: 1\n',
    '# moved to left-cover.yaml\n',
    '',
    '\0\0',
  ])('that is no job (%j) is never written into, and the marks are beside it', async (text) => {
    const s = await sitting();
    writeFileSync(s.job, text);
    for (const ms of [0, STOOD, LONG, 1e7]) {
      await s.again(ms);
      expect(await s.mark('3')).toMatchObject({ ok: false });
      expect(s.text()).toBe(text);
    }
    expect(s.ids_('a.kept-1.yaml')).toBe('mark0001 mark0002');
    expect(s.names()).toEqual(['a.kept-1.yaml', 'a.yaml']);
  });

  it('or nothing at all, when it is left: the marks are beside where it was', async () => {
    const s = await sitting();
    rmSync(s.job);
    expect(await s.files.leave()).toBe(
      '2 marks that were shown are not in a.yaml. They are kept in a.kept-1.yaml.',
    );
    expect(s.ids_('a.kept-1.yaml')).toBe('mark0001 mark0002');
  });

  it('or a link to another: not followed, and not written', async () => {
    const s = await sitting();
    const out = new Sitting(JOB);
    renameSync(s.job, join(s.folder, 'old.txt'));
    symlinkSync(out.job, s.job);
    expect(await s.again()).toMatchObject({ read: { ok: false, unread: { code: 'elsewhere' } } });
    expect(await s.mark('3')).toMatchObject({ ok: false, unsaved: { code: 'elsewhere' } });
    expect(out.text()).toBe(JOB);
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
    expect((await s.stood())?.say).toBe(
      'Git put another version in place, without 2 marks that were shown.',
    );
    expect(s.git('status', '--porcelain', '-uno')).toBe('');
    s.git('checkout', '-q', 'main');
    expect((await s.stood())?.say).toBeUndefined();
    expect(await s.files.leave()).toBeNull();
    expect(s.ids_()).toBe('mark0001 mark0002');
  });

  it('with a rebase half done is left alone until it is done', async () => {
    const s = await committed();
    mkdirSync(join(s.folder, '.git', 'rebase-merge'));
    writeFileSync(s.job, JOB);
    expect((await s.stood())?.say).toBe(
      'Git is at work on the file: 2 marks that were shown are not in it just now.',
    );
    expect(readFileSync(s.job, 'utf8')).toBe(JOB);
    await s.out('3');
    rmSync(join(s.folder, '.git', 'rebase-merge'), { recursive: true });
    writeFileSync(s.job, `${JOB}# done\n`);
    expect((await s.stood())?.say).toBe(AGAIN('3 marks that were shown'));
  });

  it('is not blamed for an editor that saves the text of before the commit', async () => {
    const s = await committed();
    writeFileSync(s.job, JOB);
    expect((await s.stood())?.say).toBe(AGAIN('2 marks that were shown'));
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
    expect((await s.stood())?.say).toBe(AGAIN('2 marks that were shown'));
    expect(() => readFileSync(ran)).toThrow('ENOENT');
  });

  it('is not what a commit of the file is: this program’s own or anybody’s', async () => {
    const s = await committed();
    const before = s.text();
    await s.out('3');
    s.git('commit', '-q', '-am', 'cover off');
    await s.out('4');
    // An editor had loaded the text of the commit.
    writeFileSync(s.job, s.git('show', 'HEAD:a.yaml'));
    expect((await s.stood())?.say).toBe(AGAIN('1 mark that was shown'));
    writeFileSync(s.job, before);
    expect((await s.stood())?.say).toBe(AGAIN(BOTH));
    expect(s.ids_()).toBe('mark0001 mark0002 mark0003 mark0004');
  });

  it('that has not got the marks either: they are put beside it, and named', async () => {
    const s = await committed();
    await s.out('3');
    s.git('checkout', '-q', '-f', 'HEAD~1');
    expect((await s.stood())?.say).toBe(
      'Git put another version in place, without 3 marks that were shown. They are kept in a.kept-1.yaml.',
    );
    expect(s.ids_('a.kept-1.yaml')).toBe('mark0001 mark0002 mark0003');
    expect(s.git('status', '--porcelain', '-uno')).toBe('');
  });

  it('with a bisect that was forgotten swallows no mark: kept beside it, said when it is left, and back in the end', async () => {
    const s = await committed();
    s.git('bisect', 'start');
    await s.out('3');
    writeFileSync(s.job, JOB);
    expect((await s.stood())?.say).toBe(
      'Git is at work on the file: 3 marks that were shown are not in it just now. They are kept in a.kept-1.yaml.',
    );
    expect(s.ids_('a.kept-1.yaml')).toBe('mark0001 mark0002 mark0003');
    expect(await s.files.leave()).toBe(
      '3 marks that were shown are not in a.yaml. They are kept in a.kept-1.yaml.',
    );
    s.git('bisect', 'reset');
    expect((await s.again())?.say).toBe(AGAIN('3 marks that were shown'));
    expect(s.names()).toEqual(['a.yaml']);
  });

  it('with what was stashed has it: said where, and nothing written', async () => {
    const s = await committed();
    await s.out('3');
    s.git('stash', '-q');
    expect((await s.stood())?.say).toBe(
      'Git put another version in place, without 1 mark that was shown.',
    );
    expect(s.ids_()).toBe('mark0001 mark0002');
    s.git('stash', 'pop', '-q');
    expect((await s.stood())?.say).toBeUndefined();
    expect(s.ids_()).toBe('mark0001 mark0002 mark0003');
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
    const rows = answer?.on === 'bench' ? answer.jobs.map((j) => [j.file, j.job, j.next]) : [];
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
