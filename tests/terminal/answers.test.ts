/** The real program where its answer, or its mark, cannot be written. */
import { spawn, spawnSync } from 'node:child_process';
import { existsSync, openSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { newFolder } from './pty.ts';
import { PUTBACK, pinnedEnv } from './world.ts';

const JOB =
  'putback: 1\njob: Left cover\nbolts: {S: M6x25}\npieces: {cover: {bolts: S S}}\ndiary:\n';

function job() {
  const folder = newFolder();
  writeFileSync(join(folder, 'job.yaml'), JOB);
  const marks = () => (readFileSync(join(folder, 'job.yaml'), 'utf8').match(/id:/g) ?? []).length;
  return { folder, env: pinnedEnv(folder), marks };
}

describe('an answer to a full disk', () => {
  it.skipIf(!existsSync('/dev/full'))(
    'is told in one sentence; a mark stands and its exit code says so',
    () => {
      const { folder, env, marks } = job();
      const run = (...args: string[]) => {
        const stdout = openSync('/dev/full', 'w');
        const ran = spawnSync(process.execPath, [PUTBACK, ...args], {
          cwd: folder,
          env,
          encoding: 'utf8',
          stdio: ['ignore', stdout, 'pipe'],
        });
        return [ran.status, ran.stderr];
      };
      const DONE =
        'What was asked is done, but the answer could not be written: the disk is full.\n';
      const NOT = 'The answer could not be written: the disk is full.\n';
      expect(run('out', 'job.yaml', 'cover', '1')).toEqual([0, DONE]);
      expect(run('out', 'job.yaml', 'cover', '2', '--json')).toEqual([0, DONE]);
      expect(marks()).toBe(2);
      expect(run('status', 'job.yaml')).toEqual([3, NOT]);
      expect(run('buy', 'job.yaml', '--csv')).toEqual([3, NOT]);
    },
  );

  it('by a reader that has seen enough is no fault, and no mark is lost by it', async () => {
    const { folder, env, marks } = job();
    const child = spawn(process.execPath, [PUTBACK, 'out', 'job.yaml', 'cover', '1'], {
      cwd: folder,
      env,
    });
    child.stdout.destroy();
    let err = '';
    child.stderr.on('data', (part) => {
      err += String(part);
    });
    const code = await new Promise((done) => child.on('close', done));
    expect([code, err, marks()]).toEqual([0, '', 1]);
  });
});

describe('where files may not grow', () => {
  it.skipIf(process.platform === 'win32')('a mark is not saved, told, and exit 3', () => {
    const { folder, env, marks } = job();
    const limited = `ulimit -f 0; exec '${process.execPath}' '${PUTBACK}' out job.yaml cover 1`;
    const ran = spawnSync('sh', ['-c', limited], { cwd: folder, env, encoding: 'utf8' });
    expect(ran.stderr).toBe(
      'Not saved. job.yaml would be larger than is allowed here: it is as it was. Allow larger files (ulimit -f), then try again.\n',
    );
    expect([ran.status, ran.stdout, marks()]).toEqual([3, '', 0]);
  });
});
