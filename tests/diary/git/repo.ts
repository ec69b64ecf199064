/** A repository of its own in a temporary folder, with settings that no machine adds to. */
import { execFileSync } from 'node:child_process';
import {
  chmodSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  realpathSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';

export function newFolder(): string {
  return realpathSync(mkdtempSync(join(tmpdir(), 'putback-git-')));
}

export type Env = Record<string, string>;

/** A person's surroundings: a home of its own, with a name set or not. */
export function home(name = true): Env {
  const folder = newFolder();
  const env = { PATH: process.env.PATH ?? '', HOME: folder, GIT_CONFIG_NOSYSTEM: '1' };
  const identity = name ? '[user]\n\tname = Ada Bench\n\temail = ada@bench.example\n' : '';
  writeFileSync(
    join(folder, '.gitconfig'),
    // Nothing is tidied up behind a commit: the repository goes with the test.
    `${identity}[init]\n\tdefaultBranch = main\n[protocol "file"]\n\tallow = always\n[maintenance]\n\tauto = false\n[gc]\n\tauto = 0\n`,
  );
  return env;
}

export class Repo {
  readonly folder: string;
  readonly env: Env;

  constructor(env: Env = home(), folder = newFolder()) {
    this.env = env;
    this.folder = folder;
  }

  git(...args: string[]): string {
    return execFileSync('git', args, {
      cwd: this.folder,
      env: this.env,
      encoding: 'utf8',
      stdio: 'pipe',
    });
  }

  /** Like `git`, for what is meant to end with another code than 0. */
  fails(...args: string[]): string {
    try {
      return this.git(...args);
    } catch (error) {
      const { stdout, stderr } = error as { stdout: string; stderr: string };
      return stdout + stderr;
    }
  }

  path(name: string): string {
    return join(this.folder, name);
  }

  write(name: string, text: string): string {
    mkdirSync(dirname(this.path(name)), { recursive: true });
    writeFileSync(this.path(name), text);
    return this.path(name);
  }

  read(name: string): string {
    return readFileSync(this.path(name), 'utf8');
  }

  hook(name: string, script: string): void {
    const path = this.git('rev-parse', '--git-path', `hooks/${name}`).trim();
    writeFileSync(
      join(this.folder, this.write(path, '').slice(this.folder.length)),
      `#!/bin/sh\n${script}\n`,
    );
    chmodSync(this.path(path), 0o755);
  }

  /** Names in the last commit. */
  names(): string[] {
    return this.git('show', '--pretty=', '--name-only', '-z', 'HEAD')
      .split('\0')
      .filter((n) => n !== '');
  }
}

export const JOB =
  'putback: 1\njob: Left cover weeps oil\n\npieces:\n  cover: {bolts: S S S}\n\ndiary:\n';
export const entry = (id: string, at = '2026-05-02T10:11:05+02:00'): string =>
  `  - {at: ${at}, id: ${id}, piece: cover, hole: 1, in: S}\n`;

/** A repository with a job file committed, and one more mark in it that is not. */
export function marked(env: Env = home()): Repo {
  const repo = new Repo(env);
  repo.git('init', '-q');
  repo.write('job.yaml', JOB);
  repo.git('add', '.');
  repo.git(
    '-c',
    'user.name=First',
    '-c',
    'user.email=first@bench.example',
    'commit',
    '-q',
    '-m',
    'start',
  );
  repo.write('job.yaml', JOB + entry('aaaaaaa1'));
  return repo;
}
