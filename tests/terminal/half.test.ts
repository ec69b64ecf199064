/** The real program ended in the middle of something: what was half typed and what was not saved is there again. */
import { chmodSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { ENTER, ESC } from './keys.ts';
import { newFolder, type Person, start } from './pty.ts';
import { PUTBACK, pinnedEnv } from './world.ts';

const JOB = `putback: 1
job: Left cover
bolts: {S: M6x25}
pieces:
  cover: {bolts: S S S S S S}
diary:
`;

interface Place {
  job: string;
  open(): Promise<Person>;
  marks(): number;
}

function place(): Place {
  const top = newFolder();
  const folder = join(top, 'bench');
  mkdirSync(folder);
  const job = join(folder, 'job.yaml');
  writeFileSync(job, JOB);
  return {
    job,
    async open() {
      const person = start([PUTBACK, job], { folder, env: pinnedEnv(top) });
      await person.until(/Left cover|Not saved/);
      return person;
    },
    marks: () => (readFileSync(job, 'utf8').match(/id:/g) ?? []).length,
  };
}

it.each(['SIGKILL', 'SIGHUP', 'SIGTERM', 'Ctrl-C'] as const)(
  'a note half typed is there again after %s, and gone once it is kept',
  async (end) => {
    const p = place();
    const first = await p.open();
    first.press('n', 'weeps at 4, look');
    await first.until('> weeps at 4, look');
    if (end === 'Ctrl-C') {
      first.press('\x03');
      await first.until('What you were typing is kept, and stands where you left it.');
    } else first.kill(end);
    await first.exit();

    const second = await p.open();
    await second.until('A text you were typing is kept');
    second.press('n');
    await second.until('> weeps at 4, look');
    second.press(' again', ENTER);
    await second.until('Noted');
    expect(readFileSync(p.job, 'utf8')).toContain('"weeps at 4, look again"');
    second.press('q');
    await second.exit();

    const third = await p.open();
    third.press('n');
    await third.until(/^> *$/m);
    expect(third.frame()).not.toContain('weeps at 4, look again\n');
  },
);

it.each(['SIGKILL', 'Ctrl-C', 'Esc q'] as const)(
  'a new job half typed on the bench is there again after %s, and gone once it is started',
  async (end) => {
    const top = newFolder();
    const bench = async () => {
      const person = start([PUTBACK, top], { folder: top, env: pinnedEnv(top) });
      await person.until('No job file here yet');
      return person;
    };
    const first = await bench();
    first.press('+', 'weeps oil, Hol');
    await first.until('> weeps oil, Hol');
    if (end === 'SIGKILL') first.kill(end);
    else if (end === 'Ctrl-C') {
      first.press('\x03');
      await first.until('What you were typing is kept, and stands where you left it.');
    } else {
      first.press(ESC);
      await first.until('on with the new job');
      first.press('q');
    }
    await first.exit();

    const second = await bench();
    await second.until('What you were typing of a new job is kept');
    second.press('+');
    await second.until('> weeps oil, Hol');
    second.press('lin', ENTER);
    await second.until('weeps oil');
    await second.until('say what comes off first');
    expect(readFileSync(join(top, 'weeps-oil.yaml'), 'utf8')).toContain('machine: Hollin');
    second.press(ESC);
    await second.until('+ a new job');
    second.press('+');
    await second.until(/^> *$/m);
    second.press('\x03');
    await second.exit();
  },
);

it("what is only offered is nobody's text: nothing is said of it", async () => {
  const p = place();
  const out =
    'at: 2026-04-11T18:25:00+02:00, id: dSf9pf25, piece: cover, hole: 1, out: S, tray: cup 2';
  writeFileSync(p.job, `${JOB}  - {${out}}\n`);
  const first = await p.open();
  first.press(ENTER, ENTER, 'a');
  await first.until('6 of 6 out');
  first.press(ENTER);
  await first.until('> cup 2');
  first.press('\x03');
  await first.exit();
  expect(first.frame()).toContain('job.yaml:');
  expect(first.frame()).not.toContain('What you were typing');
});

/** A screen with a mark that the disk does not take. */
async function unsaved(p: Place): Promise<Person> {
  const person = await p.open();
  chmodSync(p.job, 0o444);
  person.press('n', 'weeps', ENTER);
  await person.until('Not saved');
  return person;
}

it('a mark that was not saved outlives a kill, and is asked about', async () => {
  const p = place();
  const first = await unsaved(p);
  first.kill('SIGKILL');
  await first.exit();
  chmodSync(p.job, 0o644);

  const second = await p.open();
  await second.until('was not in the file when putback last ended');
  expect(second.frame()).toContain('weeps');
  expect(p.marks()).toBe(0);
  second.press(ENTER);
  await second.until(/> Cover/);
  expect(p.marks()).toBe(1);
  second.press('q');
  await second.exit();

  const third = await p.open();
  expect(await third.until(/> Cover/)).not.toContain('Not saved');
});

it.each(['q', '\x03'])(
  'leaving with %j is asked about once, is exit 3 and says what is lost',
  async (key) => {
    const p = place();
    const person = await unsaved(p);
    person.press(key);
    await person.until('Leave without it?');
    person.press(key);
    expect(await person.exit()).toMatchObject({ code: 3 });
    await person.untilBytes((all) => all.includes('Not saved: '));
    expect(person.bytes()).toContain(
      'It is kept, and asked about when this job is opened here again.',
    );
    const again = await p.open();
    await again.until('was not in the file');
    again.press(ESC);
    await again.until(/> Cover/);
    expect(p.marks()).toBe(0);
  },
);
