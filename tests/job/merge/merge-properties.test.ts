import fc from 'fast-check';
import { expect, test } from 'vitest';
import { appendEntry, applyEdits } from '../../../src/job/edit/splice.ts';
import { mergeJob, unite } from '../../../src/job/merge/merge.ts';
import { secondsOf } from '../../../src/model/time.ts';
import type { Edit, Entry } from '../../../src/model/types.ts';
import { documents, read } from '../edit/splice-documents.ts';

const id = fc.stringMatching(/^[a-z][A-Za-z0-9]{7}$/);
const at = fc.nat(5000).map((n) => new Date(Date.UTC(2026, 4, 2) + n * 60_000).toISOString());
const entry: fc.Arbitrary<Entry> = fc.record({
  at,
  id,
  verb: fc.constant('note' as const),
  value: fc.constantFrom('x', 'y'),
});
const unique = (a: Entry) => a.id;
const diary = fc.uniqueArray(entry, { selector: unique, maxLength: 12 });

/** A diary and two that grew from it, each by entries of its own and in its own order of time. */
const grown = fc.tuple(diary, diary, diary).map(([base, one, two]) => {
  const seen = new Set<string>();
  const fresh = (es: Entry[]) => es.filter((e) => !seen.has(e.id) && seen.add(e.id));
  const [b, o, t] = [fresh(base), fresh(one), fresh(two)];
  return { base: b, ours: [...b, ...o], theirs: [...b, ...t] };
});

const idsOf = (entries: readonly Entry[]) => entries.map((e) => e.id);

test('two diaries united: the same whichever is ours, each side’s order kept, nothing dropped or doubled', () => {
  fc.assert(
    fc.property(grown, ({ base, ours, theirs }) => {
      const both = unite(base, ours, theirs);
      expect(unite(base, theirs, ours)).toEqual(both);
      expect(unite(null, ours, theirs)).toEqual(both);
      expect(idsOf(both).toSorted()).toEqual(
        [...new Set([...idsOf(ours), ...idsOf(theirs)])].toSorted(),
      );
      for (const side of [ours, theirs]) {
        expect(both.filter((e) => side.some((s) => s.id === e.id))).toEqual(side);
      }
      // Once more with either side, or with itself, nothing changes.
      expect(unite(base, both, theirs)).toEqual(both);
      expect(unite(ours, ours, both)).toEqual(both);
      expect(unite(null, both, both)).toEqual(both);
    }),
    { numRuns: 500 },
  );
});

test('diaries that are in the order of time stay in it', () => {
  const sorted = (es: Entry[]) => es.toSorted((a, b) => secondsOf(a.at) - secondsOf(b.at));
  fc.assert(
    fc.property(grown, ({ base, ours, theirs }) => {
      const times = unite(base, sorted(ours), sorted(theirs)).map((e) => secondsOf(e.at));
      expect(times).toEqual(times.toSorted((a, b) => a - b));
    }),
  );
});

test('orders that contradict each other, ids that are there twice: still nothing is dropped, either way round', () => {
  const any = fc.array(
    fc.record({
      ...{ at, verb: fc.constant('note' as const) },
      id: fc.constantFrom('a', 'b', 'c', 'd'),
      value: fc.constantFrom('x', 'y'),
    }),
    { maxLength: 8 },
  );
  const text = (e: Entry) => `${e.at} ${e.id} ${e.value}`;
  fc.assert(
    fc.property(any, any, (ours, theirs) => {
      const both = unite(null, ours, theirs);
      expect(unite(null, theirs, ours)).toEqual(both);
      for (const side of [ours, theirs]) {
        const left = both.map(text);
        for (const e of side) {
          expect(left).toContain(text(e));
          left.splice(left.indexOf(text(e)), 1);
        }
      }
    }),
    { numRuns: 500 },
  );
});

const line = (e: Entry) => `- {at: ${e.at}, id: ${e.id}, note: ${e.value}q}`;
const edits = (row: string[]): fc.Arbitrary<Edit[]> =>
  fc
    .tuple(
      fc.option(
        fc.record({
          edit: fc.constant('kind' as const),
          letter: fc.constantFrom('Q', 'R'),
          text: fc.constantFrom('M6x10', 'M6x12'),
        }),
      ),
      fc.option(
        fc.record({
          edit: fc.constant('row' as const),
          piece: fc.constantFrom('pump', 'sump'),
          row: fc.constantFrom('S S', 'M'),
        }),
      ),
      fc.option(
        fc.nat(row.length - 1).chain((i) =>
          fc.constantFrom('L', 'M').map(
            (word): Edit => ({
              edit: 'row-word',
              piece: 'cover',
              hole: '1',
              index: i,
              was: row[i] ?? '',
              word,
            }),
          ),
        ),
      ),
    )
    .map((list) => list.filter((e) => e !== null));

/** A job file and two versions that grew from it: marks, and edits of the person's part. */
const versions = documents.chain((made) =>
  fc.tuple(grown, edits(made.row), edits(made.row)).map(([{ base, ours, theirs }, mine, yours]) => {
    const marks = (text: string, es: readonly Entry[]) =>
      es.reduce((t, e) => appendEntry(t, line(e)), text);
    const edited = (text: string, es: Edit[]) => {
      const next = applyEdits(text, es);
      if (typeof next !== 'string') throw new Error(next.fault);
      return next;
    };
    const start = marks(made.text, base);
    return {
      start,
      ours: edited(marks(start, ours.slice(base.length)), mine),
      theirs: edited(marks(start, theirs.slice(base.length)), yours),
      ids: [...new Set([...idsOf(ours), ...idsOf(theirs)])],
    };
  }),
);

const diaryOf = (text: string) => {
  const list = read(text).diary;
  return Array.isArray(list) ? (list as { id: string }[]) : [];
};
const upperOf = (text: string) => {
  const { diary: _, ...upper } = read(text);
  return upper;
};

test('a merge by one side alone is that side, byte for byte', () => {
  fc.assert(
    fc.property(versions, ({ start, ours }) => {
      expect(mergeJob(start, ours, start)).toEqual({ text: ours, clean: true });
      expect(mergeJob(start, start, ours)).toEqual({ text: ours, clean: true });
      expect(mergeJob(start, ours, ours)).toEqual({ text: ours, clean: true });
    }),
    { numRuns: 150 },
  );
});

test('job files of every habit merge: readable, every mark there, the same either way round', () => {
  let clean = 0;
  fc.assert(
    fc.property(versions, ({ start, ours, theirs, ids }) => {
      const there = mergeJob(start, ours, theirs);
      const back = mergeJob(start, theirs, ours);
      expect(back.clean).toBe(there.clean);
      for (const i of ids) expect(there.text).toContain(`id: ${i}`);
      // Every line of both sides is in the result, but those that the other side changed.
      if (!there.clean) {
        expect(there.text).toMatch(/^<{7} ours\r?\n[\s\S]*^={7}\r?\n[\s\S]*^>{7} theirs\r?$/m);
        return;
      }
      clean++;
      expect(upperOf(there.text)).toEqual(upperOf(back.text));
      expect(diaryOf(there.text)).toEqual(diaryOf(back.text));
      const before = diaryOf(start).length;
      expect(diaryOf(there.text)).toHaveLength(
        before + diaryOf(ours).length + diaryOf(theirs).length - 2 * before,
      );
      // With either side once more nothing changes.
      expect(mergeJob(ours, there.text, ours).text).toBe(there.text);
      expect(mergeJob(theirs, theirs, there.text).text).toBe(there.text);
      expect(mergeJob(start, there.text, theirs).text).toBe(there.text);
    }),
    { numRuns: 150 },
  );
  expect(clean).toBeGreaterThan(50);
});

test('a clean merge says what each side said, key by key', () => {
  const three = (b: unknown, o: unknown, t: unknown): unknown => {
    const same = (x: unknown, y: unknown) => JSON.stringify(x) === JSON.stringify(y);
    if (same(o, t) || same(b, t)) return o;
    if (same(b, o)) return t;
    if (Array.isArray(o) && Array.isArray(t) && Array.isArray(b))
      return o.map((_, i) => three(b[i], o[i], t[i]));
    if (typeof o === 'string' && typeof t === 'string' && typeof b === 'string') {
      const [x, y, z] = [b, o, t].map((s) => s.trim().split(/\s+/));
      return x?.map((_, i) => three(x[i], y?.[i], z?.[i])).join(' ');
    }
    if (o === '' || t === '') return o === '' ? t : o;
    const [x, y, z] = [b, o, t].map(
      (m) => (typeof m === 'object' && m !== null ? m : {}) as Record<string, unknown>,
    );
    const keys = [...new Set([...Object.keys(y ?? {}), ...Object.keys(z ?? {})])];
    return Object.fromEntries(
      keys.map((k) => [k, three(x?.[k], y?.[k], z?.[k])]).filter(([, v]) => v !== undefined),
    );
  };
  const words = (value: unknown): unknown =>
    JSON.parse(JSON.stringify(value), (_, v) =>
      typeof v === 'string' ? v.trim().split(/\s+/).join(' ') : v,
    );
  fc.assert(
    fc.property(versions, ({ start, ours, theirs }) => {
      const { text, clean } = mergeJob(start, ours, theirs);
      fc.pre(clean);
      expect(words(upperOf(text))).toEqual(
        words(three(upperOf(start), upperOf(ours), upperOf(theirs))),
      );
    }),
    { numRuns: 120 },
  );
});
