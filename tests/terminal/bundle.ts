/** Bundles a small program into a temporary folder, with the settings of esbuild.config.js. */
import { mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, parse, resolve } from 'node:path';
import { build, type Plugin } from 'esbuild';

const root = resolve(import.meta.dirname, '../..');

const noDevtools: Plugin = {
  name: 'no-devtools',
  setup(b) {
    b.onResolve({ filter: /^react-devtools-core$/ }, () => ({ path: 'none', namespace: 'stub' }));
    b.onLoad({ filter: /.*/, namespace: 'stub' }, () => ({ contents: 'export default {}' }));
  },
};

/** `source` is a path from the repository's root. Answers the bundle's path; its folder is the caller's to remove. */
export async function bundle(source: string): Promise<string> {
  const outdir = mkdtempSync(join(tmpdir(), 'putback-bundle-'));
  await build({
    absWorkingDir: root,
    entryPoints: [source],
    outdir,
    outExtension: { '.js': '.mjs' },
    bundle: true,
    splitting: true,
    format: 'esm',
    platform: 'node',
    target: 'node22',
    minify: true,
    keepNames: true,
    legalComments: 'none',
    jsx: 'automatic',
    define: { 'process.env.NODE_ENV': '"production"', __VERSION__: '"0.0.0"' },
    plugins: [noDevtools],
    banner: {
      js: 'import {createRequire as __cr} from "node:module";const require=__cr(import.meta.url);',
    },
  });
  return join(outdir, `${parse(source).name}.mjs`);
}
