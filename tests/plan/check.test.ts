import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it, vi } from 'vitest';
import { Composer } from 'yaml';
import { checkAll } from '../../src/plan/check.ts';

/** How often the library makes a document of a text; the work itself is done as always. */
function documentsOf(run: () => void): number {
  const spy = vi.spyOn(Composer.prototype, 'compose');
  try {
    run();
    return spy.mock.calls.length;
  } finally {
    spy.mockRestore();
  }
}

const HEAD = `putback: 1
job: x
bolts: {S: M6x25}
`;

/** Something wrong on every storey: a torque no bolt stands, an unread limit, a circle, a guessed care. */
const FAULTY = `${HEAD}pieces:
  cover: {bolts: S S, torque: 900 N·m, under: lid}
  lid: {torque: 20 N·m and then 90 more}
  brake-caliper: {bolts: S}
tasks:
  drain: {do: Drain, before: fill, after: fill}
  fill: {do: Fill, limit: about 3 or so}
diary:
  - {at: 2026-04-11T18:25:40+02:00, id: k3Vb9xQe, piece: cover, hole: 1, out: S}
`;

describe('check reads a file once, whatever is wrong with it', () => {
  it.each([
    ['a diary as the program writes it', FAULTY],
    ['a diary in a form of somebody', FAULTY.replace('diary:', "'diary':")],
    ['with a byte order mark', `\uFEFF${FAULTY}`],
    [
      'a practice job',
      readFileSync(join(import.meta.dirname, '../../jobs/tarn-idle.yaml'), 'utf8'),
    ],
  ])('%s', (what, text) => {
    // A remark of its own, so that no text was read before.
    const fresh = text.replace('\njob:', `\n# ${what}\njob:`);
    let codes: string[] = [];
    const documents = documentsOf(() => {
      codes = checkAll(fresh, 'a.yaml').map((f) => f.code);
    });
    expect(documents).toBe(1);
    if (text.includes(FAULTY.slice(0, 50))) {
      expect(codes).toEqual(
        expect.arrayContaining(['odd-torque', 'unread-torque', 'circle-steps']),
      );
      expect(codes).toContain('guessed-care');
    }
  });

  it('the places are the same with a byte order mark and without', () => {
    const places = (text: string) =>
      checkAll(text, 'a.yaml').map((f) => [f.code, f.line, f.column]);
    expect(places(`\uFEFF${FAULTY}`)).toEqual(places(FAULTY));
    expect(places(FAULTY).length).toBeGreaterThan(3);
  });
});
