/** putback in a pinned world: its clock, ids and folder are given, its output is caught. */
import { Writable } from 'node:stream';
import { dispatch } from '../../src/commands/dispatch.ts';
import type { World } from '../../src/world.ts';

class Caught extends Writable {
  text = '';
  override _write(chunk: unknown, _encoding: string, done: () => void): void {
    this.text += String(chunk);
    done();
  }
}

export interface Ran {
  exit: number;
  out: string;
  err: string;
}

/** A world of which nothing is whoever's runs the tests; its outputs are streams that the test reads. */
export function worldWith({
  stdout,
  stderr,
  ...own
}: Pick<World, 'now' | 'folder'> &
  Partial<Omit<World, 'stdout' | 'stderr'>> &
  Record<'stdout' | 'stderr', Writable>): World {
  return {
    id: () => 'mark0001',
    env: {},
    stdin: process.stdin,
    stdout: stdout as unknown as NodeJS.WriteStream,
    stderr: stderr as unknown as NodeJS.WriteStream,
    platform: 'linux',
    program: 'putback',
    ...own,
  };
}

/** A world that runs commands in one folder; a minute passes with each of them. */
export class Pinned {
  readonly folder: string;
  private minutes = 0;
  private ids = 0;

  private readonly zone: string | undefined;
  private readonly env: World['env'];

  constructor(folder: string, zone?: string, env: World['env'] = {}) {
    this.folder = folder;
    this.zone = zone;
    this.env = env;
  }

  async run(...argv: string[]): Promise<Ran> {
    const out = new Caught();
    const err = new Caught();
    this.minutes += 1;
    const time = new Date(Date.UTC(2026, 3, 11, 16, this.minutes)).toISOString().slice(0, 19);
    const world = worldWith({
      now: () => `${time}+00:00`,
      ...(this.zone === undefined ? {} : { zone: this.zone }),
      id: () => {
        this.ids += 1;
        return `mark${String(this.ids).padStart(4, '0')}`;
      },
      folder: this.folder,
      env: this.env,
      stdout: out,
      stderr: err,
    });
    const exit = await dispatch(argv, world);
    return { exit, out: out.text, err: err.text };
  }

  /** The JSON answer of a command, with its exit code. */
  async json(...argv: string[]): Promise<{ exit: number; json: Record<string, unknown> }> {
    const { exit, out } = await this.run(...argv, '--json');
    return { exit, json: JSON.parse(out) };
  }
}
