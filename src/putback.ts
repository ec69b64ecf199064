#!/usr/bin/env node
// The way in. Its Node is checked before anything is loaded that an older one could not read.
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { loader } from './compiled.ts';
import type * as Main from './main.ts';
import { nodeTooOld } from './node-version.ts';

/** Names the content of the bundles; set when they are made. */
declare const __STAMP__: string;

// A clone of the program pins its Node; what npm has installed has none.
const own = existsSync(join(__dirname, '../node_modules/node'));
const tooOld = nodeTooOld(process.versions.node, own);
if (tooOld) {
  process.stderr.write(`${tooOld}\n`);
  process.exitCode = 2;
} else {
  const [word = ''] = process.argv.slice(2);
  const use = /^[a-z]{2,12}$/.test(word) ? word : 'screens';
  const { main } = loader(__dirname, __STAMP__, use, process.env)('main') as typeof Main;
  void main();
}
