/** The built program in a real terminal: what it is opened on, how big, in which world, and how it ends. */
import { execFileSync, spawnSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { afterwards, alternateScreens, leftOn } from './clean.ts';
import { ALT_B, CTRL_C, CTRL_W, CTRL_Z, DOWN, ENTER, ESC, paste, SPACE } from './keys.ts';
import { AT_REST, marked } from './marks.ts';
import { type How, newFolder, type Person, start } from './pty.ts';
import { PUTBACK, pinnedEnv } from './world.ts';

const JOB = `putback: 1
job: Left cover
machine: Hollin 400 Twin
bolts:
  S: M6x25 flange, 8 mm
  M: M6x35 flange, 8 mm
pieces:
  cover: {bolts: S S M S}
diary:
`;

interface Opened {
  person: Person;
  folder: string;
  job: string;
}

/** One job, opened at its pieces. */
async function open(how: How = {}, text = JOB): Promise<Opened> {
  const folder = how.folder ?? newFolder();
  const job = join(folder, 'left cover.yaml');
  writeFileSync(job, text);
  const person = start([PUTBACK, job], { ...how, folder });
  await person.until(/Cover/);
  return { person, folder, job };
}

/** The same, with the piece coming off. */
async function openOff(how: How = {}): Promise<Opened> {
  const opened = await open(how);
  opened.person.press(ENTER);
  await opened.person.until(/take it off/);
  opened.person.press(ENTER);
  await opened.person.until(/Next out: \d/);
  return opened;
}

describe('keys', () => {
  it('typed ahead mark as many bolts as there were keys, each on disk', async () => {
    const { person, job } = await openOff();
    person.press(SPACE, SPACE, SPACE);
    await person.until('3 of 4 out');
    expect(readFileSync(job, 'utf8').match(/out:/g)).toHaveLength(3);
  });

  it('pasted over a piece change nothing', async () => {
    const { person, job } = await openOff();
    person.press(paste('  \r \r'));
    await person.until('A paste counts only where a text is asked for');
    expect(readFileSync(job, 'utf8')).toBe(JOB);
    // Any key takes the line away; then a paste comes whose end is lost.
    person.press(DOWN);
    await person.until((s) => !s.includes('A paste counts'));
    person.press(`${ESC}[200~   `);
    await person.until('A paste counts only where a text is asked for');
    person.press(SPACE, SPACE, SPACE);
    await person.until('3 of 4 out');
  });

  it('in a field: Ctrl and Alt edit and never type, a paste is one line', async () => {
    const { person, job } = await open();
    person.press('n');
    await person.until('> ');
    person.press('one two', CTRL_W, ALT_B, paste('a\tb\r\nc '), 'é', ENTER);
    await person.until('Noted.');
    expect(readFileSync(job, 'utf8')).toContain('note: "a b c éone"');
  });

  it('Esc goes back step by step, never out, and an arrow cut in two types nothing', async () => {
    const { person } = await openOff();
    person.press(ESC);
    await person.until(/take it off/);
    person.press('[A');
    person.press(ESC.repeat(20));
    await person.until('This is the job. Every mark is on disk.');
    person.press('n');
    await person.until('> ');
    person.press(ESC);
    await person.until('another piece');
  });
});

describe('the frame', () => {
  it('at 80 × 24 and at any other size, down to a line that says how much is enough', async () => {
    const { person } = await openOff();
    /** The whole frame is there: something stands in its last row, or the one line that a small window has. */
    const drawn = (columns: number, rows: number) => (frame: string) => {
      const lines = frame.split('\n');
      if (columns < 60 || rows < 16) {
        const bare = (text: string) => text.replace(/\s/g, '');
        const said = bare(`${columns}x${rows}: too small, 60x16 is enough. --lines needs no room.`);
        // Broken at the edge, and cut in the last row, with dots where it can.
        const seen = bare(frame).replace(/\.+$/, '');
        return seen !== '' && said.startsWith(seen);
      }
      const count = (isSo: (line: string) => boolean) => lines.filter(isSo).length;
      return (
        count((line) => line.includes('Next out')) === 1 &&
        count((line) => line.startsWith('Cover')) === 1 &&
        lines.length === rows &&
        lines.at(-1) !== ''
      );
    };
    const sizes = [
      [120, 40],
      [250, 80],
      [30, 8],
      [1, 1],
      [79, 23],
      [200, 50],
      [3, 5],
      [20, 5],
      [100, 30],
    ] as const;
    for (const [columns, rows] of sizes) person.resize(columns, rows);
    await person.until(drawn(100, 30));
    for (const [columns, rows] of sizes) {
      person.resize(columns, rows);
      await person.until(drawn(columns, rows));
    }
  });

  it('too small, it can still be left', async () => {
    const { person } = await open();
    person.resize(20, 5);
    await person.until(/too small/);
    person.press('q');
    expect((await person.exit()).code).toBe(0);
  });

  it('too small from the start', async () => {
    const folder = newFolder();
    writeFileSync(join(folder, 'a.yaml'), JOB);
    const person = start([PUTBACK, 'a.yaml'], { folder, columns: 30, rows: 6 });
    await person.until(/^30x6: too small/);
    person.press(CTRL_C);
    expect((await person.exit()).code).toBe(0);
  });

  it('with CI=1, and with no locale in ASCII', async () => {
    const { person } = await openOff({ env: { CI: '1', LANG: 'C' } });
    expect(person.bytes()).toMatch(/^[\x00-\x7f]*$/);
  });

  it('with NO_COLOR has no colour and no weight', async () => {
    const { person } = await openOff({ env: { NO_COLOR: '1', FORCE_COLOR: '3' } });
    person.press(SPACE);
    await person.until('1 of 4 out');
    expect(person.bytes()).not.toMatch(/\x1b\[[\d;]*m/);
  });

  it('never turns on the mouse, and is still while nobody presses a key', async () => {
    const { person } = await openOff({ env: { NODE_OPTIONS: AT_REST } });
    person.kill('SIGUSR2');
    const bytes = await person.untilBytes((all) => marked(all, 'at rest') > 0);
    expect(bytes).not.toMatch(/\x1b\[\?100\d(;\d+)*h/);
  });
});

describe('what others do to the file', () => {
  it('is shown without a key', async () => {
    const { person, job, folder } = await openOff();
    execFileSync(process.execPath, [PUTBACK, 'out', job, 'cover', '1', '2'], {
      cwd: folder,
      env: pinnedEnv(folder),
    });
    await person.until('2 of 4 out');
    person.press(SPACE);
    await person.until('3 of 4 out');
    expect(readFileSync(job, 'utf8').match(/out:/g)).toHaveLength(2);
  });

  it('a file that an editor breaks keeps what was read, and says so', async () => {
    const { person, job } = await openOff();
    writeFileSync(job, `${JOB}  - {at: [\n`);
    await person.until('left cover.yaml was changed and cannot be read just now.');
    writeFileSync(job, JOB.replace('S S M S', 'S S M S S'));
    await person.until('0 of 5 out');
  });

  it('hostile names and notes never reach the terminal as they are', async () => {
    const evil = JOB.replace('Left cover', '"Left\\e]0;owned\\a\\u202ecover"').replace(
      'Hollin 400 Twin',
      '"Twin\\e[31m\\e]8;;http://x\\e\\\\\\ncut"',
    );
    const { person } = await open({}, evil);
    const screen = await person.until('Left');
    expect(screen).toContain('\\x1b]0;owned\\x07\\u202ecover');
    const own = /\x1b(\[[\d;?<]*[A-Za-z])/g;
    expect(person.bytes().replace(own, '')).not.toMatch(/[\x00-\x09\x0b\x0c\x0e-\x1f\x7f\u202e]/);
  });
});

describe('a mark that was shown', () => {
  it('is on disk when the program is killed the moment it shows', async () => {
    const { person, job } = await openOff();
    for (let n = 1; n <= 3; n++) {
      person.press(SPACE);
      await person.until(`${n} of 4 out`);
      expect(readFileSync(job, 'utf8').match(/out:/g)).toHaveLength(n);
    }
    person.kill('SIGKILL');
    expect((await person.exit()).signal).toBe(9);
    const ran = spawnSync(process.execPath, [PUTBACK, 'status', job], { encoding: 'utf8' });
    expect(ran.stdout).toContain('3 of 4 out');
  });
});

describe('the end', () => {
  it.each([
    ['q', 'q'],
    ['Ctrl-C', CTRL_C],
  ])('by %s: one line of what is next, code 0, the terminal clean', async (_, key) => {
    const { person } = await openOff();
    person.press(SPACE);
    await person.until('1 of 4 out');
    person.press(key);
    expect(await person.exit()).toEqual({ code: 0, signal: 0 });
    expect(afterwards(person.bytes())).toMatch(
      /left cover\.yaml: Cover: \d bolts to come out\.\r\n(\x1b\[\?25h)*$/,
    );
    expect(leftOn(person.bytes())).toEqual([]);
    expect(alternateScreens(person.bytes())).toEqual({ entered: 1, left: 1 });
  });

  it.each([
    ['SIGINT', 2],
    ['SIGTERM', 15],
    ['SIGHUP', 1],
  ] as const)('by %s: dies by it, the terminal clean', async (name, signal) => {
    const { person } = await openOff();
    person.kill(name);
    expect((await person.exit()).signal).toBe(signal);
    expect(leftOn(person.bytes())).toEqual([]);
    expect(alternateScreens(person.bytes())).toEqual({ entered: 1, left: 1 });
    expect(person.alternate()).toBe(false);
  });

  it('Ctrl-Z in a field is undo, outside it stops and comes back', async () => {
    const { person } = await open();
    person.press('n');
    await person.until('> ');
    person.press('abc');
    await person.until('> abc');
    person.press(CTRL_Z);
    await person.until(/> ab$/m);
    person.press(ESC);
    await person.until('another piece');
    person.press(CTRL_Z);
    await person.untilBytes((b) => alternateScreens(b).entered === 2);
    await person.until('another piece');
  });
});

describe('not on a terminal', () => {
  it.each([
    ['a file', ['left cover.yaml'], "putback status '"],
    ['nothing', [], 'putback status FILE'],
  ])('opened on %s: one plain line, code 2, nothing on stdout', (_, args, way) => {
    const folder = newFolder();
    writeFileSync(join(folder, 'left cover.yaml'), JOB);
    const ran = spawnSync(process.execPath, [PUTBACK, ...args], {
      cwd: folder,
      env: pinnedEnv(folder),
      encoding: 'utf8',
      input: '',
    });
    expect({ code: ran.status, out: ran.stdout }).toEqual({ code: 2, out: '' });
    expect(ran.stderr).toMatch(/^putback: the screens need a terminal[^\n\x1b]*\n$/);
    expect(ran.stderr).toContain(way);
  });
});

it('left while all waits, it says for what', async () => {
  const text = `putback: 1
job: Fuel pipe
pieces: {cover: {}}
buy: {clip: {what: Hose clip, for: cover on}}
diary:
  - {at: 2026-01-02T08:00:00+00:00, id: aaaaaaa1, piece: cover, removed: all}
  - {at: 2026-01-02T08:01:00+00:00, id: aaaaaaa2, buy: clip, state: ordered, promised: 2026-01-20}
`;
  const { person } = await open({}, text);
  person.press('q');
  await person.exit();
  expect(afterwards(person.bytes())).toMatch(/Cover waits for Hose clip/);
});
