// Bundles src/putback.ts with all its libraries into dist/, so that the packed file needs nothing else.
import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';

const { version } = JSON.parse(readFileSync('package.json', 'utf8'));

const stubDevtools = {
  name: 'no-devtools',
  setup(b) {
    b.onResolve({ filter: /^react-devtools-core$/ }, () => ({ path: 'none', namespace: 'stub' }));
    b.onLoad({ filter: /.*/, namespace: 'stub' }, () => ({ contents: 'export default {}' }));
  },
};

rmSync('dist', { recursive: true, force: true });
const result = await build({
  entryPoints: ['src/putback.ts'],
  outdir: 'dist',
  bundle: true,
  splitting: true,
  format: 'esm',
  platform: 'node',
  target: 'node22',
  minify: true,
  keepNames: true,
  metafile: true,
  legalComments: 'none',
  define: { 'process.env.NODE_ENV': '"production"', __VERSION__: JSON.stringify(version) },
  plugins: [stubDevtools],
  banner: {
    js: 'import {createRequire as __cr} from "node:module";const require=__cr(import.meta.url);',
  },
});
writeFileSync('dist/meta.json', JSON.stringify(result.metafile));

/** The licence text of each library that is inside the bundle. */
const packages = new Set();
for (const input of Object.keys(result.metafile.inputs)) {
  const found = input.match(/^(.*node_modules\/((?:@[^/]+\/)?[^/]+))\//);
  if (found) packages.add(found[1]);
}
const licences = [...packages].sort().map((folder) => {
  const { name, version, license } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
  const file = readdirSync(folder).find((f) => /^(licen[cs]e|copying)/i.test(f));
  const text = file ? readFileSync(join(folder, file), 'utf8').trim() : '';
  return `${name} ${version} (${license})\n\n${text}\n`;
});
writeFileSync('dist/LICENSES.txt', licences.join('\n----\n\n'));
