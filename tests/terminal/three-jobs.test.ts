/** Three whole jobs in a real terminal, each from an empty folder, as lists of keys. */
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { countKeys, GEARBOX, NO_START, presses, SIDE_COVER, type Step } from './jobs.ts';
import { newFolder, type Person, start } from './pty.ts';
import { PUTBACK } from './world.ts';

async function play(person: Person, steps: readonly Step[]): Promise<void> {
  for (const { what, keys, seen } of steps) {
    const [last, ...before] = presses(keys).reverse();
    for (const { bytes } of before.reverse()) person.press(bytes);
    person.press(last?.bytes ?? '');
    await person.until(seen).catch((error: Error) => {
      throw new Error(`${what} (${keys}): ${error.message}`);
    });
  }
}

function bench(): { folder: string; open: () => Promise<Person>; file: () => string } {
  const home = newFolder();
  const folder = join(home, 'bench');
  mkdirSync(folder);
  return {
    folder,
    async open() {
      const person = start([PUTBACK, folder], { folder: home });
      await person.until(/No job file here yet|1 job/);
      return person;
    },
    file: () => join(folder, readdirSync(folder).find((f) => f.endsWith('.yaml')) ?? ''),
  };
}

/** Everything in the file happened so many days earlier. */
function older(file: string, days: number): void {
  const text = readFileSync(file, 'utf8').replace(/at: (\d{4}-\d\d-\d\d)/g, (_, day: string) => {
    const then = new Date(Date.parse(day) - days * 86_400_000);
    return `at: ${then.toISOString().slice(0, 10)}`;
  });
  writeFileSync(file, text);
}

it('a side cover: stuck, the wrong gasket, three weeks, a stray bolt, tight', async () => {
  const { open, file } = bench();
  const first = await open();
  await play(first, SIDE_COVER.before);
  first.press('q');
  await first.exit();
  expect(first.bytes()).toContain('Stands open: Side cover');
  older(file(), 21);
  const person = await open();
  person.press('\r');
  await person.until(
    // A day more where midnight came between.
    /2[12] days since the last mark[\s\S]*Side cover since [\s\S]*covered, plugged\?/,
  );
  await play(person, [...SIDE_COVER.after, ...SIDE_COVER.back, ...SIDE_COVER.run]);
  await play(person, SIDE_COVER.roundTwo);
  const text = readFileSync(file(), 'utf8');
  expect(text).toContain('torque: 10 N·m, manual 2-17');
  expect(text.match(/tight: full/g)?.length).toBeGreaterThanOrEqual(15);
});

it('a gearbox: three covers in one another, inch-pounds, a pulled thread, a spring', async () => {
  const { open, file } = bench();
  await play(await open(), GEARBOX);
  const text = readFileSync(file(), 'utf8');
  expect(text).toContain('torque: 88 in-lb, manual 6-2');
  expect(text).toContain('says: "wire insert M6 x 9"');
  expect(text).toMatch(/caution: "?spring, goggles!/);
});

it('it will not start, with nothing planned', async () => {
  const { open, file } = bench();
  await play(await open(), NO_START);
  const text = readFileSync(file(), 'utf8');
  expect(text).toContain('limit: 0.8..1.2 ohm');
  expect(text).toMatch(/task: coil, done: failed/);
});

it('round two, a wrong mark and a part take no more than three keys beside what is typed', () => {
  expect(countKeys(SIDE_COVER.roundTwo)).toBeLessThanOrEqual(3);
  expect(countKeys(SIDE_COVER.wrongMark)).toBeLessThanOrEqual(3);
  expect(countKeys(SIDE_COVER.part)).toBeLessThanOrEqual(3);
});
