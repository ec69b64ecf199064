import { chmodSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { placesOf, WORDS_AT } from '../../../src/commands/shell/complete.ts';
import { parseWords } from '../../../src/commands/shell/words.ts';
import { allCommands } from '../../../src/commands/table.ts';
import { BUY_STATES, HOLE_STATES } from '../../../src/model/types.ts';
import { Pinned } from '../pinned.ts';

const folder = mkdtempSync(join(tmpdir(), 'putback-help-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const putback = new Pinned(folder);

const words = (line: string) =>
  [...line.matchAll(/'([^']*)'|(\S+)/g)].map(([, quoted, bare]) => quoted ?? bare ?? '');

describe('help', () => {
  it('is the same by every way there is', async () => {
    const all = await putback.run('--help');
    expect(await putback.run('-h')).toEqual(all);
    expect(await putback.run('help')).toEqual(all);
    const one = await putback.run('help', 'out');
    expect(await putback.run('out', '--help')).toEqual(one);
    expect(await putback.run('out', '-h')).toEqual(one);
    expect(await putback.run('out', 'job.yaml', '-h')).toEqual(one);
    expect(one.exit).toBe(0);
  });

  it('is JSON where that is asked for', async () => {
    for (const argv of [['--help'], ['help'], ['out', '-h'], ['help', 'out'], ['help', '--man']]) {
      const { exit, json } = await putback.json(...argv);
      expect([exit, json.ok], argv.join(' ')).toEqual([0, true]);
    }
  });

  it('of a command that is not there names the one that was meant', async () => {
    const { exit, err } = await putback.run('help', 'tihgt');
    expect(exit).toBe(2);
    expect(err).toContain('Did you mean tight?');
  });

  it('names how the screens can look, and that a command comes before that', async () => {
    for (const word of ['--lines', '--ascii']) {
      expect((await putback.run('help')).out).toContain(`  ${word} `);
      const { exit, err } = await putback.run(word, 'keys');
      expect([exit, err]).toEqual([
        2,
        `${word} is for the screens; keys comes first: putback help keys\n`,
      ]);
    }
  });

  it('says the version by -V as by --version', async () => {
    expect(await putback.run('-V')).toEqual(await putback.run('--version'));
  });

  it('names every state that can be said', async () => {
    const hole = (await putback.run('help', 'hole')).out;
    const buy = (await putback.run('help', 'buy')).out;
    for (const state of HOLE_STATES) expect(hole).toContain(state);
    for (const state of BUY_STATES) expect(buy).toContain(state);
  });

  it.each(allCommands().map((c) => [c.names.join('|'), c] as const))(
    '%s has examples that are right use',
    (_name, command) => {
      expect(command.examples.length).toBeGreaterThan(0);
      for (const line of command.examples) {
        const [name = '', ...rest] = words(line);
        expect(command.names).toContain(name);
        expect(parseWords(command, name, rest), line).not.toHaveProperty('answer');
      }
    },
  );

  it('as a page for man names every command and option', async () => {
    const { out } = await putback.run('help', '--man');
    const plain = out.replaceAll('\\-', '-');
    for (const command of allCommands()) {
      for (const name of command.names) expect(plain).toContain(name);
      for (const option of Object.keys(command.options)) expect(plain).toContain(`--${option}`);
    }
    for (const option of ['--lines', '--ascii', '-V, --version', '-h, --help'])
      expect(plain).toContain(option);
    for (const section of ['ENVIRONMENT', 'FILES', 'EXIT STATUS'])
      expect(out).toContain(`.SH ${section}\n`);
    // Not every man reads UTF-8.
    expect(out).toMatch(/^[\0-\x7f]*$/);
    // A line of text that begins with a dot would be taken for an instruction.
    const dots = out
      .split('\n')
      .filter((l) => /^[.']/.test(l) && !/^\.(TH|SH|SS|TP|B|PP|nf|fi|br)\b/.test(l));
    expect(dots).toEqual([]);
  });
});

describe('what can stand there', () => {
  const job = `putback: 1
job: Left cover weeps oil
bolts: {S: "M6x25 flange, 8 mm", M: "M6x35 flange, 8 mm"}
pieces: {alternator: {bolts: S S M+clip S S}}
tasks: {drain: {do: Drain the oil}}
buy: {gasket: {what: Cover gasket}}
diary:
`;
  writeFileSync(join(folder, 'cover.yaml'), job);
  const offered = async (...typed: string[]) => {
    const { out } = await putback.run('completions', 'bash', '--json', '--', ...typed);
    return (JSON.parse(out).found as { word: string }[]).map((c) => c.word);
  };

  it.each(allCommands().map((c) => [c.names.join('|'), c] as const))(
    'is known for each place of %s',
    (_name, { usage, options }) => {
      const unknown = placesOf(usage).names.filter((name) => !(name in WORDS_AT));
      expect(unknown).toEqual([]);
      for (const { value } of Object.values(options)) expect(value).not.toBe('');
    },
  );

  it('is a command or a job file', async () => {
    expect(await offered('co')).toEqual(['correct', 'completions', 'cover.yaml']);
  });

  it('comes from the file: its pieces, holes, tasks, things to buy, kinds', async () => {
    expect(await offered('out', 'co')).toEqual(['cover.yaml']);
    expect(await offered('out', 'cover.yaml', '')).toEqual(['alternator']);
    expect(await offered('out', 'cover.yaml', 'alternator', '')).toEqual(['1', '2', '3', '4', '5']);
    expect(await offered('out', 'cover.yaml', 'alternator', '1', '5')).toEqual(['5']);
    expect(await offered('out', 'cover.yaml', 'alternator', '1', '5', '')).toEqual(['2', '3', '4']);
    expect(await offered('out', 'cover.yaml', 'alternator', '--kind', '')).toEqual(['S', 'M']);
    expect(await offered('done', 'cover.yaml', '')).toEqual(['drain']);
    expect(await offered('buy', 'cover.yaml', '')).toEqual(['gasket']);
    expect(await offered('correct', 'cover.yaml', '')).toEqual(['alternator', 'drain']);
  });

  it('are the words of the program: states, moments, keys, options', async () => {
    const hole = ['hole', 'cover.yaml', 'alternator', '2'];
    expect(await offered(...hole, 's')).toEqual(['stuck', 'sheared', 'stud']);
    expect(await offered('buy', 'cover.yaml', 'gasket', 'w')).toEqual(['wanted', 'wrong']);
    expect(await offered('gate', 'cover.yaml', 'c')).toEqual(['closing']);
    expect(await offered('torque', 's')).toEqual(['sane', 'strip']);
    expect(await offered('out', 'cover.yaml', '--al')).toEqual(['--all']);
  });

  it('behind an option is what that takes, whatever its place is called elsewhere', async () => {
    const tight = ['tight', 'cover.yaml', 'alternator', '--pass'];
    expect(await offered(...tight, '')).toEqual(['snug', 'full']);
    expect(await offered('new', 'x.yaml', '--from', 'car')).toEqual(['carburettor']);
    expect(await offered('add', 'cover.yaml', 'x', '--as', 'ca')).toEqual(['caution']);
    const hole = ['add', 'cover.yaml', 'x', '--piece', 'alternator', '--hole'];
    expect(await offered(...hole, '5')).toEqual(['5']);
    expect(await offered('in', 'cover.yaml', 'alternator', '--kind=')).toEqual([
      '--kind=S',
      '--kind=M',
    ]);
    expect(await offered('paper', 'cover.yaml', 'card', '-o', '')).toContain('cover.yaml');
    writeFileSync(join(folder, 'other.yaml'), 'putback: 1\njob: x\nmachine: Tarn 125\ndiary:\n');
    expect(await offered('book', '.', '')).toEqual(['Tarn 125']);
    rmSync(join(folder, 'other.yaml'));
  });

  it('in front of a file may be how the screens are shown', async () => {
    expect(await offered('--')).toEqual(['--lines', '--ascii', '--help', '--version']);
    expect(await offered('--lines', 'co')).toEqual(['cover.yaml']);
    expect(await offered('cover.yaml', '--a')).toEqual(['--ascii']);
  });

  it('names files as they were typed to, and none that a line cannot hold', async () => {
    writeFileSync(join(folder, '-x.yaml'), job);
    writeFileSync(join(folder, 'new\nline.yaml'), job);
    expect(await offered('status', './c')).toEqual(['./cover.yaml']);
    expect(await offered('status', '')).toEqual(['./-x.yaml', 'cover.yaml']);
    rmSync(join(folder, '-x.yaml'));
    rmSync(join(folder, 'new\nline.yaml'));
  });

  it('is nothing where the file cannot be read, and no fault', async () => {
    writeFileSync(join(folder, 'torn.yaml'), '{');
    expect(await offered('out', 'torn.yaml', '')).toEqual([]);
    expect(await offered('out', 'none.yaml', '')).toEqual([]);
    expect(await offered('nonsense', '')).toEqual([]);
  });
});

describe('doctor', () => {
  it('says what this runs on, and counts what is odd', async () => {
    const { exit, json } = await putback.json('doctor');
    expect(exit).toBe(0);
    const found = json.found as { what: string; odd: string | null }[];
    expect(found.map((f) => f.what)).toEqual(
      expect.arrayContaining([
        'putback',
        'terminal',
        'locale',
        'git',
        'this folder',
        'bench',
        'cache',
      ]),
    );
    expect(json.odd).toBe(found.filter((f) => f.odd !== null).length);
    // This world has no language set.
    expect(found.find((f) => f.what === 'locale')?.odd).toContain('UTF-8');
  });

  const doctorOf = async (env: Record<string, string>) => {
    const { json } = await new Pinned(folder, undefined, env).json('doctor');
    const found = json.found as { what: string; is: string; odd: string | null }[];
    return (what: string) => found.find((f) => f.what === what);
  };

  it('tells presses that clash and keys that are none', async () => {
    const config = join(folder, 'config', 'putback');
    mkdirSync(config, { recursive: true });
    const at = { XDG_CONFIG_HOME: join(folder, 'config') };
    writeFileSync(join(config, 'settings.yaml'), 'keys: {out: q}\n');
    expect((await doctorOf(at))('settings')?.odd).toContain(
      'one screen needs q for out and for quit',
    );
    writeFileSync(join(config, 'settings.yaml'), 'keys: {otu: z}\n');
    expect((await doctorOf(at))('settings')?.odd).toContain('Did you mean out?');
  });

  it.each([
    ['git version 1.8.3', '1.8.3', 'older than 2.18'],
    ['hello', 'hello', 'no answer of git'],
    ['git version 2.39.5', '2.39.5', null],
  ])('looks at what git says of itself: %s', async (said, is, odd) => {
    const bin = mkdtempSync(join(folder, 'bin-'));
    writeFileSync(join(bin, 'git'), `#!/bin/sh\necho '${said}'\n`);
    chmodSync(join(bin, 'git'), 0o755);
    const git = (await doctorOf({ PATH: `${bin}:${process.env.PATH}` }))('git');
    expect(git?.is).toBe(is);
    if (odd === null) expect(git?.odd).toBe(null);
    else expect(git?.odd).toContain(odd);
  });
});
