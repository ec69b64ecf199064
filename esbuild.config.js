/**
 * Bundles the program with all its libraries into dist/, so that the packed file needs nothing else:
 *
 *     putback.js   checks its Node, says where the parts of the program are, fetches compiled code
 *     main.js.br   the program in parts, packed, of which a run reads what it needs; the last is Ink with React
 *     yoga.wasm    what Ink lays out with
 *
 * The parts are functions and no modules, because V8's compiled code can be kept for them, of several in one, with
 * all functions that a run needed.
 */
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { brotliCompressSync, constants } from 'node:zlib';
import { build } from 'esbuild';
import { minifySync } from 'rolldown/experimental';
import { allCommands } from './src/commands/table.ts';

const { version } = JSON.parse(readFileSync('package.json', 'utf8'));

/** Where the parts are put until all are there; on the same disk, so that it can be renamed. */
const OUT = 'node_modules/.cache/dist';
rmSync(OUT, { recursive: true, force: true });
mkdirSync(OUT, { recursive: true });

/** @type {import('esbuild').BuildOptions} */
const common = {
  bundle: true,
  platform: 'node',
  target: 'node22',
  mainFields: ['module', 'main'],
  minify: true,
  metafile: true,
  legalComments: 'none',
  write: false,
  outdir: 'dist',
  define: {
    'process.env.NODE_ENV': '"production"',
    'process.env.DEV': '"false"',
    'import.meta.url': '__here.url',
    __VERSION__: JSON.stringify(version),
  },
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

/** In the program, what the screens draw with is fetched from its own part, once it is asked for. */
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

/** The same library as modules, of which only what is used gets in. */
const yamlModules = {
  name: 'yaml-modules',
  setup(b) {
    const path = join(import.meta.dirname, 'node_modules/yaml/browser/dist/index.js');
    b.onResolve({ filter: /^yaml$/ }, () => ({ path }));
  },
};

/** What a late module hands on is loaded when it is asked for. */
const late = {
  name: 'late',
  setup(b) {
    b.onLoad({ filter: /src.*\.late\.ts$/ }, ({ path }) => {
      const text = readFileSync(path, 'utf8');
      const [, from] = /import \* as late from '([^']+)'/.exec(text);
      const [, name] = /export const (\w+) = \(\) => late;/.exec(text);
      return {
        contents: `export const ${name} = () => __sync(import('${from}'));`,
        resolveDir: dirname(path),
      };
    });
  },
};

/** What the one function of such a module answers is worked out here, and stands in the program as data. */
const madeHere = {
  name: 'made-here',
  setup(b) {
    b.onLoad({ filter: /src.*\.made\.ts$/ }, async ({ path }) => {
      const [[name, make]] = Object.entries(await import(pathToFileURL(path)));
      const text = JSON.stringify(JSON.stringify(make()));
      return { contents: `let made; export const ${name} = () => (made ??= JSON.parse(${text}));` };
    });
  },
};

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
      writeFileSync(`${OUT}/yoga.wasm`, Buffer.from(base64, 'base64'));
      return {
        contents: replaced(
          path,
          'wrapAssembly(await loadYoga())',
          `(() => {
            const bytes = require('node:fs').readFileSync(__filename.replace('main.js', 'yoga.wasm'));
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

/** A module whose functions only give this. */
function hollow(text, given) {
  const names = [...text.matchAll(/^export (?:async )?(?:function|const|let) (\w+)/gm)];
  const also = [...text.matchAll(/^export \{ \w+ as (\w+) \};/gm)];
  return [...names, ...also].map(([, name]) => `export const ${name}=()=>${given};`).join('');
}

/** Of what a picture says of itself only its Exif is asked for (paper/desk/camera.ts), in kinds that have it. */
const KINDS = ['EXIF', 'JPEG', 'TIFF', 'PNG', 'HEIC', 'AVIF', 'WEBP', 'JXL'];
const NOT_ASKED =
  /(?:iptc|xmp|icc|mpf|photoshop|canon|pentax|jfif|thumbnail|dom-parser|(?<!name)file-|file-tags|header-gif|load-auto)[\w-]*\.js$/;
/** The tags that the camera is read by. */
const ASKED =
  /0x[0-9a-f]{4}: (?:\{\s*name: 'Orientation'|'(?:DateTime(?:Original|Digitized)?|OffsetTime(?:Original)?|Exif IFD Pointer)')/g;
const exifAlone = {
  name: 'exif-alone',
  setup(b) {
    b.onLoad({ filter: /exifreader.src.tag-names-[\w-]+-ifd\.js$/ }, ({ path }) => ({
      contents:
        `export default {${readFileSync(path, 'utf8').match(ASKED)?.join(',') ?? ''}}`.replaceAll(
          /\{\s*name: /g,
          '',
        ),
    }));
    b.onLoad({ filter: /exifreader.src.[\w-]+\.js$/ }, ({ path }) => {
      const text = readFileSync(path, 'utf8');
      if (path.endsWith('constants.js') && !path.endsWith('tiff-constants.js')) {
        const flags = text.match(/USE_\w+/g);
        return {
          contents: flags
            .map((flag) => `export const ${flag}=${KINDS.includes(flag.slice(4))};`)
            .join(''),
        };
      }
      if (!NOT_ASKED.test(path)) {
        return { contents: text.replace('import Constants from', 'import * as Constants from') };
      }
      return { contents: `${hollow(text, '{}')}export default {};` };
    });
  },
};

/** The JSON Schema is made here: what zod makes one with is not asked for by the program. */
const noSchemaMaking = {
  name: 'no-schema-making',
  setup(b) {
    b.onLoad(
      { filter: /zod.v4.core.(?:to-json-schema|json-schema-processors)\.js$/ },
      ({ path }) => ({
        contents: hollow(readFileSync(path, 'utf8'), '()=>{}'),
      }),
    );
  },
};

/** Many a run never calls what is imported from these, and each costs a millisecond or more: fetched when called. */
const WHEN_CALLED = ['child_process', 'crypto', 'os', 'timers/promises', 'url', 'util', 'zlib'].map(
  (n) => `node:${n}`,
);

/** `a as b, c` of an import or export: `[['a', 'b'], ['c', 'c']]`. */
const namesOf = (list) =>
  list.split(',').map((one) => {
    const [from, to = from] = one.trim().split(' as ');
    return [from, to];
  });

/**
 * A file that esbuild made, as the body of a function: what it imports comes from `__load` or `require`, what it
 * exports goes to `__out`. No part is asked for before it has run to its end, and none changes what it exported:
 * so plain variables serve.
 */
function asPart(text, imports, numberOf) {
  let found = 0;
  const partAt = (path) => numberOf.get(path.replace(/^\.\//, ''));
  const body = text
    .replace(
      /(?<=^|[;}\n])import(?:(\{[^}]*\}|\*as [\w$]+|[\w$]+) ?from)?"(node:[a-z0-9_/]+|\.\/[^"]+\.js)";/g,
      (_all, what = '', path) => {
        found++;
        const from = path.startsWith('node:') ? `require("${path}")` : `__load(${partAt(path)})`;
        if (what === '') return `${from};`;
        if (!what.startsWith('{')) return `var ${what.replace('*as ', '')}=${from};`;
        const names = namesOf(what.slice(1, -1));
        if (!WHEN_CALLED.includes(path)) {
          return `var{${names.map(([a, b]) => `${a}:${b}`)}}=${from};`;
        }
        return `var ${names.map(([a, b]) => `${b}=(...a)=>${from}.${a}(...a)`)};`;
      },
    )
    .replace(/__sync\(import\("(\.\/[^"]+)"\)\)/g, (_all, path) => {
      found++;
      return `__load(${partAt(path)})`;
    })
    .replace(/\bimport\("(node:[a-z0-9_/]+|\.\/[^"]+)"\)/g, (_all, path) => {
      found++;
      const from = path.startsWith('node:') ? `require("${path}")` : `__load(${partAt(path)})`;
      return `(async()=>${from})()`;
    })
    .replace(/(?<=^|[;}\n])export\{([^}]*)\};?\s*$/, (_all, list) =>
      namesOf(list)
        .map(([from, to]) => `__out.${to}=${from};`)
        .join(''),
    );
  if (found !== imports.length || /\bimport\(|[;}]export\{/.test(body)) {
    throw new Error(`${found} of ${imports.length} imports found in ${text.slice(0, 80)}`);
  }
  return asAscii(body);
}

/** One byte a letter is half the memory. What esbuild leaves stands in regular expressions, which know the escape. */
const asAscii = (text) =>
  text.replace(
    /[^\0-\x7f]/g,
    (letter) => `\\u${letter.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );

/** esbuild gives each name of all parts a letter of its own. Named anew part by part, a twentieth less is packed. */
function shortened(part) {
  const { code, errors } = minifySync('main.js', `x=${part}`, {
    module: false,
    compress: { target: 'node22' },
    mangle: true,
  });
  if (errors.length > 0) throw new Error(errors[0].message);
  return asAscii(code).replace(/^x=|;\s*$/g, '');
}

/** As small as it gets for a release, which takes seconds; else at once, and a tenth larger. */
const SMALL = {
  [constants.BROTLI_PARAM_QUALITY]: process.argv.includes('--release') ? 11 : 5,
  [constants.BROTLI_PARAM_LGWIN]: constants.BROTLI_MAX_WINDOW_BITS,
};

writeFileSync(`${OUT}/package.json`, '{"type":"commonjs"}\n');
const main = await build({
  ...common,
  entryPoints: ['src/main.ts'],
  format: 'esm',
  splitting: true,
  plugins: [drawing, yamlModules, late, madeHere, exifAlone, noSchemaMaking],
});
const ink = await build({
  ...common,
  format: 'cjs',
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
  plugins: [noDevtools, layoutAtOnce],
});

/** Which file is which part: the first is the program's, the last that of the drawing. */
const files = main.outputFiles.map(({ path, text }) => ({ name: basename(path), text }));
files.sort((a, b) => Number(b.name === 'main.js') - Number(a.name === 'main.js'));
const numberOf = new Map(files.map(({ name }, at) => [name, at]));
const importsOf = (name) => main.metafile.outputs[`dist/${name}`].imports;
const parts = files.map(({ name, text }) =>
  asPart(text, importsOf(name), numberOf).replaceAll('__load("ink")', `__load(${files.length})`),
);
const [{ text: inkText }] = ink.outputFiles;
const inkPart = `var module={exports:{}};${asAscii(inkText)};return module.exports;`;
const whole = [...parts, inkPart].map((part) => shortened(`function(__out){${part}\n}`));
// The first run unpacks it beside the compiled code that it keeps.
writeFileSync(`${OUT}/main.js.br`, brotliCompressSync(whole.join(''), { params: SMALL }));

const stamp = createHash('sha256').update(whole.join()).digest('hex').slice(0, 16);
const putback = await build({
  ...common,
  format: 'cjs',
  entryPoints: ['src/putback.ts'],
  define: {
    ...common.define,
    __STAMP__: JSON.stringify(stamp),
    __SIZES__: JSON.stringify(whole.map((text) => text.length)),
    __USES__: JSON.stringify(allCommands().flatMap(({ names }) => names)),
  },
});
writeFileSync(`${OUT}/putback.js`, putback.outputFiles[0].text);
const made = { main: main.metafile, ink: ink.metafile, putback: putback.metafile };
mkdirSync(`${OUT}/made`);
writeFileSync(`${OUT}/made/meta.json`, JSON.stringify(made));

const MIT = (holder) => `
MIT License

Copyright (c) ${holder}

Permission is hereby granted, free of charge, to any person obtaining a copy of this software and associated documentation files (the "Software"), to deal in the Software without restriction, including without limitation the rights to use, copy, modify, merge, publish, distribute, sublicense, and/or sell copies of the Software, and to permit persons to whom the Software is furnished to do so, subject to the following conditions:

The above copyright notice and this permission notice shall be included in all copies or substantial portions of the Software.

THE SOFTWARE IS PROVIDED "AS IS", WITHOUT WARRANTY OF ANY KIND, EXPRESS OR IMPLIED, INCLUDING BUT NOT LIMITED TO THE WARRANTIES OF MERCHANTABILITY, FITNESS FOR A PARTICULAR PURPOSE AND NONINFRINGEMENT. IN NO EVENT SHALL THE AUTHORS OR COPYRIGHT HOLDERS BE LIABLE FOR ANY CLAIM, DAMAGES OR OTHER LIABILITY, WHETHER IN AN ACTION OF CONTRACT, TORT OR OTHERWISE, ARISING FROM, OUT OF OR IN CONNECTION WITH THE SOFTWARE OR THE USE OR OTHER DEALINGS IN THE SOFTWARE.
`;
/** Licences of packages that name theirs and bring no file of it. */
const WITHOUT_FILE = { 'yoga-layout': MIT('Facebook, Inc. and its affiliates.') };

/** The licence texts of the libraries that are inside, each text once, behind the names of those that it is for. */
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
  return { name: `${name} ${version} (${license})`, text };
});
const byText = Map.groupBy(licences, ({ text }) => text);
const said = [...byText].map(([text, of]) => `${of.map((l) => l.name).join('\n')}\n\n${text}\n`);
writeFileSync(`${OUT}/LICENSES.txt`, said.join('\n----\n\n'));

// The page for man, in the program's own words.
const page = execFileSync(process.execPath, [`${OUT}/putback.js`, 'help', '--man']);
writeFileSync(`${OUT}/putback.1`, page);

// What was there serves until all of the new is: a build that is ended half-way leaves a program that runs.
rmSync('dist', { recursive: true, force: true });
renameSync(OUT, 'dist');
