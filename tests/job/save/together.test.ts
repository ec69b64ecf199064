import { linkSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, expect, test } from 'vitest';
import { parseDocument } from 'yaml';
import { appendEntry } from '../../../src/job/edit/splice.ts';
import { cleanFolder } from '../../../src/job/save/clean.ts';
import { saveFile } from '../../../src/job/save/save.ts';
import { JOB, line, newFolder, newJob, strays, textOf } from './folder.ts';
import { bundle, busy, type Marker } from './processes.ts';

let run: (...args: string[]) => Marker;
beforeAll(async () => {
  run = await bundle('marker.ts');
});

/** Ids of the diary, in the order of the file, which must be readable. */
function ids(file: string): string[] {
  const doc = parseDocument(textOf(file), { schema: 'failsafe' });
  expect(doc.errors).toEqual([]);
  const { diary } = doc.toJS() as { diary: { id: string }[] | '' };
  return diary === '' ? [] : diary.map((e) => e.id);
}

test.each<[string, (file: string, i: number) => string]>([
  ['one name', (file) => file],
  ['two names of it in two folders', (file, i) => (i % 2 === 0 ? file : second(file))],
])('eight processes marking at once by %s: every mark stands, once', async (_, nameOf) => {
  const file = newJob();
  const markers = Array.from({ length: 8 }, (_, i) => run(nameOf(file, i), `pro${i}`, '40'));
  await Promise.all(markers.map((m) => m.ended));
  const done = markers.flatMap((m) => m.done());
  expect(markers.flatMap((m) => m.said().filter((l) => l.startsWith('failed')))).toEqual([]);
  expect(done).toHaveLength(320);
  expect(ids(file).toSorted()).toEqual(done.toSorted());
  for (const m of markers) {
    const own = m.done();
    expect(ids(file).filter((id) => own.includes(id))).toEqual(own);
  }
  expect(strays(file)).toEqual([]);
});

const others = new Map<string, string>();
/** A hard link to the file in another folder. */
function second(file: string): string {
  const there = others.get(file);
  if (there !== undefined) return there;
  const other = join(newFolder(), 'other.yaml');
  linkSync(file, other);
  others.set(file, other);
  return other;
}

/** A few that always run; the kill at each step of a save stands below. `KILLS=1000` for more. */
const KILLS = Number(process.env.KILLS ?? 30);

test(`${KILLS} kills at random times lose no mark that was shown`, async () => {
  const file = newJob();
  let seed = 20260502 + Number(process.env.SEED ?? 0);
  const random = () => {
    seed = (seed * 1103515245 + 12345) % 2147483648;
    return seed / 2147483648;
  };
  const shown: string[] = [];
  const one = async (n: number) => {
    // Anywhere within the first few saves, however slow the disk is.
    const [marks, more] = [Math.floor(random() * 5), random() * 12];
    const marker = run(file, `k${String(n).padStart(3, '0')}`, '9999');
    await marker.until(() => marker.said().includes('ready') && marker.done().length >= marks);
    await busy(more);
    marker.child.kill('SIGKILL');
    expect(await marker.ended).toBe('SIGKILL');
    shown.push(...marker.done());
  };
  let next = 0;
  const lane = async () => {
    while (next < KILLS) await one(next++);
  };
  await Promise.all([lane(), lane(), lane()]);
  const there = ids(file);
  expect(new Set(there).size).toBe(there.length);
  expect(shown.filter((id) => !there.includes(id))).toEqual([]);
  expect(shown.length).toBeGreaterThan(KILLS);
  await cleanFolder(`${file}/..`);
  // A lock that was made and has no word in it yet may be somebody's: the next save finds that it is nobody's.
  const after = (text: string) => ({ text: appendEntry(text, line('after000')) });
  expect(await saveFile(file, after)).toMatchObject({ ok: true, changed: true });
  expect(strays(file)).toEqual([]);
}, 240_000);

test('a kill at any step leaves the old bytes or the new ones, and the next mark goes through at once', async () => {
  const probe = run(newJob(), 'step', '1', '9999');
  await probe.ended;
  const steps = Number(/steps (\d+)/.exec(probe.said().join('\n'))?.[1]);
  expect(steps).toBeGreaterThan(15);
  const whole = [
    JOB,
    appendEntry(JOB, line('step0000').replace('hole: 4, in: M+clip', 'hole: 1, in: S')),
  ];
  const seen = new Set<string>();
  const one = async (step: number) => {
    const file = newJob();
    const marker = run(file, 'step', '1', String(step));
    expect(await marker.ended).toBe('SIGKILL');
    const left = textOf(file);
    expect(whole).toContain(left);
    seen.add(left);
    // A lock that only stands still is never broken here: that of the dead has to be seen as such.
    const patience = { wait: 1000, still: Number.POSITIVE_INFINITY };
    const after = (text: string) => ({ text: appendEntry(text, line('after000')) });
    const saved = await saveFile(file, after, { patience });
    expect(saved).toMatchObject({
      ok: true,
      changed: true,
      text: appendEntry(left, line('after000')),
    });
    expect(strays(file)).toEqual([]);
  };
  for (let step = 1; step <= steps; step += 2) {
    await Promise.all([one(step), ...(step < steps ? [one(step + 1)] : [])]);
  }
  expect(seen.size).toBe(2);
}, 240_000);

test.each(['writeFileSync', 'fsyncSync', 'renameSync', 'unlinkSync'])(
  'a holder stopped at its %s does not keep others waiting, and loses nothing when it goes on',
  async (step) => {
    const file = newJob();
    const marker = run(file, 'stop', '3', step);
    await marker.until(() => marker.said().includes('stopping'));
    const saved = await saveFile(file, (text) => ({ text: appendEntry(text, line('other000')) }), {
      patience: { wait: 500, still: 300 },
    });
    expect(saved).toMatchObject({ ok: true, changed: true });
    marker.child.kill('SIGCONT');
    expect(await marker.ended).toBe(0);
    expect(marker.done()).toEqual(['stop0000', 'stop0001', 'stop0002']);
    expect(ids(file).toSorted()).toEqual(['other000', 'stop0000', 'stop0001', 'stop0002']);
    expect(strays(file)).toEqual([]);
  },
);
