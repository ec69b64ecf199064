/** The script for bash in a real bash at a terminal: what Tab makes of a line. */
import { spawnSync } from 'node:child_process';
import { chmodSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { spawn } from '@lydell/node-pty';
import { expect, it } from 'vitest';
import { newFolder } from './pty.ts';
import { PUTBACK, pinnedEnv } from './world.ts';

const JOB =
  'putback: 1\njob: x\nbolts: {S: M6x25, M: M6x35}\npieces: {alternator: {bolts: S M}, lever: {}}\ndiary:\n';

function bench() {
  const folder = newFolder('putback-completions-');
  const jobs = join(folder, 'jobs');
  mkdirSync(join(jobs, 'spare jobs'), { recursive: true });
  const names = [
    'my cover.yaml',
    'a:b.yaml',
    "it's.yaml",
    'dol$lar.yaml',
    '-dash.yaml',
    'x\ny.yaml',
  ];
  for (const name of [...names, 'spare jobs/übung.yaml']) writeFileSync(join(jobs, name), JOB);
  const bin = join(folder, 'bin');
  mkdirSync(bin);
  writeFileSync(join(bin, 'putback'), `#!/bin/sh\nexec '${process.execPath}' '${PUTBACK}' "$@"\n`);
  chmodSync(join(bin, 'putback'), 0o755);
  const env = pinnedEnv(folder);
  return { jobs, env: { ...env, PATH: `${bin}:${env.PATH}` } };
}

/** Each line after Tab was pressed at its end. */
async function completed(lines: readonly string[]): Promise<string[]> {
  const { jobs, env } = bench();
  const out = join(jobs, '..', 'lines');
  writeFileSync(
    join(jobs, '..', 'rc'),
    `PS1='> '; eval "$(putback completions bash)"
told() { printf '%s\\n' "$READLINE_LINE" >> '${out}'; READLINE_LINE=; READLINE_POINT=0; }
bind -x '"\\C-g": told'\n`,
  );
  writeFileSync(out, '');
  const rc = join(jobs, '..', 'rc');
  const bash = spawn('bash', ['--noprofile', '--rcfile', rc, '-i'], {
    cwd: jobs,
    env,
    cols: 200,
    rows: 40,
  });
  const ended = new Promise((done) => bash.onExit(done));
  // All in one: bash takes up each press when it has done with the one before.
  bash.write(`${lines.map((line) => `${line}\t\x07`).join('')}exit\r`);
  await ended;
  return readFileSync(out, 'utf8').split('\n').slice(0, -1);
}

const bashHere = spawnSync('bash', ['--version']).status === 0;

it.skipIf(!bashHere)('bash completes quoted and odd names, pieces, kinds and values', async () => {
  const pairs: [string, string][] = [
    ['putback sta', 'putback status '],
    ['putback out my', 'putback out my\\ cover.yaml '],
    ['putback out my\\ ', 'putback out my\\ cover.yaml '],
    ['putback out "my', 'putback out "my cover.yaml" '],
    ["putback out 'my", "putback out 'my cover.yaml' "],
    ['putback out "my cover.yaml" al', 'putback out "my cover.yaml" alternator '],
    ['putback out my\\ cover.yaml al', 'putback out my\\ cover.yaml alternator '],
    ['putback out a:b', 'putback out a:b.yaml '],
    ['putback out a:b.yaml al', 'putback out a:b.yaml alternator '],
    ['putback out it', "putback out it\\'s.yaml "],
    ['putback out dol', 'putback out dol\\$lar.yaml '],
    ['putback out ./-', 'putback out ./-dash.yaml '],
    ['putback out spare\\ jobs/', 'putback out spare\\ jobs/übung.yaml '],
    ['putback in a:b.yaml alternator --kind=M', 'putback in a:b.yaml alternator --kind=M '],
    ['putback out --kind M a:b.yaml le', 'putback out --kind M a:b.yaml lever '],
    ['putback status a:b.yaml 2>/dev/null --js', 'putback status a:b.yaml 2>/dev/null --json '],
    ['putback --li', 'putback --lines '],
    ['putback out x', 'putback out x'],
  ];
  expect(await completed(pairs.map(([line]) => line))).toEqual(pairs.map(([, made]) => made));
});
