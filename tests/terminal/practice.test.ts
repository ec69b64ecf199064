/** The whole practice job in a real terminal: from a bench left alone for weeks to the last bolt tight. */
import { execFileSync } from 'node:child_process';
import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { BACKSPACE, ENTER, ESC, SPACE } from './keys.ts';
import { newFolder, start } from './pty.ts';
import { PUTBACK, pinnedEnv } from './world.ts';

it('the alternator cover comes off, a wrong bolt is stopped, and all goes back tight', async () => {
  const folder = newFolder();
  const bench = join(folder, 'bench');
  const job = join(bench, 'hollin-left-cover.yaml');
  const run = (program: string, ...args: string[]) =>
    execFileSync(program, args, { cwd: bench, env: pinnedEnv(folder), encoding: 'utf8' });
  const person = start([PUTBACK, 'practice', bench], { folder });

  // The bench, then the note of a good workmate, then the pieces.
  await person.until(/> Left cover weeps oil/);
  person.press(ENTER);
  await person.until(/since the last mark[\s\S]*9: stuck/);
  person.press(SPACE);
  await person.until(/> +Alternator cover +coming off, 7 of 11 out/);

  // The last bolts out; the stuck one is in the way.
  person.press(SPACE);
  await person.until('Next out: 10');
  person.press(SPACE);
  await person.until('Next out: 11');
  person.press(SPACE);
  await person.until('Next out: 1.');
  person.press(SPACE);
  await person.until(/STOP[\s\S]*10 of 11 out[\s\S]*9 is still in: stuck[\s\S]*Do not pry/);
  expect(readFileSync(job, 'utf8')).toMatch(/hole: 1, out: S\}\n$/);
  // More Spaces than bolts take nothing stuck out, and no piece off.
  person.press(SPACE.repeat(5));
  person.press(ENTER);
  await person.until('Last to come out: 9');
  person.press(SPACE.repeat(5));
  person.press('o');
  await person.until(/11 of 11 out[\s\S]*it came off/);
  // Enter twice within a moment is a key that is held down: another one lies between.
  person.press('?');
  await person.until(/the piece is off/);
  person.press(ESC);
  await person.until(/11 of 11 out[\s\S]*it came off/);
  person.press(ENTER);
  await person.until(/Where do its bolts lie\?[\s\S]*> cup 2/);
  person.press('cup 2', ENTER);
  await person.until('Alternator cover is off, 11 of 11 bolts in cup 2');

  // What is done while it is off comes first.
  await person.until('Next: Scrape both faces clean and blow out the holes.');
  person.press(SPACE);
  await person.until('it is done');
  person.press(ENTER);
  await person.until(/> +Alternator cover +off, bolts in cup 2[\s\S]*Next: Alternator cover/);

  // The gasket has come; without it the cover would not go on.
  await person.until(/Next: Alternator cover waits for HL-1142 cover gasket/);
  person.press('b');
  await person.until(/> HL-1142 cover gasket +promised/);
  person.press(ENTER);
  await person.until(/> HL-1142 cover gasket +here/);
  person.press(ESC);
  await person.until(/> +Alternator cover +off, bolts in cup 2/);

  // File and find differ at one hole; then what is to be read before it goes back.
  person.press(SPACE);
  await person.until('5: the file says S, M came out.');
  person.press(ENTER);
  await person.until('5: which is true?');
  person.press('k');
  await person.until(/before it closes: what went in must come out[\s\S]*In its place: 2 dowels/);
  person.press('a');
  await person.until(/before the joint is made[\s\S]*The magnet pulls the cover in/);
  person.press('a');
  await person.until('What is in your hand?');

  // The wrong bolt, the right one, and that taken back and put in again.
  person.press('m5', SPACE);
  await person.until(
    /STOP[\s\S]*5 takes S, 25 mm[\s\S]*In your hand: M, 35 mm[\s\S]*It belongs in 4/,
  );
  expect(person.bytes()).toContain('\x07');
  expect(readFileSync(job, 'utf8'), 'a refusal writes nothing').not.toMatch(/hole: 5, in:/);
  person.press(BACKSPACE);
  await person.until('going on, 0 of 11 in by fingers');
  person.press('m', SPACE);
  await person.until('going on, 1 of 11 in by fingers');
  person.press(BACKSPACE);
  await person.until(/going on, 0 of 11 in by fingers[\s\S]*Taken back: 4 in/);
  person.press('m', SPACE);
  await person.until('going on, 1 of 11 in by fingers');
  person.press('.55', SPACE);
  await person.until('going on, 2 of 11 in by fingers');
  person.press('s');
  await person.until('It belongs in 9 holes');
  person.press('a');
  await person.until('7 takes copper under the head: put it under, then Space.');
  person.press(SPACE);
  await person.until('All in, 11 of them by fingers only.');

  // Two passes and once round again, a key a bolt.
  for (const pass of [
    /pass 1 of 3: snug/,
    /pass 2 of 3: full, 10 N·m\s+\(manual 2-17\)/,
    /pass 3 of 3: final/,
  ]) {
    person.press(ENTER);
    await person.until(pass);
    for (let done = 0; done < 11; done++) {
      await person.until(`${done} of 11 done in this pass`);
      person.press(SPACE);
    }
    await person.until((s) => !s.includes('done in this pass'));
  }
  await person.until(/Alternator cover +.*tight/);
  person.press('q');
  expect(await person.exit()).toEqual({ code: 0, signal: 0 });

  // It is all in the file and in git.
  expect(run(process.execPath, PUTBACK, 'check', job)).toBe('');
  const status = JSON.parse(run(process.execPath, PUTBACK, 'status', job, '--json'));
  expect(status.pieces.find((p: { piece: string }) => p.piece === 'alternator')).toMatchObject({
    where: 'tight',
    holes: 11,
    tight: 11,
    trouble: [],
    conflicts: [],
  });
  expect(run('git', 'log', '--format=%s').split('\n').slice(0, 5)).toEqual([
    'Alternator cover gone round once more: 11 bolts',
    'Alternator cover tight: 11 bolts',
    'Alternator cover on: 11 bolts in by fingers',
    'Alternator cover off: 11 bolts',
    'Practice bench',
  ]);
  expect(run('git', 'status', '--porcelain')).toBe('');
});

it('a second time the practice bench of before is found; --new makes another', () => {
  const folder = newFolder();
  const run = (...args: string[]) =>
    execFileSync(process.execPath, [PUTBACK, 'practice', '--no-open', '--json', ...args], {
      env: { ...pinnedEnv(folder), TMPDIR: folder },
      encoding: 'utf8',
    });
  const first = JSON.parse(run());
  expect(first).toMatchObject({ ok: true, changed: true });
  const job = join(first.folder, 'hollin-left-cover.yaml');
  writeFileSync(job, `${readFileSync(job, 'utf8')}`.replace('weeps oil', 'weeps'));
  expect(JSON.parse(run())).toMatchObject({ changed: false, folder: first.folder });
  expect(readFileSync(job, 'utf8')).not.toContain('weeps oil');
  const other = JSON.parse(run('--new'));
  expect(other).toMatchObject({ changed: true });
  expect(other.folder).not.toBe(first.folder);
  rmSync(other.folder, { recursive: true });
  expect(JSON.parse(run())).toMatchObject({ changed: true });
});
