/**
 * One screen, one editor that saves in six ways, one git, and kills, in any order: what was shown as done is in the
 * file, in a place that the screen named, or in git; and nothing else in the folder or beside it has changed.
 * `STORMS=1000` makes it a thousand; `SEED=1` and so on for others. A failure names its run.
 */
import { execFileSync } from 'node:child_process';
import {
  closeSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  openSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
  writeSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it, onTestFinished } from 'vitest';
import type { Wish } from '../../../src/model/types.ts';
import { type Files, filesIn } from '../../../src/screens/terminal/loop-files.ts';
import { idsIn } from '../../../src/screens/terminal/loop-kept.ts';
import { shelf } from '../../../src/screens/terminal/shelf.ts';
import { pinnedEnv } from '../../terminal/world.ts';

const STORMS = Number(process.env.STORMS ?? 8);
const FIRST = Number(process.env.SEED ?? 0) * 100_000;
const STEPS = 40;

const JOB = `putback: 1
job: Left cover weeps oil
# of the person
machine: Hollin 400 Twin
bolts: {S: M6x25}
pieces:
  cover: {bolts: S S S S}
diary:
`;
const other = (n: number) =>
  `putback: 1\njob: Fork seals ${n}\npieces:\n  leg: {bolts: S S}\nbolts: {S: M8x30}\ndiary:\n`;

/** Mulberry32: small, and the same everywhere. */
function seeded(seed: number): () => number {
  let a = seed >>> 0;
  return () => {
    a = (a + 0x6d2b79f5) >>> 0;
    let t = Math.imul(a ^ (a >>> 15), 1 | a);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

class Storm {
  private readonly random;
  readonly top = mkdtempSync(join(tmpdir(), 'putback-storm-'));
  readonly folder = join(this.top, 'bench');
  readonly job = join(this.folder, 'a.yaml');
  readonly shown = new Set<string>();
  readonly said: string[] = [];
  /** Files that the screen has named, whatever somebody calls them later. */
  readonly named = new Set<number>();
  /** Marks that were in a file when the screen named it: if somebody moves that about, they go with it. */
  readonly placed = new Set<string>();
  /** What happened, for whoever has to look into a failure. */
  readonly log: string[] = [];
  private clock = 1e6;
  private timers: { at: number; call: () => void }[] = [];
  private files: Files;
  private marks = 0;
  private n = 0;
  private saving: Generator<void> | null = null;
  private buffers: string[] = [JOB];
  /** What the editor wrote last and nobody has replaced since; null: git did, or it was never whole. */
  wrote: string | null = null;

  private gitWrote = false;

  constructor(seed: number) {
    this.random = seeded(seed);
    mkdirSync(this.folder);
    writeFileSync(join(this.top, 'outside.txt'), 'mine\n');
    writeFileSync(this.job, JOB);
    writeFileSync(join(this.folder, 'other.txt'), 'other\n');
    writeFileSync(join(this.folder, '.gitattributes'), '*.yaml merge=union\n');
    this.git('init', '-q', '-b', 'main');
    this.git('add', '.');
    this.git('commit', '-q', '-m', 'start');
    this.files = this.sit();
  }

  private any<T>(of: readonly T[]): T {
    return of[Math.floor(this.random() * of.length)] as T;
  }

  git(...args: string[]): string {
    const env = { ...process.env, ...pinnedEnv(this.top), GIT_EDITOR: ':' };
    try {
      return execFileSync('git', args, { cwd: this.folder, env, encoding: 'utf8', stdio: 'pipe' });
    } catch {
      return '';
    }
  }

  text(name = 'a.yaml'): string | null {
    try {
      return readFileSync(join(this.folder, name), 'utf8');
    } catch {
      return null;
    }
  }

  // ---------------------------------------------------------------- the screen

  private sit(): Files {
    const now = () => `${new Date().toISOString().slice(0, 19)}+00:00`;
    const id = () => `s${String(++this.marks).padStart(7, '0')}`;
    const files = filesIn(
      this.folder,
      { now, id },
      {
        ...shelf,
        clock: () => this.clock,
        age: () => 1e4,
        later: (ms, call) => {
          const timer = { at: this.clock + ms, call };
          if (ms < 100) {
            // While a mark waits, the others go on.
            this.clock += ms;
            setImmediate(() => {
              if (this.random() < 0.15) this.editorStep();
              call();
            });
          } else this.timers.push(timer);
          return () => {
            this.timers = this.timers.filter((t) => t !== timer);
          };
        },
      },
    );
    return files;
  }

  private heard(say: string | undefined): void {
    if (say) {
      this.said.push(say);
      for (const name of namesIn(say)) {
        const file = statSync(join(this.folder, name), { throwIfNoEntry: false });
        if (!file) continue;
        this.named.add(file.ino);
        for (const id of idsIn(this.text(name) ?? '')) this.placed.add(id);
      }
      this.log.push(`  says: ${say}`);
    }
  }

  /** Whether there is a job on the screen that can be marked. */
  private open = false;

  async look(): Promise<void> {
    this.files.expect('a.yaml');
    const answer = await this.files.hands.open({ do: 'open', file: 'a.yaml' });
    if (answer.on !== 'file') return;
    this.heard(answer.say);
    this.open ||= answer.read.ok;
  }

  /** Time passes, and what is due is looked at. */
  async pass(ms: number): Promise<void> {
    this.clock += ms;
    const due = this.timers.filter((t) => t.at <= this.clock);
    this.timers = this.timers.filter((t) => t.at > this.clock);
    if (due.length > 0 || this.files.changed('a.yaml')) await this.look();
  }

  async mark(): Promise<void> {
    // What could not be opened, a person tries again.
    if (!this.open) await this.look();
    if (!this.open) return;
    const wish: Wish = { do: 'note', piece: 'cover', text: `note ${this.n++}` };
    const answer = await this.files.hands.record({ do: 'record', file: 'a.yaml', wish });
    if (answer.on !== 'recorded') return;
    const { result } = answer;
    if (result.ok && result.entry) {
      this.shown.add(result.entry.id);
      for (const warning of result.warnings) this.heard(warning.say);
    } else if ('refused' in result) this.heard(result.refused.say);
    this.log.push(`mark ${result.ok ? result.entry?.id : JSON.stringify(result).slice(0, 90)}`);
  }

  async leave(): Promise<void> {
    this.heard((await this.files.leave()) ?? undefined);
  }

  /** As after kill -9: nothing is said or put away, and somebody starts it again. */
  async kill(): Promise<void> {
    this.timers = [];
    this.open = false;
    this.files = this.sit();
    await this.look();
  }

  // ---------------------------------------------------------------- the editor

  private *inPlace(text: string, whole = true): Generator<void> {
    const fd = openSync(this.job, 'w');
    this.wrote = null;
    this.gitWrote = false;
    yield;
    const cut = Math.floor(text.length * this.random());
    writeSync(fd, text.slice(0, cut));
    yield;
    if (whole) {
      writeSync(fd, text.slice(cut));
      // Git puts another file in place of the one that is being written.
      this.wrote = this.gitWrote ? null : text;
    }
    closeSync(fd);
  }

  private *over(text: string): Generator<void> {
    const temp = join(this.folder, '.a.yaml.swp');
    writeFileSync(temp, text);
    yield;
    renameSync(temp, this.job);
    this.wrote = text;
  }

  private *half(text: string): Generator<void> {
    yield* this.inPlace(text, false);
    yield;
    yield;
    yield* this.over(text);
  }

  private *otherJob(): Generator<void> {
    const old = join(this.folder, `old-${++this.n}.yaml`);
    if (existsSync(this.job)) renameSync(this.job, old);
    this.wrote = null;
    yield;
    yield* this.over(other(this.n));
    if (this.random() < 0.5) return;
    yield;
    yield;
    if (existsSync(old)) renameSync(old, this.job);
    this.wrote = null;
    // Who moves files about loads what is there.
    this.buffers = [this.text() ?? JOB];
  }

  private *vanish(): Generator<void> {
    if (!existsSync(this.job)) return;
    renameSync(this.job, `${this.job}~`);
    yield;
    yield;
    renameSync(`${this.job}~`, this.job);
    this.wrote = null;
  }

  private closed = false;

  editorStep(): void {
    if (this.closed) return;
    if (this.saving) {
      const done = this.saving.next().done;
      if (done) this.saving = null;
      this.log.push(done ? 'editor is done' : 'editor goes on');
      return;
    }
    const now = this.text();
    // It loads what is there, unless it is another job or a half, and adds a line.
    if (now?.includes('job: Left cover') && this.random() < 0.6) {
      const edited = now.replace(/\n# of the person.*/, `\n# of the person, edit ${++this.n}`);
      this.buffers.push(edited);
    }
    const latest = this.buffers.at(-1) ?? JOB;
    const way = this.any(['place', 'place', 'over', 'over', 'older', 'half', 'other', 'vanish']);
    this.log.push(`editor: ${way}`);
    const ways: Record<string, () => Generator<void>> = {
      place: () => this.inPlace(latest),
      over: () => this.over(latest),
      older: () =>
        this.random() < 0.5
          ? this.over(this.any(this.buffers))
          : this.inPlace(this.any(this.buffers)),
      half: () => this.half(latest),
      other: () => this.otherJob(),
      vanish: () => this.vanish(),
    };
    this.saving = ways[way]?.() ?? null;
    this.editorStep();
  }

  /** The editor comes to the end of what it has begun. */
  finishEditor(): void {
    while (this.saving) this.editorStep();
    this.closed = true;
  }

  // ---------------------------------------------------------------- git

  gitStep(): void {
    const branches = this.git('branch', '--format=%(refname:short)')
      .split('\n')
      .filter((b) => b);
    const ways: [string, string[][]][] = [
      [
        'commit',
        [
          ['add', 'a.yaml'],
          ['commit', '-q', '-m', `c${++this.n}`],
        ],
      ],
      ['commit', [['commit', '-q', '-a', '-m', `c${++this.n}`]]],
      ['branch', [['checkout', '-q', '-b', `b${++this.n}`]]],
      ['switch', [['checkout', '-q', this.any(branches) ?? 'main']]],
      ['force', [['checkout', '-q', '-f', this.any(branches) ?? 'main']]],
      ['back', [['checkout', '-q', 'HEAD~1']]],
      ['stash', [['stash', '-q']]],
      ['pop', [['stash', 'pop', '-q']]],
      ['rebase', [['rebase', '-q', this.any(branches) ?? 'main']]],
      ['abort', [['rebase', '--abort']]],
      ['merge', [['merge', '-q', '--no-edit', this.any(branches) ?? 'main']]],
      ['unmerge', [['merge', '--abort']]],
      ['bisect', [['bisect', 'start']]],
      [
        'bad',
        [
          ['bisect', 'bad'],
          ['bisect', 'good', 'HEAD~2'],
        ],
      ],
      ['done', [['bisect', 'reset']]],
      ['hard', [['reset', '-q', '--hard']]],
      ['restore', [['checkout', '-q', '--', 'a.yaml']]],
    ];
    const [name, calls] = this.any(ways);
    const before = this.text();
    for (const call of calls) this.git(...call);
    if (this.text() !== before) {
      this.wrote = null;
      this.gitWrote = true;
    }
    this.log.push(`git: ${name}${this.text() !== before ? ', another text' : ''}`);
  }

  /** Ids in all versions of the file that git keeps. */
  inGit(): Set<string> {
    const commits = this.git('rev-list', '--all', '--reflog', '--', 'a.yaml')
      .split('\n')
      .filter((c) => c);
    return idsIn(commits.map((c) => this.git('show', `${c}:a.yaml`)).join('\n'));
  }

  async step(): Promise<void> {
    const p = this.random();
    if (p < 0.4) await this.mark();
    else if (p < 0.65) this.editorStep();
    else if (p < 0.75) this.gitStep();
    else if (p < 0.79) {
      this.log.push('killed');
      await this.kill();
    } else if (p < 0.82) {
      this.log.push('left and opened');
      await this.leave();
      await this.kill();
    }
    await this.pass(this.any([5, 60, 200, 800, 5000]));
  }
}

const namesIn = (say: string): string[] => say.match(/[\w.-]+\.yaml(?=[.\s]|$)/g) ?? [];

async function storm(seed: number): Promise<void> {
  const s = new Storm(seed);
  onTestFinished(() => rmSync(s.top, { recursive: true, force: true }));
  await s.look();
  for (let n = 0; n < STEPS; n++) await s.step();
  s.finishEditor();
  for (const ms of [100, 1000, 5000, 5000]) await s.pass(ms);
  await s.leave();

  const names = readdirSync(s.folder);
  const named = new Set(s.said.flatMap(namesIn));
  const places = names.filter(
    (name) => name === 'a.yaml' || s.named.has(statSync(join(s.folder, name)).ino),
  );
  const there = idsIn(places.map((name) => s.text(name) ?? '').join('\n'));
  const moved = idsIn(
    names
      .filter((name) => name.startsWith('old-'))
      .map((name) => s.text(name) ?? '')
      .join('\n'),
  );
  for (const id of moved) if (s.placed.has(id)) there.add(id);
  const git = s.inGit();
  const why = `storm ${seed}:\n${s.log.slice(-70).join('\n')}\n`;
  const lost = [...s.shown].filter((id) => !there.has(id) && !git.has(id));
  expect(lost, why).toEqual([]);
  // What the editor wrote last is there to the last line of the person's part.
  if (s.wrote !== null) {
    const upper = s.wrote.slice(0, s.wrote.indexOf('diary:'));
    expect(s.text()?.startsWith(upper), `${why}${s.text()}`).toBe(true);
  }
  const strange = names.filter(
    (name) =>
      !/^(a\.yaml|other\.txt|old-\d+\.yaml|\.git|\.gitattributes|\.putback)$/.test(name) &&
      !(/^a\.kept-\d+\.yaml$/.test(name) && named.has(name)),
  );
  expect(strange, why).toEqual([]);
  expect(readdirSync(s.top).sort(), why).toEqual(['bench', 'outside.txt']);
  expect(readFileSync(join(s.top, 'outside.txt'), 'utf8')).toBe('mine\n');
  expect(s.text('other.txt'), why).toBe('other\n');
  for (const name of names.filter((n) => /^old-|^a\.kept|^a\.yaml$/.test(n))) {
    const text = s.text(name) ?? '';
    // Another job has none of the marks.
    if (text.includes('Fork seals')) expect(idsIn(text).size, `${why}${name}\n${text}`).toBe(0);
  }
  const side = join(s.folder, '.putback');
  expect(existsSync(side) ? readdirSync(side) : ['.gitignore'], why).toEqual(['.gitignore']);
}

it(
  `${STORMS} storms: every mark that was shown as done is in the file, where the screen says, or in git`,
  async () => {
    let marks = 0;
    for (let n = 0; n < STORMS; n++) {
      await storm(FIRST + n);
      marks++;
    }
    expect(marks).toBe(STORMS);
  },
  60_000 + STORMS * 10_000,
);
