/** What the program brings along to start from. */
import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { fold } from '../../../src/job/fold/fold.ts';
import { readJob } from '../../../src/job/read.ts';
import { plan } from '../../../src/plan/plan.ts';
import { Pinned } from '../pinned.ts';

let folder: string;
let pinned: Pinned;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'putback-templates-'));
  pinned = new Pinned(folder);
});
afterEach(() => rmSync(folder, { recursive: true }));

const names = readdirSync('templates').map((f) => f.replace('.yaml', ''));

describe('templates that come along', () => {
  it('there are covers, a gearbox, a carburettor, a wheel, an electric machine', () => {
    for (const name of ['side-covers', 'gearbox', 'carburettor', 'wheel', 'electric-machine'])
      expect(names).toContain(name);
  });

  it.each(names)(
    '%s starts a job without a fault, and every piece of it can come off and go back',
    async (name) => {
      const started = await pinned.run(
        'new',
        'job.yaml',
        'My job',
        '--from',
        name,
        '--machine',
        'Tarn 125',
      );
      expect([started.exit, started.err]).toEqual([0, '']);
      expect((await pinned.run('check', 'job.yaml')).out).toBe('');
      const { json } = await pinned.json('status', 'job.yaml');
      expect([json.job, json.machine]).toEqual(['My job', 'Tarn 125']);
      const { upper, entries } = readJob(
        readFileSync(join(folder, 'job.yaml'), 'utf8'),
        'job.yaml',
      );
      expect(entries).toEqual([]);
      const way = plan(fold(upper, entries), '2026-05-02T10:00:00+02:00');
      expect(new Set(way.off)).toEqual(new Set(upper.pieces.keys()));
      expect(new Set(way.on)).toEqual(new Set(upper.pieces.keys()));
      expect(way.canDo.length > 0).toBe(upper.pieces.size > 0);
      // What comes off and goes back can hurt somebody: each of these says what goes first.
      const text = readFileSync(`templates/${name}.yaml`, 'utf8');
      if (upper.pieces.size > 0)
        expect(text).toMatch(/maker's manual[^\n]* (?:local rules|licensed)/);
    },
  );
});

describe('what is no template', () => {
  it('a link in the folder of templates, and settings, start nothing', async () => {
    mkdirSync(join(folder, 'templates'));
    writeFileSync(join(folder, 'secret'), 'not for anybody\n');
    symlinkSync('../secret', join(folder, 'templates', 'evil.yaml'));
    writeFileSync(join(folder, 'bench.yaml'), 'commit: never\n');
    const linked = await pinned.run('new', 'a.yaml', '--from', 'evil');
    expect([linked.exit, linked.err]).toEqual([2, expect.stringContaining('is a link')]);
    const settings = await pinned.run('new', 'a.yaml', '--from', 'bench.yaml');
    expect([settings.exit, settings.err]).toEqual([2, expect.stringContaining('no job file')]);
    expect(readdirSync(folder)).not.toContain('a.yaml');
  });
});
