/** What is inside the built program, and what a command makes Node load. */
import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join, resolve } from 'node:path';
import type { Metafile } from 'esbuild';
import { describe, expect, it } from 'vitest';

const dist = resolve(import.meta.dirname, '../dist');
const { outputs } = JSON.parse(readFileSync(join(dist, 'meta.json'), 'utf8')) as Metafile;

/** The file that a source became the way into. */
function outputOf(source: string): string {
  const found = Object.entries(outputs).find(([, o]) => o.entryPoint === source);
  if (!found) throw new Error(`no chunk begins with ${source}`);
  return found[0];
}

/** All sources that are loaded with these chunks, through static imports. */
function loadedWith(...roots: string[]): string[] {
  const seen = new Set<string>();
  const queue = [...roots];
  for (let at = queue.pop(); at !== undefined; at = queue.pop()) {
    const output = outputs[at];
    if (!output || seen.has(at)) continue;
    seen.add(at);
    queue.push(...output.imports.filter((i) => i.kind === 'import-statement').map((i) => i.path));
  }
  return [...seen].flatMap((path) => Object.keys(outputs[path]?.inputs ?? {}));
}

const libraries = (sources: string[]) =>
  [
    ...new Set(sources.flatMap((s) => /node_modules\/((?:@[^/]+\/)?[^/]+)/.exec(s)?.[1] ?? [])),
  ].sort();

describe('what is loaded', () => {
  const first = ['src/putback.ts', 'src/main.ts'].map(outputOf);

  it('before the version of Node is known: nothing but that check', () => {
    expect(loadedWith(outputOf('src/putback.ts'))).toEqual(
      expect.arrayContaining(['src/node-version.ts', 'src/putback.ts']),
    );
    expect(libraries(loadedWith(outputOf('src/putback.ts')))).toEqual([]);
  });

  it.each(['check', 'status', 'out', 'in', 'tight'])('%s loads neither Ink nor React', (name) => {
    const loaded = loadedWith(...first, outputOf(`src/commands/${name}.ts`));
    expect(libraries(loaded)).toContain('yaml');
    expect(libraries(loaded)).not.toEqual(expect.arrayContaining(['ink']));
    expect(libraries(loaded)).not.toEqual(expect.arrayContaining(['react']));
    expect(loaded.filter((s) => s.startsWith('src/screens/'))).toEqual([]);
  });

  it('the screens where there is no terminal: no Ink', () => {
    const loaded = loadedWith(...first, outputOf('src/screens/terminal/open.ts'));
    expect(libraries(loaded)).not.toEqual(expect.arrayContaining(['ink']));
  });
});

describe('the bundle', () => {
  const chunks = readdirSync(dist).filter((n) => n.endsWith('.js'));
  const texts = chunks.map((n) => readFileSync(join(dist, n), 'utf8'));

  it('holds React for production alone', () => {
    const sources = Object.values(outputs).flatMap((o) => Object.keys(o.inputs));
    expect(sources.some((s) => s.includes('react-reconciler.production'))).toBe(true);
    // The names of the others remain in what was cut out of the bundle; their code is what must not be there.
    const bytes = (name: string) =>
      Object.values(outputs).reduce(
        (sum, o) =>
          sum +
          Object.entries(o.inputs)
            .filter(([s]) => s.includes(name))
            .reduce((s, [, i]) => s + i.bytesInOutput, 0),
        0,
      );
    expect(bytes('.development.')).toBe(0);
    expect(texts.some((t) => t.includes('react-reconciler.development'))).toBe(false);
  });

  it('imports nothing but Node itself', () => {
    const outside = Object.values(outputs)
      .flatMap((o) => o.imports)
      .filter((i) => i.external && !/^(node:)?[a-z_/]+$/.test(i.path));
    expect(outside).toEqual([]);
    const builtin = new Set(process.getBuiltinModule('node:module').builtinModules);
    const named = Object.values(outputs)
      .flatMap((o) => o.imports)
      .filter((i) => i.external)
      .map((i) => i.path.replace(/^node:/, ''));
    expect(named.filter((n) => !builtin.has(n))).toEqual([]);
  });

  it('is small enough to be read in a breath, and brings its licences', () => {
    const bytes = chunks.reduce((sum, n) => sum + statSync(join(dist, n)).size, 0);
    expect(bytes).toBeLessThan(1_500_000);
    const licences = readFileSync(join(dist, 'LICENSES.txt'), 'utf8');
    for (const name of libraries(Object.values(outputs).flatMap((o) => Object.keys(o.inputs)))) {
      expect(licences).toContain(`${name} `);
    }
  });
});
