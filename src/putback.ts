#!/usr/bin/env node
// The way in. Its Node is checked before anything is loaded that an older one could not read.
import { existsSync } from 'node:fs';
import { cacheFolder, loader, versionOf } from './compiled.ts';
import type * as Main from './main.ts';
import { nodeTooOld } from './node-version.ts';

/** Names the content of the program's parts, and their sizes; the commands. Set when they are made. */
declare const __STAMP__: string;
declare const __SIZES__: number[];
declare const __USES__: string[];
declare const __VERSION__: string;

// A clone of the program pins its Node; what npm has installed has none.
const own = () => existsSync(`${__dirname}/../node_modules/node`);
const tooOld = nodeTooOld(process.versions.node, own);
if (tooOld) {
  process.stderr.write(`${tooOld}\n`);
  process.exitCode = 2;
} else {
  const [word = ''] = process.argv.slice(2);
  const use = __USES__.includes(word) ? word : word.startsWith('-') ? null : 'screens';
  const pack = { file: `${__dirname}/main.js.br`, sizes: __SIZES__, stamp: __STAMP__ };
  try {
    const { main } = loader(pack, use, process.env)(0) as typeof Main;
    const folder = cacheFolder(process.env);
    void main(folder === null ? null : { folder, version: versionOf(__STAMP__) });
  } catch (error) {
    process.stderr.write(`${notStarted(error as Error)}\n`);
    process.exitCode = 1;
  }
}

/** Before anything of the program runs nothing can be lost: what is said is the way out. */
function notStarted({ name, message, stack = '' }: Error): string {
  if (name === 'NotWhole') return message;
  return [
    `putback could not start: ${message}`,
    'Install it again. If it stays so, send these lines to whoever gave you putback:',
    `  putback ${__VERSION__}, Node ${process.version}, ${process.platform} ${process.arch}`,
    ...stack
      .split('\n')
      .filter((line) => /^\s+at /.test(line))
      .slice(0, 8),
  ].join('\n');
}
