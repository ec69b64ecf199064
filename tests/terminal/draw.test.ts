/** The holes of a new piece drawn in a real terminal: arrows and Space, the file, and what is shown of it. */
import { execFileSync } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { BACKSPACE, DOWN, ENTER, ESC, LEFT, RIGHT, UP } from './keys.ts';
import { newFolder, start } from './pty.ts';
import { PUTBACK, pinnedEnv } from './world.ts';

const JOB = 'putback: 1\njob: Side cover weeps\ndiary:\n';
const SPACE = ' ';
/** From each hole to the next: eleven at uneven distances, the first at 12 o'clock. */
const WALK: readonly (readonly string[])[] = [
  [],
  [RIGHT, RIGHT],
  [RIGHT, RIGHT, RIGHT, DOWN],
  [DOWN, DOWN],
  [DOWN],
  [DOWN, LEFT],
  [LEFT, LEFT, LEFT],
  [DOWN, LEFT],
  [LEFT, LEFT],
  [UP, UP],
  [UP, UP, UP, UP, RIGHT],
];
const DRAWN = [
  '.  11 1  .  2  .  .  .',
  '.  .  .  .  .  .  .  3',
  '.  .  .  .  .  .  .  .',
  '.  .  .  .  .  .  .  4',
  '10 .  .  .  .  .  .  5',
  '.  .  .  7  .  .  6  .',
  '9  .  8  .  .  .  .  .',
];

it('eleven holes of a new piece are drawn with 38 keys, and stand in the file and on the screen as drawn', async () => {
  const folder = newFolder();
  const job = join(folder, 'cover.yaml');
  writeFileSync(job, JOB);
  const person = start([PUTBACK, job], { folder });
  let pressed = 0;
  const press = (...keys: string[]) => {
    pressed += keys.length;
    person.press(...keys);
  };

  await person.until('say what comes off first');
  person.press('o');
  await person.until('What comes off?');
  person.press('side cover', ENTER);
  await person.until('o off, no bolts');
  press('z');
  await person.until(/0 drawn[\s\S]*< {2}>[\s\S]*Walk to hole 1 with the arrows/);
  for (const [i, way] of WALK.entries()) {
    press(...way, SPACE);
    await person.until(`${i + 1} is here. Next: ${i + 2}.`);
  }
  expect(readFileSync(job, 'utf8'), 'nothing is written before it is kept').toBe(JOB);
  press(ENTER);
  const shown = await person.until('Drawn: 11 holes as they lie');
  expect(pressed).toBe(38);

  // Line by line what was drawn: the holes of each row of the picture stand in one row of the screen.
  const seen = shown.split('\n').flatMap((row) => {
    const holes = [...row.matchAll(/\| ?(\d+)\|/g)].map((m) => m[1]);
    return holes.length > 0 ? [holes] : [];
  });
  expect(seen).toEqual(DRAWN.map((l) => l.match(/\d+/g)).filter((l) => l !== null));

  expect(readFileSync(job, 'utf8')).toContain(
    `  side-cover:\n    map: |\n${DRAWN.map((l) => `      ${l}\n`).join('')}`,
  );
  const run = (...args: string[]) =>
    execFileSync(process.execPath, [PUTBACK, ...args], {
      env: pinnedEnv(folder),
      encoding: 'utf8',
    });
  expect(run('check', job)).toBe('');

  // The row typed afterwards knows how many there are.
  person.press('r');
  await person.until('0 of 11 out');
  person.press(ESC);
  await person.until('r type the row');
  person.press(BACKSPACE);
  await person.until('Taken back: map drawn');
  expect(readFileSync(job, 'utf8')).not.toContain('map: |');
});
