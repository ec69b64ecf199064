/**
 * Bundles the program with all its libraries into dist/, so that the packed file needs nothing else:
 *
 *     putback.js   checks its Node and fetches compiled code from the user's cache
 *     main.js      the program
 *     ink.js       Ink, React and the layout library, for the screens alone
 *
 * CommonJS, because V8's compiled code can be kept for it with all functions that a run needed.
 */
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';

const { version } = JSON.parse(readFileSync('package.json', 'utf8'));

/** @type {import('esbuild').BuildOptions} */
const common = {
  bundle: true,
  format: 'cjs',
  platform: 'node',
  target: 'node22',
  mainFields: ['module', 'main'],
  minify: true,
  supported: { 'dynamic-import': false },
  metafile: true,
  legalComments: 'none',
  write: false,
  outdir: 'dist',
  define: {
    'process.env.NODE_ENV': '"production"',
    'process.env.DEV': '"false"',
    'import.meta.url': '__url',
    __VERSION__: JSON.stringify(version),
  },
  banner: { js: 'const __url=require("node:url").pathToFileURL(__filename).href;' },
};

/** Modules that are given as text: by path, or by a pattern of what is imported. */
function given(name, filter, contents) {
  return {
    name,
    setup(b) {
      b.onResolve({ filter }, ({ path }) => ({ path, namespace: name }));
      b.onLoad({ filter: /.*/, namespace: name }, ({ path }) => ({
        contents: contents(path),
        resolveDir: '.',
      }));
    },
  };
}

/** In the program, what the screens draw with is fetched from its own file, once it is asked for. */
const drawing = given(
  'drawing',
  /^(ink|react|react\/jsx-runtime)$/,
  (path) => `module.exports = __load('ink')('${path}');`,
);

/** The file with one part of it replaced; a library that changed there stops the build. */
function replaced(path, what, by) {
  const text = readFileSync(path, 'utf8');
  if (!text.includes(what)) throw new Error(`${path} has no ${what} any more`);
  return text.replace(what, by);
}

/** What Ink waits for while it is loaded is for developing alone. */
const noDevtools = {
  name: 'no-devtools',
  setup(b) {
    b.onLoad({ filter: /ink.build.reconciler\.js$/ }, ({ path }) => ({
      contents: replaced(path, "await import('./devtools.js')", '').replace(
        'await loadPackageJson()',
        '{}',
      ),
    }));
  },
};

/** The layout library waits for its own WebAssembly; made at once, nothing in the bundle has to wait. */
const layoutAtOnce = {
  name: 'layout-at-once',
  setup(b) {
    b.onLoad({ filter: /yoga-layout.dist.src.index\.js$/ }, ({ path }) => {
      const binary = join(path, '../../binaries/yoga-wasm-base64-esm.js');
      const [, base64] = /"data:application\/octet-stream;base64,([^"]+)"/.exec(
        readFileSync(binary, 'utf8'),
      );
      return {
        contents: replaced(
          path,
          'wrapAssembly(await loadYoga())',
          `(() => {
            const bytes = Buffer.from('${base64}', 'base64');
            const lib = {
              instantiateWasm(imports, done) {
                const instance = new WebAssembly.Instance(new WebAssembly.Module(bytes), imports);
                done(instance);
                return instance.exports;
              },
            };
            loadYoga(lib);
            return wrapAssembly(lib);
          })()`,
        ),
      };
    });
    b.onLoad({ filter: /yoga-wasm-base64-esm\.js$/ }, ({ path }) => ({
      contents: readFileSync(path, 'utf8').replace(
        /"data:application\/octet-stream;base64,[^"]+"/,
        '""',
      ),
    }));
  },
};

/** The text of one bundle, and what it was made of. */
async function bundled(entry, name, options) {
  const { outputFiles, metafile } = await build({ ...common, ...entry, ...options });
  const [{ text }] = outputFiles;
  writeFileSync(`dist/${name}.js`, text);
  return { text, metafile };
}

rmSync('dist', { recursive: true, force: true });
mkdirSync('dist');
writeFileSync('dist/package.json', '{"type":"commonjs"}\n');
const main = await bundled({ entryPoints: ['src/main.ts'] }, 'main', { plugins: [drawing] });
const ink = await bundled(
  {
    stdin: {
      contents: `
        const parts = {
          ink: () => require('ink'),
          react: () => require('react'),
          'react/jsx-runtime': () => require('react/jsx-runtime'),
        };
        module.exports = (name) => parts[name]();`,
      resolveDir: '.',
    },
  },
  'ink',
  { plugins: [noDevtools, layoutAtOnce] },
);
const stamp = createHash('sha256').update(main.text).update(ink.text).digest('hex').slice(0, 16);
const putback = await bundled({ entryPoints: ['src/putback.ts'] }, 'putback', {
  define: { ...common.define, __STAMP__: JSON.stringify(stamp) },
});
const made = { main: main.metafile, ink: ink.metafile, putback: putback.metafile };
mkdirSync('dist/made');
writeFileSync('dist/made/meta.json', JSON.stringify(made));

const MIT = (holder) => `
MIT License

Copyright (c) ${holder}

Permission is hereby granted, free of charge, to any person obtaining a copy of this software and associated documentation files (the "Software"), to deal in the Software without restriction, including without limitation the rights to use, copy, modify, merge, publish, distribute, sublicense, and/or sell copies of the Software, and to permit persons to whom the Software is furnished to do so, subject to the following conditions:

The above copyright notice and this permission notice shall be included in all copies or substantial portions of the Software.

THE SOFTWARE IS PROVIDED "AS IS", WITHOUT WARRANTY OF ANY KIND, EXPRESS OR IMPLIED, INCLUDING BUT NOT LIMITED TO THE WARRANTIES OF MERCHANTABILITY, FITNESS FOR A PARTICULAR PURPOSE AND NONINFRINGEMENT. IN NO EVENT SHALL THE AUTHORS OR COPYRIGHT HOLDERS BE LIABLE FOR ANY CLAIM, DAMAGES OR OTHER LIABILITY, WHETHER IN AN ACTION OF CONTRACT, TORT OR OTHERWISE, ARISING FROM, OUT OF OR IN CONNECTION WITH THE SOFTWARE OR THE USE OR OTHER DEALINGS IN THE SOFTWARE.
`;
/** Licences of packages that name theirs and bring no file of it. */
const WITHOUT_FILE = { 'yoga-layout': MIT('Facebook, Inc. and its affiliates.') };

/** The licence text of each library that is inside. */
const packages = new Set();
for (const input of Object.values(made).flatMap((m) => Object.keys(m.inputs))) {
  const found = input.match(/^(.*node_modules\/((?:@[^/]+\/)?[^/]+))\//);
  if (found) packages.add(found[1]);
}
const licences = [...packages].sort().map((folder) => {
  const { name, version, license } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
  const file = readdirSync(folder).find((f) => /^(licen[cs]e|copying)/i.test(f));
  const text = file ? readFileSync(join(folder, file), 'utf8').trim() : WITHOUT_FILE[name]?.trim();
  if (!text) throw new Error(`${name} brings no text of its licence (${license}): add it here`);
  return `${name} ${version} (${license})\n\n${text}\n`;
});
writeFileSync('dist/LICENSES.txt', licences.join('\n----\n\n'));

// The page for man, in the program's own words.
const page = execFileSync(process.execPath, ['dist/putback.js', 'help', '--man']);
writeFileSync('dist/putback.1', page);
