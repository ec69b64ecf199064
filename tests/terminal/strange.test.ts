/** The real screens over a folder that was made to harm, or that changes under them: told, and left by Ctrl-C. */
import { execFileSync } from 'node:child_process';
import {
  existsSync,
  lstatSync,
  mkdirSync,
  readFileSync,
  renameSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { CTRL_C, ENTER, SPACE } from './keys.ts';
import { newFolder, type Person, start } from './pty.ts';
import { PUTBACK } from './world.ts';

const JOB =
  'putback: 1\njob: Left cover\nbolts: {S: M6x25}\npieces:\n  cover: {bolts: S S S S}\ndiary:\n';

function bench() {
  const top = newFolder();
  const folder = join(top, 'bench');
  mkdirSync(folder);
  const job = join(folder, 'job.yaml');
  writeFileSync(job, JOB);
  return { top, folder, job, open: (on = job) => start([PUTBACK, on], { folder }) };
}

async function leaves(person: Person): Promise<void> {
  // What would be lost is asked about once.
  if (person.frame().startsWith('Not saved')) {
    person.press(CTRL_C);
    await person.until('Leave without it?');
  }
  person.press(CTRL_C);
  expect((await person.exit()).signal).toBe(0);
  expect(person.bytes()).not.toContain('fault of its own');
}

describe('settings of a bench that are', () => {
  it.each<[string, (path: string) => unknown]>([
    ['a link to the terminal', (path) => symlinkSync('/dev/tty', path)],
    ['a link to a device without end', (path) => symlinkSync('/dev/zero', path)],
    ['a pipe that nobody writes', (path) => execFileSync('mkfifo', [path])],
  ])('%s: the job opens, the line says so, keys and Ctrl-C work', async (_, make) => {
    const b = bench();
    make(join(b.folder, 'bench.yaml'));
    const person = b.open();
    await person.until(/bench\.yaml is a (link|pipe), not a plain file\./);
    person.press(ENTER);
    await person.until(/Cover/);
    await leaves(person);
  });
});

describe('a repository that brings a journal of its own', () => {
  it('and a link beside it: nothing outside is written, and what is not ours is named', async () => {
    const b = bench();
    const profile = join(b.top, 'profile');
    const mine = '# my shell settings\n';
    writeFileSync(profile, mine);
    symlinkSync('../profile', join(b.folder, 'notes'));
    mkdirSync(join(b.folder, '.putback'));
    writeFileSync(join(b.folder, '.putback', '.gitignore'), '*\n');
    const after = `${mine}touch owned\n`;
    const journal = `0 ${after.length}\n${after}\nwhole\n`;
    writeFileSync(join(b.folder, '.putback', 'notes.journal'), journal);
    const person = b.open(b.folder);
    await person.until(
      /\.putback holds what is none of putback's, and it is left alone:\s+notes\.journal\./,
    );
    await leaves(person);
    expect(readFileSync(profile, 'utf8')).toBe(mine);
    expect(readFileSync(join(b.folder, '.putback', 'notes.journal'), 'utf8')).toBe(journal);
  });
});

describe('a job file that becomes, while it is open,', () => {
  const AWAY: [string, (b: ReturnType<typeof bench>) => unknown, string | RegExp][] = [
    ['a pipe', ({ job }) => execFileSync('mkfifo', [job]), 'job.yaml is a pipe, not a plain file.'],
    ['a folder', ({ job }) => mkdirSync(job), 'job.yaml is a folder, not a plain file.'],
    ['a link in a circle', ({ job }) => symlinkSync('job.yaml', job), 'leads round in a circle'],
    [
      'a link to a device',
      ({ job }) => symlinkSync('/dev/zero', job),
      'is a link to another file now.',
    ],
    [
      'a link to the terminal',
      ({ job }) => symlinkSync('/dev/tty', job),
      'is a link to another file now.',
    ],
    [
      'a link to another job',
      ({ job, top }) => {
        writeFileSync(join(top, 'theirs.yaml'), JOB);
        symlinkSync('../theirs.yaml', job);
      },
      'job.yaml is a link to another file now.',
    ],
    [
      'bytes',
      ({ job }) => writeFileSync(job, Buffer.from([0xff, 0xfe, 0, 1])),
      'is not UTF-8 text.',
    ],
    [
      'a folder elsewhere',
      ({ folder, job }) => {
        writeFileSync(job, JOB);
        renameSync(folder, `${folder}-away`);
      },
      'job.yaml is not there any more.',
    ],
    [
      'other YAML',
      ({ job }) => writeFileSync(job, 'services: {web: {image: web}}\n'),
      /being saved by another\s+program/,
    ],
    [
      'a bare first line',
      ({ job }) => writeFileSync(job, 'putback: 1\n'),
      /being saved by another\s+program/,
    ],
  ];

  it.each(AWAY)(
    '%s: the mark is not told as done, nothing is written, and it can be left',
    async (_, make, say) => {
      const b = bench();
      const person = b.open();
      await person.until(/Left cover/);
      person.press(ENTER, ENTER);
      await person.until(/Next out: \d/);
      person.press(SPACE);
      await person.until('1 of 4 out');
      const before = readFileSync(b.job);
      rmSync(b.job);
      make(b);
      const there = existsSync(b.job) && lstatSync(b.job).isFile() ? readFileSync(b.job) : null;
      person.press(SPACE);
      await person.until(say);
      await leaves(person);
      if (there !== null) expect(readFileSync(b.job)).toEqual(there);
      const theirs = join(b.top, 'theirs.yaml');
      if (existsSync(theirs)) expect(readFileSync(theirs, 'utf8')).toBe(JOB);
      // And the mark that was shown is beside it, unless the whole folder has gone.
      if (existsSync(b.folder)) {
        expect(readFileSync(join(b.folder, 'job.kept-1.yaml'))).toEqual(before);
        expect(person.bytes()).toContain('job.kept-1.yaml');
      }
    },
  );
});
