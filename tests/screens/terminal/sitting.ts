/** A sitting at one job as the screens have it: real files, a real git, and a clock that the test sets. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, onTestFinished } from 'vitest';
import { readJob } from '../../../src/job/read.ts';
import type { Wish } from '../../../src/model/types.ts';
import { filesIn } from '../../../src/screens/terminal/loop-files.ts';
import { shelf } from '../../../src/screens/terminal/shelf.ts';
import { pinnedEnv } from '../../terminal/world.ts';

export const JOB =
  'putback: 1\njob: Left cover\npieces:\n  cover: {bolts: S S S S}\nbolts: {S: M6x25}\ndiary:\n';

/** A text that has stood still for so long, ms, is nobody's half any more. */
export const STOOD = 1000;
/** And so long, one that cannot be read is not waited for. */
export const LONG = 4000;

export class Sitting {
  readonly folder: string;
  readonly job: string;
  private ids = 0;
  private clock = 1e6;
  readonly files;

  constructor(text: string | null = JOB, folder = mkdtempSync(join(tmpdir(), 'putback-shown-'))) {
    this.folder = folder;
    this.job = join(folder, 'a.yaml');
    onTestFinished(() => rmSync(this.folder, { recursive: true, force: true }));
    if (text !== null) writeFileSync(this.job, text);
    // Git tells its own time, in whole seconds.
    const now = () => `${new Date().toISOString().slice(0, 19)}+00:00`;
    const id = () => `mark000${++this.ids}`;
    this.files = filesIn(
      this.folder,
      { now, id },
      {
        ...shelf,
        clock: () => this.clock,
        age: () => LONG,
        // A pause passes at once; what is to be looked at later, the test looks at.
        later: (ms, call) => {
          if (ms < 100) {
            this.clock += ms;
            setImmediate(call);
          }
          return () => {};
        },
      },
    );
  }

  /** As a person opens it. */
  async open() {
    const answer = await this.files.hands.open({ do: 'open', file: 'a.yaml' });
    return answer.on === 'file' ? answer : null;
  }

  /** As it is looked at again, so much later. */
  async again(ms = 0) {
    this.clock += ms;
    this.files.expect('a.yaml');
    return await this.open();
  }

  /** What is said of a text once it has stood still. */
  async stood(ms = STOOD) {
    await this.again();
    return await this.again(ms);
  }

  async mark(hole: string) {
    const wish: Wish = { do: 'out', piece: 'cover', holes: [hole] };
    const answer = await this.files.hands.record({ do: 'record', file: 'a.yaml', wish });
    if (answer.on !== 'recorded') throw new Error(answer.on);
    return answer.result;
  }

  async out(hole: string) {
    const result = await this.mark(hole);
    return result.ok ? result : null;
  }

  text(file = 'a.yaml'): string {
    return readFileSync(join(this.folder, file), 'utf8');
  }

  ids_(file = 'a.yaml'): string {
    const read = readJob(this.text(file), file);
    expect(read.faults).toEqual([]);
    return read.entries.map((e) => e.id).join(' ');
  }

  names(): string[] {
    return readdirSync(this.folder).filter((name) => !name.startsWith('.'));
  }

  git(...args: string[]): string {
    const env = { ...process.env, ...pinnedEnv(this.folder) };
    return execFileSync('git', ['-C', this.folder, ...args], { env, encoding: 'utf8' });
  }
}
