/** Files that nobody's putback wrote, given to the real program with little memory to spare. */
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, symlinkSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { PUTBACK, pinnedEnv } from '../terminal/world.ts';
import { Pinned } from './pinned.ts';

const HEAD = 'putback: 1\njob: Left cover\n';
const bomb = `${HEAD}a: &a [x,x,x,x,x,x,x,x,x]\n${[...'bcdefghij']
  .map((c, i) => `${c}: &${c} [${Array(9).fill(`*${'abcdefghi'[i]}`).join(',')}]`)
  .join('\n')}\n`;

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'putback-files-'));
  const files: Record<string, string | Buffer> = {
    'bomb.yaml': bomb,
    'deep.yaml': `${HEAD}machine: ${'['.repeat(200_000)}`,
    'nul.yaml': `${HEAD}machine: a\0b\n`,
    'bytes.yaml': Buffer.from([...Buffer.from(`${HEAD}machine: M`), 0xfc, 0xff, 0x0a]),
    'twice.yaml': `${HEAD}job: Right cover\n`,
    'proto.yaml': `${HEAD}pieces: {__proto__: {bolts: S}, constructor: {bolts: S}}\n__proto__: {a: b}\n`,
    'big.yaml': Buffer.alloc(100_000_000, 'a: b\n'),
    'empty.yaml': '',
    'paths.yaml': `${HEAD}pieces: {"../../etc/passwd": {bolts: S}}\n`,
  };
  for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
  writeFileSync(join(folder, 'huge.yaml'), '');
  truncateSync(join(folder, 'huge.yaml'), 5_000_000_000);
  symlinkSync('/dev/zero', join(folder, 'endless.yaml'));
  symlinkSync('/dev/tty', join(folder, 'tty.yaml'));
  symlinkSync('loop.yaml', join(folder, 'loop.yaml'));
  execFileSync('mkfifo', [join(folder, 'pipe.yaml')]);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function run(...args: string[]) {
  const ran = spawnSync(process.execPath, ['--max-old-space-size=256', PUTBACK, ...args], {
    cwd: folder,
    env: pinnedEnv(folder),
    encoding: 'utf8',
    timeout: 60_000,
  });
  return { code: ran.status, said: `${ran.stdout}${ran.stderr}` };
}

describe('what is no file', () => {
  it.each([
    ['a link to a device without end', 'endless.yaml', 'is a device, not a plain file'],
    ['a link to the terminal', 'tty.yaml', 'is a device, not a plain file'],
    ['a pipe that nobody writes', 'pipe.yaml', 'is a pipe, not a plain file'],
    ['a link in a circle', 'loop.yaml', 'leads round in a circle'],
  ])('%s: one sentence within seconds, exit 2 or 3', (_, name, word) => {
    for (const words of ['check', 'status', 'diary', 'note x', 'out cover 1', 'fit cover']) {
      const [verb = '', ...rest] = words.split(' ');
      const { said, code } = run(verb, name, ...rest);
      expect(said).toContain(word);
      expect([2, 3]).toContain(code);
      expect(said.trim().split('\n')).toHaveLength(1);
    }
  });
});

describe('a file that is', () => {
  it.each([
    ['a bomb of aliases', 'bomb.yaml', 1, 'anchor'],
    ['nested without end', 'deep.yaml', 1, 'too-deep'],
    ['cut by a NUL', 'nul.yaml', 1, 'not-text'],
    ['no UTF-8', 'bytes.yaml', 0, 'not-utf8'],
    ['twice the same key', 'twice.yaml', 1, 'twice'],
    ['names that every object has', 'proto.yaml', 1, 'odd-key'],
    ['a hundred megabytes', 'big.yaml', 1, 'too-big'],
    ['five gigabytes of nothing', 'huge.yaml', 1, 'too-big'],
    ['empty', 'empty.yaml', 1, 'no-version'],
    ['a path for a name', 'paths.yaml', 1, 'bad-name'],
  ])('%s is told as that, without a stack trace', async (_, name, code, word) => {
    const checked = run('check', name);
    expect(checked.said).toContain(`[${word}]`);
    expect(checked.code).toBe(code);
    const answered = (words: string, exit: number | null, said: string) => {
      expect([0, 1, 2, 3], `${words}: ${said.slice(0, 500)}`).toContain(exit);
      expect(said).not.toMatch(/^\s+at .*:\d+:\d+\)?$/m);
    };
    const marked = run('out', name, 'cover', '1');
    answered('out', marked.code, marked.said);
    // The other commands open the file as these do: for them the same code in this process is enough.
    const others = word === 'too-big' ? ['note x'] : ['status', 'diary', 'note x', 'fit cover'];
    for (const words of others) {
      const [verb = '', ...rest] = words.split(' ');
      const { exit, out, err } = await new Pinned(folder).run(verb, name, ...rest);
      answered(words, exit, `${out}${err}`);
    }
  });
});
