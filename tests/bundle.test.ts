/** What is inside the built program, and what a run of it loads. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { builtinModules } from 'node:module';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import type { Metafile } from 'esbuild';
import { describe, expect, it } from 'vitest';
import { heic, jpeg, png, webp } from './paper/camera.ts';

const dist = resolve(import.meta.dirname, '../dist');
type Bundle = 'putback' | 'main' | 'ink';
const made = JSON.parse(readFileSync(join(dist, 'made/meta.json'), 'utf8')) as Record<
  Bundle,
  Metafile
>;

const inputs = (bundle: Bundle) =>
  Object.keys(made[bundle].inputs).filter((source) => !source.startsWith('<define:'));
const bytesOf = (bundle: Bundle, name: string) =>
  Object.values(made[bundle].outputs)
    .flatMap((o) => Object.entries(o.inputs))
    .filter(([source]) => source.includes(name))
    .reduce((sum, [, { bytesInOutput }]) => sum + bytesInOutput, 0);

const libraries = (sources: string[]) =>
  [
    ...new Set(sources.flatMap((s) => /node_modules\/((?:@[^/]+\/)?[^/]+)/.exec(s)?.[1] ?? [])),
  ].sort();

describe('what is loaded', () => {
  it('before the version of Node is known: nothing but that check and what fetches the rest', () => {
    expect(inputs('putback').sort()).toEqual([
      'src/compiled.ts',
      'src/node-version.ts',
      'src/parts.ts',
      'src/putback.ts',
    ]);
  });

  it('by a command: neither Ink nor React nor the layout library', () => {
    expect(libraries(inputs('main'))).toContain('yaml');
    for (const library of ['ink', 'react', 'react-reconciler', 'yoga-layout']) {
      expect(libraries(inputs('main'))).not.toContain(library);
    }
  });

  /** What is loaded before a command begins to run, of the libraries and of the screens. */
  function loadedBy(command: string): string[] {
    const { outputs } = made.main;
    const start = Object.keys(outputs).filter((name) => {
      const from = outputs[name]?.entryPoint ?? '';
      return from === 'src/main.ts' || new RegExp(`^src/commands/(.*/)?${command}.ts$`).test(from);
    });
    expect(start).toHaveLength(2);
    const met = new Set(start);
    for (const name of met) {
      for (const { kind, path } of outputs[name]?.imports ?? []) {
        if (kind === 'import-statement') met.add(path);
      }
    }
    const sources = [...met].flatMap((name) => Object.keys(outputs[name]?.inputs ?? {}));
    return [...libraries(sources), ...sources.filter((source) => /^src.screens/.test(source))];
  }

  it('by check and status: of the libraries that for YAML and that for names; nothing of the screens', () => {
    expect(loadedBy('check')).toEqual(['nanoid', 'yaml']);
    expect(loadedBy('status')).toEqual(['nanoid', 'yaml']);
  });

  it('by the screens: those three once more, and nothing of ours twice', () => {
    expect(libraries(inputs('ink'))).toEqual(
      expect.arrayContaining(['ink', 'react', 'react-reconciler', 'yoga-layout']),
    );
    expect(inputs('ink').filter((source) => source.startsWith('src/'))).toEqual([]);
  });
});

describe('the bundle', () => {
  const files = readdirSync(dist).filter((n) => /\.(?:js|br|wasm)$/.test(n));

  it('holds React for production alone', () => {
    expect(bytesOf('ink', 'react-reconciler.production')).toBeGreaterThan(50_000);
    // The names of the others remain in what was cut out; their code is what must not be there.
    expect(bytesOf('ink', '.development.')).toBe(0);
  });

  it('imports nothing but Node itself', () => {
    const named = Object.values(made)
      .flatMap((m) => Object.values(m.outputs))
      .flatMap((o) => o.imports)
      .filter((i) => i.external)
      .map((i) => i.path.replace(/^node:/, ''));
    expect(named.length).toBeGreaterThan(5);
    expect(named.filter((n) => !builtinModules.includes(n))).toEqual([]);
  });

  it('is small enough to be read in a breath, and brings its licences', () => {
    const bytes = files.reduce((sum, n) => sum + statSync(join(dist, n)).size, 0);
    expect(bytes).toBeLessThan(650_000);
    const licences = readFileSync(join(dist, 'LICENSES.txt'), 'utf8');
    for (const name of libraries(Object.values(made).flatMap((m) => Object.keys(m.inputs)))) {
      expect(licences).toContain(`${name} `);
    }
  });
});

describe('what was left out of a library', () => {
  it('is not missed: the built program reads the clock of every kind of photograph', () => {
    const folder = mkdtempSync(join(tmpdir(), 'putback-bundle-'));
    const clock = '2026:04:11 16:40:12';
    const made: Record<string, Buffer> = {};
    // A maker's name makes the library look at what that maker adds.
    for (const secret of [undefined, 'Canon', 'PENTAX']) {
      const facts = { clock, offset: '+02:00', orientation: 6, ...(secret ? { secret } : {}) };
      const name = secret ?? 'plain';
      made[`${name}.jpg`] = jpeg(facts);
      made[`${name}.png`] = png(facts);
      made[`${name}.webp`] = webp(facts);
      made[`${name}.heic`] = heic(facts);
    }
    for (const [name, bytes] of Object.entries(made)) writeFileSync(join(folder, name), bytes);
    const out = { at: '2026-04-11T16:40:00+02:00', id: 'aaaaaaa1', piece: 'cover', out: 'S' };
    writeFileSync(
      join(folder, 'job.yaml'),
      `putback: 1\njob: Cover\npieces: {cover: {bolts: S S}, lid: {bolts: S}}\ndiary:\n  - ${JSON.stringify(out)}\n`,
    );
    const names = Object.keys(made).sort();
    const { stdout } = spawnSync(
      process.execPath,
      [join(dist, 'putback.js'), 'photo', 'job.yaml', ...names, '--stay', '--json'],
      { cwd: folder, env: { HOME: folder }, encoding: 'utf8' },
    );
    const taken = '2026-04-11T16:40:12+02:00';
    expect(JSON.parse(stdout)).toMatchObject({
      ok: true,
      placed: names.map((picture) => ({ picture, taken, piece: 'cover' })),
    });
    rmSync(folder, { recursive: true, force: true });
  });
});
