/**
 * Loaded into the real program before anything else (`--import`): a disk that fails as long as a file says so.
 * FAILING names the file; its text is the code that every sync then answers with. On a terminal each time leaves a
 * mark.
 */
import fs from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';
import { isatty } from 'node:tty';

const { fsyncSync, readFileSync, writeSync } = fs;
/** Read once: the stream itself would be made before the program makes it. */
const onTerminal = isatty(1);

fs.fsyncSync = (fd) => {
  let code = '';
  try {
    code = readFileSync(process.env.FAILING, 'utf8');
  } catch {
    // The disk is well.
  }
  if (code !== '' && onTerminal) writeSync(1, '\x1b]putback-test;disk failed\x1b\\');
  if (code !== '') throw Object.assign(new Error(`${code}: made to fail`), { code });
  fsyncSync(fd);
};
syncBuiltinESMExports();
