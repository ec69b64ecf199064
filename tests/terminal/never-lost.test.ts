/** The real program on disks, beside programs and in files that would lose a mark. */
import { spawnSync } from 'node:child_process';
import {
  chmodSync,
  chownSync,
  copyFileSync,
  cpSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  writeFileSync,
} from 'node:fs';
import { basename, dirname, join, resolve } from 'node:path';
import { setTimeout as stood } from 'node:timers/promises';
import { describe, expect, it, onTestFinished } from 'vitest';
import { self } from '../../src/job/save/holder.ts';
import { ENTER, ESC, SPACE } from './keys.ts';
import { marked } from './marks.ts';
import { newFolder, type Person, start } from './pty.ts';
import { PUTBACK, pinnedEnv, preload } from './world.ts';

const JOB = `putback: 1
job: Left cover
bolts: {S: M6x25}
pieces:
  cover: {bolts: S S S S S S}
diary:
`;

/** Preloads a disk that fails while `failing` in the folder holds a code. */
const failing = (folder: string) => ({
  NODE_OPTIONS: preload('failing-disk.mjs'),
  FAILING: join(folder, 'failing'),
});

interface Bench {
  folder: string;
  job: string;
  /** Makes the disk fail with this code; '' makes it well. */
  fail(code: string): void;
  run(...args: string[]): { code: number | null; out: string; err: string };
  open(): Promise<Person>;
  /** Opened, with the cover coming off. */
  openOff(): Promise<Person>;
  outs(): number;
  strays(): string[];
}

function bench(text = JOB): Bench {
  const top = newFolder();
  const folder = join(top, 'bench');
  mkdirSync(folder);
  const job = join(folder, 'job.yaml');
  writeFileSync(job, text);
  const env = { ...pinnedEnv(top), ...failing(top) };
  const open = async () => {
    const person = start([PUTBACK, job], { folder, env });
    await person.until(/Left cover/);
    return person;
  };
  return {
    folder,
    job,
    fail: (code) => writeFileSync(join(top, 'failing'), code),
    run(...args) {
      const ran = spawnSync(process.execPath, [PUTBACK, ...args], {
        cwd: folder,
        env,
        encoding: 'utf8',
      });
      return { code: ran.status, out: ran.stdout, err: ran.stderr };
    },
    open,
    async openOff() {
      const person = await open();
      person.press(ENTER, ENTER);
      await person.until(/Next out: \d/);
      return person;
    },
    outs: () => (readFileSync(job, 'utf8').match(/out:/g) ?? []).length,
    strays: () => readdirSync(join(folder, '.putback')).filter((name) => name !== '.gitignore'),
  };
}

const FULL = 'The disk is full: job.yaml is as it was.';

describe('a command whose mark cannot be saved', () => {
  it.each([
    ['ENOSPC', 'no-space', FULL],
    ['EDQUOT', 'no-space', FULL],
    ['EROFS', 'read-only', 'job.yaml is on a disk that cannot be written.'],
    ['EIO', 'io', 'job.yaml could not be written (EIO).'],
  ])('%s: says so, exit 3, the file as it was, nothing lying about', (code, word, say) => {
    const b = bench();
    b.fail(code);
    const plain = b.run('out', 'job.yaml', 'cover', '1');
    expect(plain).toMatchObject({ code: 3, out: '' });
    expect(plain.err).toContain(`Not saved. ${say}`);
    expect(plain.err.trim().split('\n')).toHaveLength(1);
    const { code: exit, out } = b.run('out', 'job.yaml', 'cover', '1', '--json');
    expect({ exit, json: JSON.parse(out) }).toMatchObject({
      exit: 3,
      json: { ok: false, refused: { code: word } },
    });
    expect(readFileSync(b.job, 'utf8')).toBe(JOB);
    expect(b.strays()).toEqual([]);
    b.fail('');
    expect(b.run('out', 'job.yaml', 'cover', '1').code).toBe(0);
  });

  it('write-protected: exit 3; folder gone: exit 2', () => {
    const b = bench();
    chmodSync(b.job, 0o444);
    expect(b.run('out', 'job.yaml', 'cover', '1')).toMatchObject({
      code: 3,
      err: 'Not saved. job.yaml may not be written. Give yourself the right to write it.\n',
    });
    expect(readFileSync(b.job, 'utf8')).toBe(JOB);
    expect(b.run('out', '../gone/job.yaml', 'cover', '1').code).toBe(2);
  });

  it('with the clock set back a year: the order of lines is the order of events', () => {
    const b = bench();
    expect(b.run('out', 'job.yaml', 'cover', '1').code).toBe(0);
    expect(b.run('undo', 'job.yaml', '--at', '2001-01-01T00:00:00+01:00').code).toBe(0);
    expect(b.run('out', 'job.yaml', 'cover', '2', '--at', '2000-01-01T00:00:00+01:00').out).toBe(
      'Cover: 1 of 6 out.\n',
    );
    expect(b.run('check', 'job.yaml')).toMatchObject({ code: 0, err: '' });
    const person = b.run('status', 'job.yaml');
    expect(person.out).toContain('1 of 6 out');
  });
});

describe('a screen whose mark cannot be saved', () => {
  it('says so for as long as it is so, keeps the mark, and saves it by itself when it can', async () => {
    const b = bench();
    const person = await b.openOff();
    person.press(SPACE);
    await person.until('1 of 6 out');
    b.fail('ENOSPC');
    person.press(SPACE);
    expect(await person.until(FULL)).toContain('Not saved');
    expect(b.outs()).toBe(1);
    // Tried again by itself, and still said, with no second bell.
    const bytes = await person.untilBytes((all) => marked(all, 'disk failed') > 1);
    expect(person.frame()).toContain(FULL);
    expect(bytes.split('\x07')).toHaveLength(2);
    b.fail('');
    await person.until('2 of 6 out');
    expect(b.outs()).toBe(2);
    person.press(SPACE);
    await person.until('3 of 6 out');
    expect(b.strays()).toEqual([]);
  });

  it('because the folder has gone: says so, and goes on when it is back', async () => {
    const b = bench();
    const person = await b.openOff();
    renameSync(b.folder, `${b.folder}-away`);
    person.press(SPACE);
    await person.until('job.yaml is not there any more.');
    renameSync(`${b.folder}-away`, b.folder);
    await person.until('1 of 6 out');
    expect(b.outs()).toBe(1);
  });

  it('because it may not be written: can be given up', async () => {
    const b = bench();
    const person = await b.openOff();
    chmodSync(b.job, 0o444);
    person.press(SPACE);
    await person.until('job.yaml may not be written.');
    person.press(ESC);
    await person.until('0 of 6 out');
    expect(readFileSync(b.job, 'utf8')).toBe(JOB);
  });
});

describe('a folder that may not be written', () => {
  /** Root may write everywhere: such a run gives its rights up, and so has to lie where others come to it. */
  const root = process.getuid?.() === 0;
  const NOBODY = 65534;

  const out = (b: Bench) => {
    const reached = newFolder();
    chmodSync(reached, 0o755);
    cpSync(dirname(PUTBACK), reached, { recursive: true });
    const asNobody = join(reached, 'as-nobody.cjs');
    copyFileSync(resolve(import.meta.dirname, 'programs/as-nobody.cjs'), asNobody);
    const args = [join(reached, basename(PUTBACK)), 'out', b.job, 'cover', '1'];
    return spawnSync(process.execPath, root ? ['--require', asNobody, ...args] : args, {
      cwd: '/',
      env: pinnedEnv('/'),
      encoding: 'utf8',
    });
  };

  function closed(mine: boolean): Bench {
    const b = bench();
    chmodSync(dirname(b.folder), 0o755);
    if (mine && root) chownSync(b.job, NOBODY, NOBODY);
    if (!mine) chmodSync(b.job, 0o444);
    chmodSync(b.folder, 0o555);
    onTestFinished(() => chmodSync(b.folder, 0o755));
    return b;
  }

  it('takes marks into a file that may be', () => {
    const b = closed(true);
    expect(out(b)).toMatchObject({ status: 0, stdout: 'Cover: 1 of 6 out.\n' });
    expect(b.outs()).toBe(1);
    expect(existsSync(join(b.folder, '.putback'))).toBe(false);
  });

  it('with a file that may not: told, exit 3', () => {
    const b = closed(false);
    const told = out(b);
    expect(told).toMatchObject({ status: 3, stdout: '' });
    expect(told.stderr).toContain('Not saved. job.yaml may not be written.');
    expect(readFileSync(b.job, 'utf8')).toBe(JOB);
  });
});

describe('two at once', () => {
  it('screens see each other’s marks without a key, and count on from there', async () => {
    const b = bench();
    const one = await b.openOff();
    const other = await b.openOff();
    one.press(SPACE);
    await one.until('1 of 6 out');
    await other.until('1 of 6 out');
    other.press(SPACE);
    await other.until('2 of 6 out');
    await one.until('2 of 6 out');
    expect(b.outs()).toBe(2);
  });

  /** ms. `STOPPED=60000` for a minute more: what counts is that it stood still while the command ran. */
  const stopped = Number(process.env.STOPPED ?? 0);
  it(
    'a screen that is stopped in the middle of anything never keeps a command waiting, and goes on',
    async () => {
      const b = bench();
      const person = await b.openOff();
      person.press(SPACE);
      person.kill('SIGSTOP');
      expect(b.run('note', 'job.yaml', 'meanwhile').code).toBe(0);
      await stood(stopped);
      person.kill('SIGCONT');
      await person.until('1 of 6 out');
      // Only now: keys typed ahead of a mark that had to wait are dropped with its refusal.
      person.press(SPACE, SPACE);
      await person.until('3 of 6 out');
      expect(b.outs()).toBe(3);
      expect(readFileSync(b.job, 'utf8')).toContain('meanwhile');
    },
    60_000 + stopped,
  );

  it.each([
    ['a process that died', { ...self(), pid: 4_194_303 }],
    ['another host', { ...self(), host: 'elsewhere' }],
  ])('a lock that %s left never blocks for more than seconds', async (_, holder) => {
    const b = bench();
    const person = await b.openOff();
    mkdirSync(join(b.folder, '.putback'), { recursive: true });
    const text = { ...holder, nonce: 'n', at: '2026-05-02T08:11:05.123Z' };
    writeFileSync(join(b.folder, '.putback', 'job.yaml.lock'), JSON.stringify(text));
    person.press(SPACE);
    await person.until('1 of 6 out');
    expect(b.outs()).toBe(1);
    expect(b.strays()).toEqual([]);
  });
});

describe('an editor on the same file', () => {
  it('that saves an old text over new marks: they are written again, its edits stay, and a line says so', async () => {
    const b = bench();
    const person = await b.openOff();
    person.press(SPACE, SPACE);
    await person.until('2 of 6 out');
    writeFileSync(b.job, JOB.replace('Left cover', 'Left cover leaks'));
    const frame = await person.until('Written again: 2 marks that were shown.');
    expect(frame).toContain('2 of 6 out');
    expect(b.outs()).toBe(2);
    expect(readFileSync(b.job, 'utf8')).toContain('job: Left cover leaks');
  });

  it('that saves while half typed: the last picture stays; marks wait, and none is told as done', async () => {
    const b = bench();
    const person = await b.openOff();
    person.press(SPACE);
    await person.until('1 of 6 out');
    const whole = readFileSync(b.job, 'utf8');
    writeFileSync(b.job, `${whole}  - {at: [\n`);
    expect(await person.until('cannot be read just now')).toContain('1 of 6 out');
    writeFileSync(b.job, whole.replace('Left cover', 'Left cover leaks'));
    await person.until((s) => !s.includes('cannot be read'));
    person.press(SPACE);
    await person.until('2 of 6 out');
    expect(b.outs()).toBe(2);
  });
});

describe('a file of a newer form', () => {
  it('opens for reading, says why it is not written, and is left alone', async () => {
    const newer = JOB.replace('putback: 1', 'putback: 2').replace(
      'bolts: S S',
      'glue: red, bolts: S S',
    );
    const b = bench(newer);
    expect(b.run('status', 'job.yaml').code).toBe(0);
    const told = b.run('out', 'job.yaml', 'cover', '1');
    expect(told.code).toBe(1);
    expect(told.err).toContain('this putback knows form 1: it reads the file and writes nothing');
    const person = await b.open();
    await person.until(/has form 2, and this putback knows form 1/);
    person.press(ENTER, ENTER);
    await person.until(/STOP[\s\S]*newer form than\s+\|\s+\|\s+this putback knows/);
    person.press('w', 'only to look', ENTER);
    await person.until(/it reads the file and\s+writes nothing into it/);
    expect(readFileSync(b.job, 'utf8')).toBe(newer);
  });
});

describe('after a kill', () => {
  it('the next start of the screens clears what was left', async () => {
    const b = bench();
    mkdirSync(join(b.folder, '.putback'));
    const dead = { ...self(), pid: 4_194_303, nonce: 'n', at: 'x' };
    writeFileSync(join(b.folder, '.putback', 'job.yaml.lock'), JSON.stringify(dead));
    writeFileSync(join(b.folder, '.putback', 'job.yaml.0123456789abcdef.tmp'), 'half');
    await b.open();
    expect(b.strays()).toEqual([]);
  });
});
