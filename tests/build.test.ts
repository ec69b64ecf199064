/** A build that is ended half-way: `npm exec` and `npm ci` build without a word, and people press Ctrl-C. */
import { spawn } from 'node:child_process';
import { readFileSync, rmSync, watch } from 'node:fs';
import { join, resolve } from 'node:path';
import { expect, it } from 'vitest';

const root = resolve(import.meta.dirname, '..');

it('leaves the program that was there', async () => {
  const built = () =>
    ['putback.js', 'main.js.br', 'putback.1'].map((f) => readFileSync(join(root, 'dist', f)));
  const before = built();
  const cache = join(root, 'node_modules', '.cache');
  const begun = new Promise<void>((done) => {
    const watcher = watch(cache, (_event, name) => {
      if (name !== 'dist') return;
      watcher.close();
      done();
    });
  });
  const child = spawn(process.execPath, ['esbuild.config.js', '--release'], {
    cwd: root,
    stdio: 'ignore',
  });
  const ended = new Promise((done) => child.on('exit', done));
  await begun;
  child.kill('SIGKILL');
  await ended;
  rmSync(join(cache, 'dist'), { recursive: true, force: true });
  expect(built()).toEqual(before);
});
