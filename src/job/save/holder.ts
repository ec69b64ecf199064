/** Who holds a lock, and whether that process can still be at work. */
import { readFileSync, readlinkSync } from 'node:fs';
import { hostname } from 'node:os';

export interface Holder {
  /** Host name, with the space of process ids where hosts have several (containers). */
  host: string;
  /** Changes with every start of the host; empty where the system does not tell. */
  boot: string;
  pid: number;
  /** When the process started, in the system's own count: a process id comes back, this with it does not. */
  start: string;
  /** One for each save. */
  nonce: string;
  /** When the lock was taken, ISO 8601; only shown. */
  at: string;
}

/** `unknown`: stopped, on another host, or on a system that does not tell; its lock counts by whether it moves. */
export type Life = 'alive' | 'dead' | 'unknown';

function orEmpty(read: () => string): string {
  try {
    return read().trim();
  } catch {
    return '';
  }
}

/** Fields 3 and 22 of Linux' `/proc/PID/stat`: state and start time. The name in field 2 may hold anything. */
function statOf(pid: number | 'self'): { state: string; start: string } {
  const stat = orEmpty(() => readFileSync(`/proc/${pid}/stat`, 'utf8'));
  const fields = stat.slice(stat.lastIndexOf(')') + 2).split(' ');
  return { state: fields[0] ?? '', start: fields[19] ?? '' };
}

let here: Omit<Holder, 'nonce' | 'at'> | null = null;

/** This process. */
export function self(): Omit<Holder, 'nonce' | 'at'> {
  here ??= {
    host: [hostname(), orEmpty(() => readlinkSync('/proc/self/ns/pid'))].filter((x) => x).join(' '),
    boot: orEmpty(() => readFileSync('/proc/sys/kernel/random/boot_id', 'utf8')),
    pid: process.pid,
    start: statOf('self').start,
  };
  return here;
}

/** A lock's text as its holder; null when it is none (yet). */
export function readHolder(text: string): Holder | null {
  try {
    const raw: unknown = JSON.parse(text);
    if (typeof raw !== 'object' || raw === null) return null;
    const h = raw as Record<string, unknown>;
    const texts = [h.host, h.boot, h.start, h.nonce, h.at].every((x) => typeof x === 'string');
    return texts && typeof h.pid === 'number' && Number.isInteger(h.pid) && h.pid > 0
      ? (raw as Holder)
      : null;
  } catch {
    return null;
  }
}

/** Nonces of the locks that this process holds now. */
const held = new Set<string>();
export const holding = (nonce: string): unknown => held.add(nonce);
export const letGo = (nonce: string): unknown => held.delete(nonce);

export function lifeOf(holder: Holder | null): Life {
  const me = self();
  if (!holder || holder.host !== me.host) return 'unknown';
  if (holder.boot !== me.boot) return 'dead';
  if (holder.pid === me.pid && holder.start === me.start) {
    return held.has(holder.nonce) ? 'alive' : 'dead';
  }
  try {
    process.kill(holder.pid, 0);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ESRCH') return 'dead';
  }
  const { state, start } = statOf(holder.pid);
  if (start === '' || holder.start === '') return 'unknown';
  if (start !== holder.start || state === 'Z' || state === 'X') return 'dead';
  return state === 'T' ? 'unknown' : 'alive';
}
