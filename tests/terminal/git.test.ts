/** The real program in git: what it commits, what it leaves alone, and what it never starts. */
import { execFileSync, spawnSync } from 'node:child_process';
import { chmodSync, existsSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { ENTER } from './keys.ts';
import { newFolder, start } from './pty.ts';
import { PUTBACK, pinnedEnv } from './world.ts';

const JOB = `putback: 1
job: Left cover
bolts: {S: M6x25}
pieces:
  cover: {name: "Cover\\e]0;owned\\a\\u202e", bolts: S S S}
diary:
  - {at: 2026-04-11T10:00:00+02:00, id: aaaaaaa1, note: first}
`;

function repository() {
  const folder = join(newFolder(), 'bench');
  mkdirSync(folder);
  const env = pinnedEnv(folder);
  const git = (...args: string[]) =>
    execFileSync('git', ['-c', 'core.fsmonitor=false', ...args], {
      cwd: folder,
      env,
      encoding: 'utf8',
    });
  const write = (name: string, text: string, mode = 0o644) => {
    writeFileSync(join(folder, name), text);
    chmodSync(join(folder, name), mode);
  };
  git('init', '-q', '-b', 'main');
  write('job.yaml', JOB);
  write('bench.yaml', 'commit: milestones\n');
  write('other.txt', 'one\n');
  git('add', '.');
  git('commit', '-q', '-m', 'start');
  write('other.txt', 'two\n');
  git('add', 'other.txt');
  const run = (args: string[], more: Record<string, string> = {}) =>
    spawnSync(process.execPath, [PUTBACK, ...args], {
      cwd: folder,
      env: { ...env, ...more },
      encoding: 'utf8',
    });
  return { folder, git, write, run, env };
}

/** Takes the cover off in the screens, bolt by bolt. */
async function takeOff(folder: string, env: Record<string, string>) {
  const person = start([PUTBACK, join(folder, 'job.yaml')], { folder, env });
  await person.until(/Left cover/);
  // The next right thing, until it is a bolt; those go by Space.
  let frame = person.frame();
  for (let n = 0; n < 5 && !/Next out/.test(frame); n++) {
    const before = frame;
    person.press(ENTER);
    frame = await person.until((now) => now !== before);
  }
  person.press('   ');
  await person.until(/3 of 3 out[\s\S]*it came off/);
  person.press(ENTER);
  await person.until(/Where do its bolts lie/);
  person.press('cup 2', ENTER);
  return person;
}

describe('a milestone reached in the screens', () => {
  it('is one commit of the job file alone, with trailers, and nothing in it steers a terminal', async () => {
    const { folder, git, env } = repository();
    const person = await takeOff(folder, env);
    await person.until(/is off, 3 of 3 bolts/);
    person.press('q');
    expect((await person.exit()).code).toBe(0);
    expect(git('log', '-1', '--format=%(trailers)').trim()).toBe('Piece: cover\nRound: 1');
    expect(git('log', '--format=%s').trim().split('\n')).toHaveLength(2);
    expect(git('log', '-1', '--format=%s')).not.toMatch(/[\x00-\x09\x0b-\x1f\x7f\u202e]/);
    expect(git('show', '--name-only', '--format=', 'HEAD')).toBe('job.yaml\n');
    expect(git('status', '--porcelain')).toBe('M  other.txt\n');
  });

  it('that a hook turns down stays in the file, and a quiet line says so', async () => {
    const { folder, git, write, env } = repository();
    write('.git/hooks/pre-commit', '#!/bin/sh\necho "not on a Friday" >&2; exit 1\n', 0o755);
    const person = await takeOff(folder, env);
    await person.until(/No commit: a hook said no: not on a Friday/);
    person.press('q');
    await person.exit();
    expect(readFileSync(join(folder, 'job.yaml'), 'utf8')).toContain('removed: all');
    expect(git('status', '--porcelain')).toBe(' M job.yaml\nM  other.txt\n');
  });

  it('that a slow hook holds up keeps no mark waiting', async () => {
    const { folder, git, write, env } = repository();
    // It waits until somebody writes into the pipe.
    const go = join(folder, '.git', 'go');
    execFileSync('mkfifo', [go]);
    write('.git/hooks/pre-commit', `#!/bin/sh\nread -r _ < '${go}'\n`, 0o755);
    const person = await takeOff(folder, env);
    await person.until(/is off, 3 of 3 bolts/);
    person.press('n');
    await person.until('> ');
    person.press('meanwhile', ENTER);
    await person.until('Noted.');
    expect(readFileSync(join(folder, 'job.yaml'), 'utf8')).toContain('note: "meanwhile"');
    expect(git('log', '--format=%s').trim()).toBe('start');
    await writeFile(go, 'go\n');
    person.press('q');
    expect((await person.exit()).code).toBe(0);
    expect(git('log', '--format=%s').trim().split('\n')).toHaveLength(2);
  });

  it('under a rebase, from another repository’s hook, or with a lock held: marked, told, nothing committed', () => {
    const { folder, git, run } = repository();
    const elsewhere = repository();
    const off = ['off', 'job.yaml', 'cover'];
    expect(run(['out', 'job.yaml', 'cover', '--all']).status).toBe(0);
    const strange = { GIT_DIR: join(elsewhere.folder, '.git'), GIT_WORK_TREE: elsewhere.folder };
    mkdirSync(join(folder, '.git', 'rebase-merge'));
    expect(run(off, strange).stdout).toContain('No commit: a rebase is under way.');
    rmSync(join(folder, '.git', 'rebase-merge'), { recursive: true });
    expect(run(['undo', 'job.yaml'], strange).status).toBe(0);
    writeFileSync(join(folder, '.git', 'index.lock'), '');
    expect(run(off, strange).stdout).toContain('No commit: another git is at work here.');
    expect(existsSync(join(folder, '.git', 'index.lock'))).toBe(true);
    expect(git('log', '--format=%s').trim()).toBe('start');
    expect(elsewhere.git('log', '--format=%s').trim()).toBe('start');
    expect(elsewhere.git('status', '--porcelain')).toBe('M  other.txt\n');
    expect(readFileSync(join(folder, 'job.yaml'), 'utf8').match(/removed: all/g)).toHaveLength(2);
  });
});

describe('a repository that somebody handed over', () => {
  it('starts none of the programs its settings name when it is only looked at', async () => {
    const { folder, git, write, run, env } = repository();
    const ran = join(folder, '.git', 'ran');
    write('.git/canary', `#!/bin/sh\necho "$0 $*" >> '${ran}'\ncat\n`, 0o755);
    const canary = join(folder, '.git', 'canary');
    mkdirSync(join(folder, '.git', 'evil'));
    for (const hook of [
      'post-checkout',
      'post-index-change',
      'pre-commit',
      'reference-transaction',
    ]) {
      write(`.git/evil/${hook}`, readFileSync(canary, 'utf8'), 0o755);
    }
    write('.gitattributes', '*.yaml diff=x filter=x merge=x\n');
    const settings = ['core.fsmonitor', 'core.pager', 'core.editor', 'core.sshCommand'];
    const drivers = ['diff.external', 'diff.x.textconv', 'diff.x.command', 'filter.x.clean'];
    const more = [
      'filter.x.smudge',
      'filter.x.process',
      'gpg.program',
      'pager.blame',
      'core.askPass',
    ];
    for (const key of [...settings, ...drivers, ...more]) git('config', key, canary);
    git('config', 'core.hooksPath', join(folder, '.git', 'evil'));
    git('config', 'alias.blame', `!${canary}`);
    rmSync(ran, { force: true });
    const uncommitted = '  - {at: 2026-04-11T10:00:00+02:00, id: aaaaaaa2, note: second}\n';
    writeFileSync(join(folder, 'job.yaml'), JOB + uncommitted);
    for (const args of [
      ['status'],
      ['check'],
      ['diary'],
      ['diary', '--commits'],
      ['diary', '--json'],
    ]) {
      const [name = '', ...rest] = args;
      expect(run([name, 'job.yaml', ...rest]).status).toBe(0);
    }
    expect(run(['diary', 'job.yaml', '--commits']).stdout).toMatch(
      /first {2}\([0-9a-f]{8}\)\n {2}second\n/,
    );
    const person = start([PUTBACK, folder], { folder, env });
    await person.until(/Left cover/);
    person.press(ENTER);
    await person.until(/Cover/);
    person.press('q');
    await person.exit();
    expect(existsSync(ran) ? readFileSync(ran, 'utf8') : '').toBe('');
  });
});
