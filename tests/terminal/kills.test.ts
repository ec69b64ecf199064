/**
 * The real program, killed at random moments while it marks. `KILLS=1000` makes it a thousand; the moments come
 * from a seed, `SEED=1` and so on for others.
 */
import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { readJob } from '../../src/job/read.ts';
import { busy } from '../job/save/processes.ts';
import { ENTER, SPACE } from './keys.ts';
import { newFolder, start } from './pty.ts';
import { PUTBACK, pinnedEnv } from './world.ts';

const KILLS = Number(process.env.KILLS ?? 32);
/** A start of the screens takes as long as four commands. */
const BY_SCREENS = Math.ceil(KILLS / 8);
const BY_COMMANDS = KILLS - BY_SCREENS;
const LIMIT = 60_000 + KILLS * 2000;

function seeded(seed: number): () => number {
  let s = seed + Number(process.env.SEED ?? 0);
  return () => {
    s = (s * 1103515245 + 12345) % 2147483648;
    return s / 2147483648;
  };
}

/** The file is whole and has each mark once; answers the ids. */
function idsIn(job: string): string[] {
  const read = readJob(readFileSync(job, 'utf8'), 'job.yaml');
  expect(read.faults).toEqual([]);
  const ids = read.entries.map((e) => e.id);
  expect(new Set(ids).size).toBe(ids.length);
  return ids;
}

const strays = (folder: string) =>
  readdirSync(join(folder, '.putback')).filter((name) => name !== '.gitignore');

const jobOf = (pieces: number, holes: number) => {
  const row = Array(holes).fill('S').join(' ');
  const lines = Array.from({ length: pieces }, (_, i) => `  p${i}: {bolts: ${row}}`);
  return ['putback: 1', 'job: Many', 'bolts: {S: M6x25}', 'pieces:', ...lines, 'diary:', ''].join(
    '\n',
  );
};

it(
  `killed ${BY_SCREENS} times while the screens mark: every mark that was to be seen is in the file`,
  async () => {
    const folder = newFolder();
    const job = join(folder, 'job.yaml');
    const random = seeded(20260502);
    let seen = 0;
    for (let n = 0; n < BY_SCREENS; n++) {
      if (n % 20 === 0) writeFileSync(job, jobOf(1, 200));
      const before = idsIn(job).length;
      const person = start([PUTBACK, job], { folder });
      await person.until(/another piece/);
      person.press(ENTER, ENTER);
      await person.until(/Next out/);
      const out = (frame: string) => Number(/(\d+) of 200 out/.exec(frame)?.[1] ?? 0);
      person.press(SPACE.repeat(8));
      // Behind some of the eight, and somewhere in the next ones.
      const [marks, more] = [Math.floor(random() * 8), random() * 40];
      await person.until((frame) => out(frame) >= before + marks);
      await busy(more);
      person.kill('SIGKILL');
      expect((await person.exit()).signal).toBe(9);
      const shown = out(person.frame());
      seen += shown - before;
      expect(idsIn(job).length).toBeGreaterThanOrEqual(shown);
    }
    expect(seen).toBeGreaterThan(BY_SCREENS);
    const last = start([PUTBACK, job], { folder });
    await last.until(/another piece/);
    expect(strays(folder)).toEqual([]);
  },
  LIMIT,
);

it(
  `killed ${BY_COMMANDS} times while two commands at a time mark: every mark that was told is in the file`,
  async () => {
    const folder = newFolder();
    const job = join(folder, 'job.yaml');
    writeFileSync(job, jobOf(10, 120));
    const random = seeded(4711);
    const told: string[] = [];
    const env = pinnedEnv(folder);
    // How long one takes here, when nobody kills it and another runs beside it.
    const begun = performance.now();
    const first = ['119', '120'].map((hole) =>
      end(spawn(process.execPath, [PUTBACK, 'out', job, 'p0', hole], { env })),
    );
    await Promise.all(first);
    const takes = performance.now() - begun;
    let next = 0;
    const lane = async () => {
      while (next < BY_COMMANDS) {
        const n = next++;
        const moment = 0.4 + random();
        const id = `kill${String(n).padStart(4, '0')}`;
        const hole = String(Math.floor(n / 10) + 1);
        const args = ['out', job, `p${n % 10}`, hole, '--id', id, '--json'];
        const child = spawn(process.execPath, [PUTBACK, ...args], { env });
        let out = '';
        child.stdout.on('data', (part) => {
          out += String(part);
        });
        const ended = end(child);
        // Some before they have begun, some that come to their end, and the others in between.
        if (n % 10 > 0) await (n % 10 === 5 ? ended : busy(takes * moment));
        child.kill('SIGKILL');
        await ended;
        if (out.includes(`"id":"${id}"`)) told.push(id);
        // A disk that stands still for seconds, with the lock held meanwhile: told as not saved.
        else if (out !== '') expect(JSON.parse(out)).toMatchObject({ refused: { code: 'locked' } });
      }
    };
    await Promise.all([lane(), lane()]);
    const ids = idsIn(job);
    expect(told.filter((id) => !ids.includes(id))).toEqual([]);
    expect(told.length).toBeGreaterThan(0);
    expect(told.length).toBeLessThan(BY_COMMANDS);
    const args = [PUTBACK, 'in', job, 'p0', '120', '--kind', 'S'];
    expect(spawnSync(process.execPath, args, { env }).status).toBe(0);
    expect(strays(folder)).toEqual([]);
  },
  LIMIT,
);

const end = (child: ChildProcess) => new Promise<void>((done) => child.on('close', () => done()));
