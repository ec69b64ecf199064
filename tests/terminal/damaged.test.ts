/** The real program where its own files, or the folder under it, are not as they were. */
import { spawnSync } from 'node:child_process';
import { cpSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { newFolder } from './pty.ts';
import { PUTBACK, pinnedEnv } from './world.ts';

const JOB = 'putback: 1\njob: Left cover\npieces: {cover: {bolts: S S}}\ndiary:\n';

function installed() {
  const folder = newFolder();
  const dist = join(folder, 'dist');
  cpSync(dirname(PUTBACK), dist, { recursive: true });
  writeFileSync(join(folder, 'job.yaml'), JOB);
  const run = (...args: string[]) => {
    const { status, stdout, stderr } = spawnSync(
      process.execPath,
      [join(dist, 'putback.js'), ...args],
      {
        cwd: folder,
        env: { ...pinnedEnv(folder), HOME: folder, XDG_CACHE_HOME: join(folder, '.cache') },
        encoding: 'utf8',
      },
    );
    return { status, stdout, stderr };
  };
  return { folder, dist, run };
}

describe('an installation that is not whole', () => {
  it('says so and what to do, in one line', () => {
    const { dist, run } = installed();
    const file = join(dist, 'main.js.br');
    writeFileSync(file, readFileSync(file).subarray(0, 1000));
    const say = (how: string) => `putback is not whole: ${file} ${how}. Install it again.\n`;
    expect(run('-V')).toEqual({ status: 1, stdout: '', stderr: say('is damaged') });
    rmSync(file);
    expect(run('-V')).toEqual({ status: 1, stdout: '', stderr: say('is missing') });
  });
});

describe('what putback kept of itself, with a block lost', () => {
  it('is made anew, and nobody sees anything of it', () => {
    const { folder, run } = installed();
    const right = run('status', 'job.yaml');
    expect(right).toMatchObject({ status: 0, stderr: '' });
    const cache = join(folder, '.cache', 'putback');
    const [version = ''] = readdirSync(cache);
    const kept = join(cache, version, 'main.js');
    const bytes = readFileSync(kept);
    writeFileSync(kept, Buffer.from(bytes).fill(0, 20_000, 24_000));
    expect(run('status', 'job.yaml')).toEqual(right);
    expect(readFileSync(kept).equals(bytes)).toBe(true);
  });
});

describe('a working folder that is not there any more', () => {
  it.skipIf(process.platform === 'win32')('is told, not crashed on; help needs none', () => {
    const folder = newFolder();
    const script = `mkdir gone; cd gone; rmdir ../gone; '${process.execPath}' '${PUTBACK}' "$@"`;
    const run = (...args: string[]) =>
      spawnSync('sh', ['-c', script, 'sh', ...args], {
        cwd: folder,
        env: pinnedEnv(folder),
        encoding: 'utf8',
      });
    const say = 'The folder in which putback was started is not there any more.';
    const status = run('status', 'job.yaml');
    expect([status.status, status.stdout]).toEqual([2, '']);
    expect(status.stderr).toContain(say);
    expect(status.stderr).not.toMatch(/^ +at /m);
    const { stdout } = run('status', 'job.yaml', '--json');
    expect(JSON.parse(stdout)).toMatchObject({ ok: false, refused: { code: 'no-folder' } });
    expect(run('help', 'in').stdout).toContain('putback in FILE PIECE');
  });
});
