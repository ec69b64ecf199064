/**
 * Loaded into the real program before anything else (`--import`): a disk that fails as long as a file says so.
 * FAILING names the file; its text is the code that every sync then answers with.
 */
import fs from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';

const { fsyncSync, readFileSync } = fs;

fs.fsyncSync = (fd) => {
  let code = '';
  try {
    code = readFileSync(process.env.FAILING, 'utf8');
  } catch {
    // The disk is well.
  }
  if (code !== '') throw Object.assign(new Error(`${code}: made to fail`), { code });
  fsyncSync(fd);
};
syncBuiltinESMExports();
