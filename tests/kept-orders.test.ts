import { chmodSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { readJob } from '../src/job/read.ts';
import { keptOrders } from '../src/kept-orders.ts';
import { alsoKeptIn, type Elsewhere } from '../src/piece/sequence/memory.ts';
import { sequence } from '../src/piece/sequence/sequence.ts';
import { bigJob } from './figures/job.ts';

let folder: string;
let orders: Elsewhere;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'putback-orders-'));
  orders = keptOrders(folder, 'v1');
});
afterEach(() => {
  alsoKeptIn(null);
  rmSync(folder, { recursive: true, force: true });
});

const files = () => readdirSync(join(folder, 'v1')).map((name) => join(folder, 'v1', name));
const key = (n: number) => `${n} ${'x'.repeat(1000)}`;

describe('an order that was worked out', () => {
  it.each([40, 60, 200])('of a piece of %i holes is the same when it was kept', (holes) => {
    const spec = readJob(bigJob(holes), 'cover.yaml').upper.pieces.get('cover');
    if (!spec) throw new Error('no such piece');
    // Done differs by case: what this process remembers by itself is not asked.
    const done = ['1', String(holes)];
    const put = new Map<string, unknown>();
    alsoKeptIn({ get: () => null, put: (k, made) => void put.set(k, made) });
    const made = sequence(spec, undefined, undefined, done);
    const [[k = '', value] = []] = [...put];
    expect(value).toBe(made);
    orders.put(k, value);
    expect(orders.get(k)).toEqual(made);
  });

  it('is told for its own key alone', () => {
    orders.put(key(1), { tighten: ['1'] });
    const [file = ''] = files();
    orders.put(key(2), { tighten: ['2'] });
    const other = files().find((name) => name !== file) ?? '';
    writeFileSync(file, readFileSync(other));
    expect([orders.get(key(1)), orders.get(key(2))]).toEqual([null, { tighten: ['2'] }]);
  });

  it.each([
    ['cut', (bytes: Buffer) => bytes.subarray(0, -3)],
    ['empty', () => Buffer.alloc(0)],
    ['no such text', () => Buffer.from('[[')],
  ])('is worked out again where what is kept is %s', (_how, changed) => {
    orders.put(key(1), ['1']);
    const [file = ''] = files();
    writeFileSync(file, changed(readFileSync(file)));
    expect(orders.get(key(1))).toBe(null);
  });

  it('is not taken where others could have written it', () => {
    orders.put(key(1), ['1']);
    for (const file of files()) chmodSync(file, 0o666);
    expect(orders.get(key(1))).toBe(null);
  });

  it('is not kept where it would not come back as it is, nor where few holes are quick', () => {
    orders.put(key(1), { worst: Number.POSITIVE_INFINITY });
    orders.put(key(2), { on: new Map() });
    orders.put('short', ['1']);
    expect(readdirSync(folder)).toEqual([]);
  });

  it('goes when there are hundreds', () => {
    for (let n = 0; n < 230; n++) orders.put(key(n), [n]);
    expect(files().length).toBeLessThanOrEqual(200);
    expect(orders.get(key(229))).toEqual([229]);
  });

  it('harms nobody where no folder can be made', () => {
    const nowhere = keptOrders('/proc/none/putback', 'v1');
    nowhere.put(key(1), ['1']);
    expect(nowhere.get(key(1))).toBe(null);
  });
});
