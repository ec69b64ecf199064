import { linkSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { appendEntry } from '../../../src/job/edit/splice.ts';
import { cleanFolder } from '../../../src/job/save/clean.ts';
import { type Disk, disk } from '../../../src/job/save/disk.ts';
import { saveFile } from '../../../src/job/save/save.ts';
import { JOB, line, newFolder, newJob, strays, textOf } from './folder.ts';

const mark = (id: string) => (text: string) => ({ text: appendEntry(text, line(id)) });
const patience = { wait: 60, still: 30 };

/** No power cut is waited for: what a step asks of the disk is asked, and fails, all the same. */
const quick: Disk = { ...disk, fsyncSync: () => {} };

/** The disk whose step number `at`, and with `on` every later one too, fails; `count` tells how many were asked. */
function failAt(at: number, code: string, on: boolean): Disk & { count: () => number } {
  let n = 0;
  return new Proxy(quick, {
    get(target, key: string) {
      if (key === 'count') return () => n;
      return (...args: unknown[]) => {
        n++;
        if (n === at || (on && n > at))
          throw Object.assign(new Error(`${code} at ${key}`), { code });
        return (target[key as keyof Disk] as (...a: unknown[]) => unknown)(...args);
      };
    },
  }) as Disk & { count: () => number };
}

const way = {
  'renamed over': (file: string) => file,
  'written in place': (file: string) => {
    linkSync(file, join(file, '..', 'other.yaml'));
    return file;
  },
};

for (const [name, prepare] of Object.entries(way)) {
  for (const code of ['ENOSPC', 'EIO', 'EACCES', 'ENOENT', 'EROFS']) {
    for (const on of [false, true]) {
      test(`${name}, ${code} at any ${on ? 'step and from then on' : 'single step'}: old or new bytes, told truly, and the next mark goes through`, async () => {
        const steps = failAt(0, code, false);
        await saveFile(prepare(newJob()), mark('first000'), {
          disk: steps,
          patience,
          state: newFolder(),
        });
        const new_ = mark('first000')(JOB).text;
        for (let at = 1; at <= steps.count(); at++) {
          const file = prepare(newJob());
          const state = newFolder();
          const saved = await saveFile(file, mark('first000'), {
            disk: failAt(at, code, on),
            patience,
            state,
          });
          const left = textOf(file);
          // A write in place that could not even be put back is finished by the next save.
          if (name === 'renamed over') expect([JOB, new_], `step ${at}`).toContain(left);
          if (saved.ok) expect(left, `step ${at}`).toBe(new_);
          const next = await saveFile(file, mark('next0000'), { disk: quick, patience, state });
          expect(next, `step ${at}`).toMatchObject({ ok: true, changed: true });
          expect([mark('next0000')(JOB).text, mark('next0000')(new_).text], `step ${at}`).toContain(
            textOf(file),
          );
          await cleanFolder(join(file, '..'), { disk: quick, state });
          expect(strays(file), `step ${at}`).toEqual([]);
        }
      });
    }
  }
}
