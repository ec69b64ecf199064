/** What a command says to type next can be typed as it stands, and where nothing can be written that is told. */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { PassThrough } from 'node:stream';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { dispatch } from '../../src/commands/dispatch.ts';
import { Pinned, worldWith } from './pinned.ts';

let folder: string;
let pinned: Pinned;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "putback-it's a way-"));
  pinned = new Pinned(folder);
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

/** The words of the command behind `putback` in what was said, as a shell reads them. */
function typed(said: string): string[] {
  const [, line = ''] = /putback ((?:check|new|last)? ?'.*')/.exec(said) ?? [];
  const { stdout } = spawnSync('sh', ['-c', `printf '%s\\n' ${line}`], { encoding: 'utf8' });
  return stdout.trimEnd().split('\n');
}

describe('a path with blanks', () => {
  it('of a new job, and of one that is there', async () => {
    const { out } = await pinned.run('new', 'my cover.yaml');
    expect(typed(out)).toEqual(['my cover.yaml']);
    const { err } = await pinned.run('new', 'my cover.yaml', '--from', 'wheel');
    expect(err).toContain("putback last 'my cover.yaml' PIECE --take");
  });

  it('of a practice bench', async () => {
    const { out } = await pinned.run('practice', "mine, it's new", '--no-open');
    expect(typed(out)).toEqual([join(folder, "mine, it's new")]);
  });

  it.each([
    ['due', 'my bench'],
    ['book', 'my bench', 'Hollin 400'],
    ['last', 'my bench/a.yaml'],
  ])('of a job that %s cannot read: check reads it from where one stands', async (...argv) => {
    mkdirSync(join(folder, 'my bench'));
    const job = 'putback: 1\njob: x\nmachine: Hollin 400\ndiary:\n';
    writeFileSync(join(folder, 'my bench', 'a.yaml'), job);
    writeFileSync(
      join(folder, 'my bench', 'b c.yaml'),
      job.replace('diary', 'tasks: {a: [\ndiary'),
    );
    const { out } = await pinned.run(...argv);
    expect(typed(out)).toEqual(['check', 'my bench/b c.yaml']);
    const { exit, out: faults } = await pinned.run(...typed(out));
    expect([exit, faults]).toEqual([1, expect.stringContaining('b c.yaml:')]);
  });

  it('of a bench that is there already: what nobody committed yet is said again', async () => {
    const first = await pinned.run('bench', 'my bench');
    const [line = ''] = /^Not committed yet.*$/m.exec(first.out) ?? [];
    expect(line).not.toBe('');
    const again = await pinned.json('bench', 'my bench');
    expect(again.json).toMatchObject({ changed: false, did: [line] });
    expect((await pinned.run('bench', 'my bench')).out).toBe(`Already a bench.\n${line}\n`);
  });

  it('of a new bench: the commands it names commit its files', async () => {
    const { out } = await pinned.run('bench', 'my bench');
    const [, line = ''] = /Not committed yet, so that you can look first: (.*)/.exec(out) ?? [];
    const who = ['-c user.name=Ada', '-c user.email=ada@example.invalid'].join(' ');
    const script = `${line} -m first`.replaceAll('git -C', `git ${who} -C`);
    const { status } = spawnSync('sh', ['-c', script], { cwd: folder });
    expect(status).toBe(0);
    const left = spawnSync('git', ['status', '--porcelain'], { cwd: join(folder, 'my bench') });
    expect(String(left.stdout)).toBe('');
  });
});

describe('a path that was not meant so', () => {
  beforeEach(async () => {
    for (const name of ['my cover.yaml', 'a.yaml', 'b.yaml']) await pinned.run('new', name);
    mkdirSync(join(folder, 'my bench'));
  });
  const blanks = 'A path with blanks goes in quotes: putback';
  it.each([
    [['status', 'my', 'cover.yaml'], `${blanks} status 'my cover.yaml'`],
    [['out', 'my', 'cover.yaml', 'lever', '--all'], `${blanks} out 'my cover.yaml' lever --all`],
    [['due', 'my', 'bench'], `${blanks} due 'my bench'`],
    [['my', 'cover.yaml'], `${blanks} 'my cover.yaml'`],
    [['status', 'a.yaml', 'b.yaml'], 'status takes one job at a time: putback status a.yaml'],
    [['a.yaml', 'b.yaml'], 'One job or one bench is opened at a time: putback a.yaml'],
    [['status', 'no such.yaml'], "No job file 'no such.yaml' in "],
    [['status', 'a'], 'Did you mean a.yaml?'],
    [['status', 'my covr.yaml'], "Did you mean 'my cover.yaml'?"],
    [['status', 'a.yaml', 'lever'], 'Usage: putback status FILE'],
    [['out', 'a.yaml', 'levr'], 'No piece levr in this job.'],
    [['tight', 'none.yaml', 'lever'], 'No job file none.yaml in '],
    [['new', 'left'], 'A job file ends in .yaml: left.yaml.'],
    [['new', 'x\ny.yaml'], 'has characters that nobody can type again'],
  ])('%j is told what was', async (argv, say) => {
    const { exit, out, err } = await pinned.run(...argv);
    expect([exit, out]).toEqual([2, '']);
    expect(err).toContain(say);
  });

  it('begins with a hyphen: it is started, and opened by a name that is no option', async () => {
    const { out } = await pinned.run('new', '--', '-x.yaml');
    expect(out).toContain('Open it with: putback ./-x.yaml');
  });
});

describe.runIf(process.platform === 'linux')('below /proc, where there can be no folder', () => {
  it.each([
    ['new', '/proc/none/deeper/a.yaml'],
    ['practice', '/proc/none/deeper', '--no-open'],
    ['bench', '/proc/none/deeper'],
  ])('%s ends and says so', async (...argv) => {
    const { exit, out, err } = await pinned.run(...argv);
    expect([exit, out, err]).toEqual([3, '', expect.stringMatching(/^Not saved\./)]);
    expect(existsSync('/proc/none')).toBe(false);
  });
});

describe('where nothing can be made', () => {
  it('it is told in words, with the way out, and no system word', async () => {
    writeFileSync(join(folder, 'file'), 'x');
    for (const words of [
      ['practice', 'file/new', '--no-open'],
      ['bench', 'file/new'],
    ]) {
      const { exit, err } = await pinned.run(...words);
      expect(exit).toBe(3);
      expect(err).toContain('There is no folder for new. Make it, or choose another name.');
      expect(err).not.toMatch(/ENO|lstat|mkdir/);
    }
  });
});

describe('settings that lie above or below', () => {
  it('are named by the way to them', async () => {
    mkdirSync(join(folder, 'mine', 'jobs'), { recursive: true });
    writeFileSync(join(folder, 'mine', 'bench.yaml'), 'hours: {sun: never}\nwrench: {}\n');
    writeFileSync(join(folder, 'mine', 'jobs', 'a.yaml'), 'putback: 1\njob: x\ndiary:\n');
    const below = await pinned.run('status', 'mine/jobs/a.yaml');
    expect(below.err).toContain('putback check mine/bench.yaml tells all 2.');
    const inside = new Pinned(join(folder, 'mine', 'jobs'));
    expect((await inside.run('status', 'a.yaml')).err).toContain('putback check ../bench.yaml');
  });
});

describe('a fault of the program itself', () => {
  const caught = async (...argv: string[]) => {
    const stdout = new PassThrough();
    const stderr = new PassThrough();
    const now = () => {
      throw new Error('no clock \x1b]0;here');
    };
    const exit = await dispatch(argv, worldWith({ now, folder, stdout, stderr }));
    return { exit, out: String(stdout.read() ?? ''), err: String(stderr.read() ?? '') };
  };
  beforeEach(() => writeFileSync(join(folder, 'a.yaml'), 'putback: 1\njob: x\ndiary:\n'));

  it('is told with what a report needs and to whom it goes', async () => {
    const { exit, out, err } = await caught('note', 'a.yaml', 'hello');
    expect([exit, out]).toEqual([1, '']);
    expect(err).toContain('putback stopped by a fault of its own: no clock \\x1b]0;here');
    expect(err).toMatch(
      /to whoever gave you putback:\n {2}putback .+, Node v\d+\.\d+\.\d+, \w+ \w+\n/,
    );
    expect(err).toMatch(/^ +at /m);
  });

  it('is one JSON value where that was asked for', async () => {
    const { exit, out } = await caught('note', 'a.yaml', 'hello', '--json');
    expect(exit).toBe(1);
    expect(JSON.parse(out)).toMatchObject({ ok: false, refused: { code: 'own-fault' } });
  });
});
