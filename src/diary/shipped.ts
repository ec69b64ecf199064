/** Where the files are that come with the program: beside dist when installed, beside src otherwise. */
import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export function shipped(folder: 'jobs' | 'templates'): string {
  for (let at = dirname(fileURLToPath(import.meta.url)); ; at = dirname(at)) {
    const found = join(at, folder);
    if (existsSync(join(at, 'package.json')) && existsSync(found)) return found;
    if (dirname(at) === at) throw new Error(`${folder} is missing from the installation`);
  }
}
