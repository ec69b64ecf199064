/** Makes the world once, finds the command, prints its answer. */
import { existsSync, realpathSync, rmSync, writeSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { customAlphabet } from 'nanoid/non-secure';
import { dispatch } from './commands/dispatch.ts';
import { keptOrders } from './kept-orders.ts';
import { ownZone } from './model/time.ts';
import { alsoKeptIn } from './piece/sequence/memory.ts';
import type { World } from './world.ts';

const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz';
/** An id starts with a letter, so that no YAML reader takes it for a number. It keeps no secret. */
const first = customAlphabet(LETTERS, 1);
const others = customAlphabet(`${LETTERS}0123456789`, 7);

export function makeWorld(kept: { folder: string; version: string } | null = null): World {
  return {
    now: () => localTime(new Date()),
    get zone() {
      const zone = zoneOf(process.env.TZ);
      ownZone(zone, (seconds) => -new Date(seconds * 1000).getTimezoneOffset() + 0);
      return zone;
    },
    id: () => first() + others(),
    get folder() {
      return process.cwd();
    },
    env: process.env,
    // Each of these costs a millisecond or two, and many a run uses none of them.
    get stdin() {
      return process.stdin;
    },
    get stdout() {
      return listened(process.stdout);
    },
    get stderr() {
      return listened(process.stderr);
    },
    // A console of Windows takes bytes for another alphabet; its stream does not.
    ...(process.platform === 'win32' ? {} : { writeAtOnce }),
    platform: process.platform,
    get program() {
      return ownName();
    },
    forget() {
      if (kept !== null) rmSync(join(kept.folder, kept.version), { recursive: true, force: true });
    },
  };
}

const ZONE =
  /^(?:Africa|America|Antarctica|Arctic|Asia|Atlantic|Australia|Europe|Indian|Pacific)(?:\/[A-Z][A-Za-z_-]+){1,2}$/;
const ZONES = '/usr/share/zoneinfo/';

/**
 * The machine's zone by its name, as the system has it: what Node would say, without loading what it knows of the
 * world's languages for that.
 */
export function zoneOf(set: string | undefined): string {
  try {
    const file = set === undefined ? realpathSync('/etc/localtime') : `${ZONES}${set}`;
    const name = file.startsWith(ZONES) ? file.slice(ZONES.length) : '';
    if (/^(?:Etc\/)?UTC$/.test(name) && existsSync(file)) return 'UTC';
    if (ZONE.test(name) && existsSync(file)) return name;
  } catch {
    // Another system: Node knows.
  }
  return new Intl.DateTimeFormat().resolvedOptions().timeZone;
}

function ownName(): string {
  const file = realpathSync(process.argv[1] ?? '.');
  const onPath = (process.env.PATH ?? '').split(delimiter).some((folder) => {
    try {
      return folder !== '' && realpathSync(join(folder, 'putback')) === file;
    } catch {
      return false;
    }
  });
  return onPath ? 'putback' : [process.execPath, file].map(quoted).join(' ');
}

/** A word for a shell. */
function quoted(word: string): string {
  return `'${word.replaceAll("'", "'\\''")}'`;
}

/** RFC 3339 with the offset of this machine's zone, whole seconds. */
export function localTime(date: Date): string {
  const offset = -date.getTimezoneOffset();
  const local = new Date(date.getTime() + offset * 60_000).toISOString().slice(0, 19);
  const two = (n: number) => String(Math.floor(Math.abs(n))).padStart(2, '0');
  return `${local}${offset < 0 ? '-' : '+'}${two(offset / 60)}:${two(offset % 60)}`;
}

/** Whoever writes to it is told of its errors; without anybody listening they would end the program. */
function listened(stdout: NodeJS.WriteStream): NodeJS.WriteStream {
  return stdout.listenerCount('error') > 0 ? stdout : stdout.on('error', () => {});
}

/** What a reader does not take yet is left. */
function writeAtOnce(output: 1 | 2, text: string): Uint8Array {
  let left: Uint8Array = Buffer.from(text);
  try {
    while (left.length > 0) left = left.subarray(writeSync(output, left));
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EAGAIN') throw error;
  }
  return left;
}

/** `kept`: where what was worked out is kept for the next run; null: nowhere. */
export async function main(kept: { folder: string; version: string } | null): Promise<void> {
  if (kept !== null) alsoKeptIn(keptOrders(kept.folder, kept.version));
  process.exitCode = await dispatch(process.argv.slice(2), makeWorld(kept));
  // Where nothing is under way any more Node would end by itself, but would first take apart all that it made.
  process.nextTick(() => {
    if (process.getActiveResourcesInfo().length === 0) process.exit();
  });
}
