/** Access lists and extended attributes of a job file. Node can neither set nor read them: Python can. */
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdirSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { expect, test } from 'vitest';
import { appendEntry } from '../../../src/job/edit/splice.ts';
import { disk } from '../../../src/job/save/disk.ts';
import { saveFile } from '../../../src/job/save/save.ts';
import { line, newFolder, newJob, textOf } from './folder.ts';

const mark = (text: string) => ({ text: appendEntry(text, line('aaaaaaa1')) });

/** user::rw-, user:1234:rw-, group::r--, mask::rw-, other::---, in the kernel's own form. */
const ACL =
  "struct.pack('<I',2)+b''.join(struct.pack('<HHI',*e) for e in [(1,6,0xffffffff),(2,6,1234),(4,4,0xffffffff),(16,6,0xffffffff),(32,0,0xffffffff)])";

const python = (script: string, file: string) =>
  spawnSync('python3', ['-c', `import os,struct,sys\nf=sys.argv[1]\n${script}`, file], {
    encoding: 'utf8',
  });
const SET = `os.setxattr(f,'user.comment',b'mine')\nos.setxattr(f,'system.posix_acl_access',${ACL})`;
const all = (file: string) =>
  python('print([(n,os.getxattr(f,n).hex()) for n in sorted(os.listxattr(f))])', file).stdout;
const can = python(SET, newJob()).status === 0;

test.skipIf(!can)('stay with a mark, and with the mode and the owner', async () => {
  const file = newJob();
  execFileSync('python3', ['-c', `import os,struct,sys\nf=sys.argv[1]\n${SET}`, file]);
  const [before, stat] = [all(file), statSync(file)];
  expect(before).toContain('posix_acl');
  expect(await saveFile(file, mark)).toMatchObject({ ok: true, changed: true });
  expect(textOf(file)).toContain('aaaaaaa1');
  expect(all(file)).toBe(before);
  expect([statSync(file).mode, statSync(file).uid]).toEqual([stat.mode, stat.uid]);
});

test.skipIf(!can)('given between two marks of one sitting stay as well', async () => {
  const file = newJob();
  const marked = async (n: number) => {
    const id = `aaaaaab${n}`;
    const one = (text: string) => ({ text: text.replace('diary:\n', `diary:\n  # ${id}\n`) });
    expect(await saveFile(file, one)).toMatchObject({ ok: true, changed: true });
  };
  for (const n of [1, 2, 3, 4]) await marked(n);
  expect(all(file)).toBe('[]\n');
  execFileSync('python3', ['-c', `import os,struct,sys\nf=sys.argv[1]\n${SET}`, file]);
  const before = all(file);
  for (const n of [5, 6]) {
    await marked(n);
    expect(all(file)).toBe(before);
  }
});

test.skipIf(!can)('of the folder do not become those of the file', async () => {
  const file = newJob();
  const side = join(dirname(file), '.putback');
  mkdirSync(side);
  python(`os.setxattr(f,'system.posix_acl_default',${ACL})`, side);
  const before = all(file);
  expect(await saveFile(file, mark)).toMatchObject({ ok: true, changed: true });
  expect(all(file)).toBe(before);
});

test('where they cannot be copied the file is written in place, and stays the same file', async () => {
  const file = newJob();
  const { ino } = statSync(file);
  const d = { ...disk, copyAttributes: () => false };
  const state = newFolder();
  expect(await saveFile(file, mark, { disk: d, state })).toMatchObject({ ok: true, changed: true });
  expect(statSync(file).ino).toBe(ino);
  expect(textOf(file)).toContain('aaaaaaa1');
});
