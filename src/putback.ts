#!/usr/bin/env node
// The way in. Its Node is checked before anything is loaded that an older one could not read.
import { nodeTooOld } from './node-version.ts';

const tooOld = nodeTooOld(process.versions.node);
if (tooOld) {
  process.stderr.write(`${tooOld}\n`);
  process.exitCode = 2;
} else {
  const { keepCompiled } = await import('./compiled.ts');
  await keepCompiled(process.env);
  const { main } = await import('./main.ts');
  await main();
}
