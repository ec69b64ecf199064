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
  /** Resolves when it says its first line. */
  ready: Promise<void>;
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
  const ready = new Promise<void>((resolve) => {
    child.stdout.on('data', (chunk) => {
      text += String(chunk);
      resolve();
    });
    child.on('close', () => resolve());
  });
  const said = () => text.split('\n').slice(0, -1);
  return {
    child,
    said,
    done: () => said().flatMap((l) => (l.startsWith('done ') ? [l.slice(5)] : [])),
    ready,
    ended: new Promise((resolve) => child.on('close', (code, signal) => resolve(signal ?? code))),
  };
}
