#!/usr/bin/env node
// The way in. Its Node is checked before anything is loaded that an older one could not read.
import { loader } from './compiled.ts';
import type * as Main from './main.ts';
import { nodeTooOld } from './node-version.ts';

/** Names the content of the bundles; set when they are made. */
declare const __STAMP__: string;

const tooOld = nodeTooOld(process.versions.node);
if (tooOld) {
  process.stderr.write(`${tooOld}\n`);
  process.exitCode = 2;
} else {
  const [word = ''] = process.argv.slice(2);
  const use = /^[a-z]{2,12}$/.test(word) ? word : 'screens';
  const { main } = loader(__dirname, __STAMP__, use, process.env)('main') as typeof Main;
  void main();
}
