/** Find by its index against a plain scan of the same files, whatever happens to files and index meanwhile. */
import { execFileSync, fork } from 'node:child_process';
import { once } from 'node:events';
import {
  appendFileSync,
  chmodSync,
  copyFileSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  symlinkSync,
  truncateSync,
  unlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { DatabaseSync } from 'node:sqlite';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { findIn, scanFolder } from '../../../src/find/index/find.ts';
import { linesOf } from '../../../src/find/lines.ts';
import { answersIn, bestFirst, question } from '../../../src/find/question.ts';
import { cleanFolder } from '../../../src/job/save/clean.ts';
import { runs } from '../../runs.ts';
import { bundle } from '../../terminal/bundle.ts';
import { madeBench, madeJob, older, seeded, writeAnew } from '../made-bench.ts';

let folder: string;
/** ms. What was changed in the last two seconds is read each time: here all that is made is an hour old. */
const HOUR = 3_600_000;
beforeEach(() => {
  vi.useFakeTimers({ toFake: ['Date'], now: Date.now() + HOUR });
  folder = mkdtempSync(join(tmpdir(), 'putback-find-'));
});
afterEach(() => {
  vi.useRealTimers();
  rmSync(folder, { recursive: true, force: true });
});

function asked(words: readonly string[]) {
  const ask = question(words);
  if (ask === null) throw new Error('no words');
  return ask;
}
const byIndex = (...words: string[]) => findIn(folder, asked(words), () => {}).held.sort(bestFirst);
const byScan = (...words: string[]) => scanFolder(folder, asked(words)).held.sort(bestFirst);
/** A plain scan of files that stay as they are: each is read once, for all questions. */
function scanOnce() {
  const files = readdirSync(folder).filter((name) => name.endsWith('.yaml'));
  const read = files.map(
    (name) => [name, linesOf(readFileSync(join(folder, name), 'utf8'))] as const,
  );
  return (...words: string[]) =>
    read.flatMap(([name, file]) => answersIn(name, file, asked(words))).sort(bestFirst);
}
const indexes = () => readdirSync(join(folder, '.putback')).filter((n) => n.endsWith('.db'));

/** Words that stand in the bench, parts of them, and some that do not. */
function questions(count: number, random: () => number): string[][] {
  const text = [0, 1, 2, 3].map((n) => madeJob(n)).join(' ');
  const words = text.match(/[\p{L}\p{N}][\p{L}\p{N}·-]*/gu) ?? [];
  const one = () => {
    const word = words[Math.floor(random() * words.length)] ?? 'x';
    const how = random();
    if (how < 0.3) return word.slice(0, 1 + Math.floor(random() * word.length));
    if (how < 0.45)
      return word.slice(Math.floor(random() * word.length)).replace(/^[-·]+/, '') || 'm';
    if (how < 0.5) return `${word}q`;
    if (how < 0.6) return `20${10 + Math.floor(random() * 20)}-0${1 + Math.floor(random() * 9)}`;
    return random() < 0.5 ? word.toUpperCase() : word;
  };
  return Array.from({ length: count }, () =>
    Array.from({ length: 1 + Math.floor(random() * 3) }, one),
  );
}

describe('the index', () => {
  it('finds signs of texts without blanks, signs alone, and letters that are typed otherwise, as a plain scan does', () => {
    const said = [
      'Straße gesperrt',
      '交換部品を注文',
      '교체부품',
      '🔧 8 mm',
      'ÆRØ skjøt',
      '⚠️ hot 90°',
      'เปลี่ยนซีลยาง',
    ];
    for (const [i, text] of said.entries())
      writeFileSync(join(folder, `${i}.yaml`), `putback: 1\njob: "${text}"\n`);
    const asked = ['strasse', '部品', '품', '🔧', 'aero', '⚠', '°', 'ยาง'];
    const files = asked.map((word) =>
      byIndex(word)
        .map((f) => f.file[0])
        .join(),
    );
    expect(files).toEqual(['0', '1', '2', '3', '4', '5', '5', '6']);
    for (const word of asked) expect(byIndex(word), word).toEqual(byScan(word));
  });

  it(`answers ${runs(250)} random questions as a plain scan does, some with many answers and some with none`, () => {
    madeBench(folder, 15);
    const random = seeded(4711 + Number(process.env.SEED ?? 0));
    const plain = scanOnce();
    let none = 0;
    let some = 0;
    for (const words of questions(runs(250), random)) {
      const found = byIndex(...words);
      expect(found, words.join(' ')).toEqual(plain(...words));
      if (found.length === 0) none++;
      else some++;
    }
    expect(indexes()).toEqual(['find-1.db']);
    expect([none > 10, some > 50]).toEqual([true, true]);
  });

  it('follows what happens to the files: changed, gone, new, renamed, a link that leads out', () => {
    madeBench(folder, 8);
    expect(byIndex('zebra')).toEqual([]);
    const path = (n: number) => join(folder, `job-0000${n}.yaml`);
    appendFileSync(path(3), '# a zebra was here\n');
    expect(byIndex('zebra').map((f) => f.file)).toEqual(['job-00003.yaml']);
    renameSync(path(3), join(folder, 'other.yaml'));
    expect(byIndex('zebra').map((f) => f.file)).toEqual(['other.yaml']);
    unlinkSync(join(folder, 'other.yaml'));
    expect(byIndex('zebra')).toEqual([]);
    const outside = mkdtempSync(join(tmpdir(), 'putback-find-out-'));
    writeFileSync(join(outside, 'a.yaml'), 'putback: 1\njob: zebra\n');
    symlinkSync(join(outside, 'a.yaml'), join(folder, 'a.yaml'));
    expect(byIndex('zebra')).toEqual([]);
    rmSync(outside, { recursive: true });
  });

  it('a change of the same size with the time of writing put back is seen, as after cp -p and git checkout', () => {
    const file = join(folder, 'job.yaml');
    const put = (word: string) => {
      writeAnew(file, `putback: 1\njob: ${word}\n`);
      utimesSync(file, 1e9, 1e9);
    };
    put('zebra');
    expect([byIndex('zebra').length, byIndex('zebra').length]).toEqual([1, 1]);
    put('camel');
    expect([byIndex('zebra').length, byIndex('camel').length]).toEqual([0, 1]);
    // Another file in its place, as old and as long.
    const other = join(folder, 'other');
    writeFileSync(other, 'putback: 1\njob: llama\n');
    utimesSync(other, 1e9, 1e9);
    renameSync(other, file);
    expect([byIndex('camel').length, byIndex('llama').length]).toEqual([0, 1]);
    // None of it was read each time for being new.
    const db = new DatabaseSync(join(folder, '.putback/find-1.db'));
    expect(db.prepare("SELECT count(*) AS n FROM files WHERE stamp LIKE '%young'").get()?.n).toBe(
      0,
    );
    db.close();
  });

  it('a change of the same size in the same instant is seen', () => {
    vi.useRealTimers();
    const file = join(folder, 'job.yaml');
    for (let i = 0; i < 20; i++) {
      const word = i % 2 === 0 ? 'zebra' : 'camel';
      writeFileSync(file, `putback: 1\njob: ${word}\n`);
      expect(byIndex(word)).toHaveLength(1);
      expect(byIndex(i % 2 === 0 ? 'camel' : 'zebra')).toEqual([]);
    }
  });

  it('is thrown away when it is odd: cut, filled with other bytes, of another form, brought by somebody', () => {
    madeBench(folder, 10);
    const right = byScan('stuck');
    expect(byIndex('stuck')).toEqual(right);
    const newest = () => join(folder, '.putback', indexes().at(-1) ?? '');
    const harms = [
      () => truncateSync(newest(), 5000),
      () => writeFileSync(newest(), 'no database'),
      () => {
        const db = new DatabaseSync(newest());
        db.exec('CREATE TABLE more (a)');
        db.close();
      },
      () => {
        const db = new DatabaseSync(newest());
        db.exec('DROP TABLE lines');
        db.close();
      },
    ];
    harms.forEach((harm, i) => {
      harm();
      expect(byIndex('stuck'), `${i}`).toEqual(right);
      expect(byIndex('stuck'), `${i} again`).toEqual(right);
      expect(indexes()).toEqual([`find-${i + 2}.db`]);
    });
  });

  it('of another folder says nothing of the files of this one', () => {
    madeBench(folder, 5, 1);
    byIndex('stuck');
    const db = new DatabaseSync(join(folder, '.putback/find-1.db'));
    db.exec("UPDATE lines SET text='a lie: zebra'; PRAGMA wal_checkpoint");
    db.close();
    const other = mkdtempSync(join(tmpdir(), 'putback-find-clone-'));
    madeBench(other, 5, 1);
    execFileSync('cp', ['-r', join(folder, '.putback'), other]);
    const held = findIn(other, asked(['stuck']), () => {}).held.sort(bestFirst);
    expect(held.map((h) => h.text)).toEqual(byScan('stuck').map((h) => h.text));
    rmSync(other, { recursive: true });
  });

  it('a folder that cannot be written, or an index that is a link: the same answer without it', () => {
    madeBench(folder, 5);
    const right = byScan('gasket');
    const other = join(folder, 'elsewhere');
    writeFileSync(other, '');
    byIndex('gasket');
    for (const name of readdirSync(join(folder, '.putback'))) {
      if (name.startsWith('find')) unlinkSync(join(folder, '.putback', name));
    }
    symlinkSync(other, join(folder, '.putback/find-1.db'));
    expect(byIndex('gasket')).toEqual(right);
    rmSync(join(folder, '.putback'), { recursive: true });
    chmodSync(folder, 0o555);
    expect(byIndex('gasket')).toEqual(right);
    chmodSync(folder, 0o755);
  });

  it('a line that is one long word costs no more than its length', () => {
    writeFileSync(join(folder, 'long.yaml'), `putback: 1\njob: x\n# ${'a1'.repeat(400_000)}\n`);
    older(join(folder, 'long.yaml'));
    expect(byIndex('a1a').map((f) => f.line)).toEqual([3]);
    expect(byIndex('1a1')).toEqual(byScan('1a1'));
  });

  it('is nothing that git sees, and nothing strange beside the jobs', async () => {
    madeBench(folder, 2);
    byIndex('stuck');
    expect(await cleanFolder(folder)).toEqual([]);
    execFileSync('git', ['init', '-q'], { cwd: folder });
    execFileSync('git', ['add', '-A'], { cwd: folder });
    const names = execFileSync('git', ['ls-files'], { cwd: folder, encoding: 'utf8' });
    expect(names).toBe('job-00000.yaml\njob-00001.yaml\n');
  });

  it('a file that is too large or not to be read is told, by the index too', () => {
    madeBench(folder, 2);
    writeFileSync(join(folder, 'huge.yaml'), `putback: 1\n${'# x\n'.repeat(3_100_000)}`);
    older(join(folder, 'huge.yaml'));
    for (let i = 0; i < 2; i++) {
      const { unread } = findIn(folder, asked(['stuck']), () => {});
      expect(unread).toEqual(['huge.yaml is too large for a job file.']);
    }
  });
});

describe('two programs and a kill', () => {
  it('never a wrong answer', async () => {
    const program = await bundle('tests/find/index/programs/ask.ts');
    madeBench(folder, 60);
    copyFileSync(join(folder, 'job-00000.yaml'), join(folder, 'moved.yaml'));
    const random = seeded(99 + Number(process.env.SEED ?? 0));
    let answered = 0;
    for (let i = 0; i < runs(4); i++) {
      // From nothing each second time, so that kills meet the building of the tables too.
      if (i % 2 === 0) rmSync(join(folder, '.putback'), { recursive: true, force: true });
      const two = [fork(program, [folder]), fork(program, [folder])];
      for (const one of two) {
        one.on('message', (said: { same: boolean }) => {
          answered++;
          expect(said.same).toBe(true);
        });
      }
      await once(two[0] as never, 'message');
      for (let n = 0; n < 30; n++) {
        const file = join(folder, `job-${String(Math.floor(random() * 60)).padStart(5, '0')}.yaml`);
        writeFileSync(file, `${madeJob(n, i + 2)}# zebra ${n}\n`);
        older(file);
      }
      await new Promise((done) => setImmediate(done));
      const victim = two[Math.floor(random() * 2)];
      victim?.kill('SIGKILL');
      const plain = scanOnce();
      const asScanned = () => {
        for (const word of ['stuck', 'zebra', 'hollin', '2103'])
          expect(byIndex(word), word).toEqual(plain(word));
      };
      asScanned();
      await Promise.all(
        two.map(async (one) => {
          if (one.exitCode !== null || one.signalCode !== null) return;
          one.kill('SIGKILL');
          await once(one, 'exit');
        }),
      );
      asScanned();
    }
    expect(answered).toBeGreaterThan(3);
    rmSync(dirname(program), { recursive: true });
  });
});
