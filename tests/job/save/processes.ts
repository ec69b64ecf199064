/** Real processes that mark a job file. */
import { type ChildProcessWithoutNullStreams, spawn } from 'node:child_process';
import { join } from 'node:path';
import { build } from 'esbuild';
import { newFolder } from './folder.ts';

export interface Marker {
  child: ChildProcessWithoutNullStreams;
  /** What it has said so far. */
  said: () => string[];
  /** Ids that it said were done. */
  done: () => string[];
  /** Waits until something is true of what it has said; asked anew with each piece, and at its end. */
  until: (isTrue: () => boolean) => Promise<void>;
  ended: Promise<NodeJS.Signals | number | null>;
}

/** Bundles a fixture, so that it starts at once, and gives back how to run it. */
export async function bundle(fixture: string): Promise<(...args: string[]) => Marker> {
  const outfile = join(newFolder(), 'fixture.mjs');
  await build({
    entryPoints: [join(import.meta.dirname, fixture)],
    outfile,
    bundle: true,
    platform: 'node',
    format: 'esm',
    banner: {
      js: 'import {createRequire as c} from "node:module";const require=c(import.meta.url);',
    },
  });
  return (...args) => start(outfile, args);
}

function start(script: string, args: string[]): Marker {
  const child = spawn(process.execPath, [script, ...args], { stdio: 'pipe' });
  let text = '';
  child.stderr.pipe(process.stderr);
  const waiting = new Set<() => void>();
  const tell = () => {
    for (const look of [...waiting]) look();
  };
  child.stdout.on('data', (chunk) => {
    text += String(chunk);
    tell();
  });
  const said = () => text.split('\n').slice(0, -1);
  return {
    child,
    said,
    done: () => said().flatMap((l) => (l.startsWith('done ') ? [l.slice(5)] : [])),
    until: (isTrue) =>
      new Promise((done, fail) => {
        const look = () => {
          if (!isTrue()) return;
          waiting.delete(look);
          done();
        };
        child.on('close', () => fail(new Error(`It ended, and had said: ${text}`)));
        waiting.add(look);
        look();
      }),
    ended: new Promise((resolve) => child.on('close', (code, signal) => resolve(signal ?? code))),
  };
}

/**
 * ms. The moment at which a process is killed is to be any: nothing can be waited for. A timer would always fire at
 * the same points of the other process.
 */
export async function busy(ms: number): Promise<void> {
  const end = performance.now() + ms;
  while (performance.now() < end) await new Promise((done) => setImmediate(done));
}
