import { describe, expect, it } from 'vitest';
import { nextWork } from '../../src/plan/next/next.ts';
import { plan } from '../../src/plan/plan.ts';
import { boltsOff, boltsOn, done, jobOf, NOW, off, on, type Said } from './make.ts';

const at = (time: string) => `2026-05-02T${time}:00+02:00`;

describe('what can be done now', () => {
  const said = (text: string, lines: Said[] = []) =>
    Object.fromEntries(plan(jobOf(text, lines), NOW).canDo.map((c) => [c.step, c.say]));
  const BOLTS = 'bolts: {S: M6x25, M: M6x35}\npieces: {cover: {name: Left cover, bolts: S S M}}';

  it('a piece comes off, with the number of its bolts', () => {
    expect(said(BOLTS)).toEqual({ 'cover off': 'Left cover: 3 bolts to come out.' });
    expect(said('pieces: {hose: {}}')).toEqual({ 'hose off': 'Hose: take it off.' });
  });

  it('half out, it says how many and what is wrong', () => {
    const lines: Said[] = [
      { piece: 'cover', out: 'S S !' },
      { piece: 'cover', hole: ['3'], state: 'stuck' },
    ];
    expect(said(BOLTS, lines)).toEqual({
      'cover off': 'Left cover: 3 stuck still holds it.',
    });
  });

  it('all out, it is to be taken off', () => {
    const lines = [{ piece: 'cover', out: 'S S M' }];
    expect(said(BOLTS, lines)).toEqual({ 'cover off': 'Left cover: 3 of 3 out, take it off.' });
  });

  it('on the way back it says how far it is', () => {
    const away = boltsOff('cover', 'S S M');
    expect(said(BOLTS, away)['cover on']).toBe('Left cover: 1 takes S, M6x25, by fingers.');
    const one = { piece: 'cover', hole: ['1'], in: 'S' };
    expect(said(BOLTS, [...away, one])['cover on']).toBe(
      'Left cover: 2 takes S, M6x25, by fingers.',
    );
    const all = { piece: 'cover', in: 'S S M' };
    expect(said(BOLTS, [...away, all])['cover on']).toBe('Left cover: tighten, snug.');
    const pulled = { piece: 'cover', hole: ['2'], state: 'pulled' };
    expect(said(BOLTS, [...away, pulled])['cover on']).toBe(
      'Left cover: 1 takes S, M6x25, by fingers; mend 2 pulled before anything is tightened.',
    );
    expect(said(BOLTS, [...away, all, pulled])['cover on']).toBe(
      'Left cover: 2 is pulled; mend it before anything is tightened.',
    );
  });

  it.each<[string, Said[]]>([
    ['nothing is done', []],
    ['one bolt is stuck', [{ piece: 'cover', hole: ['3'], state: 'stuck' }]],
    ['it is off', boltsOff('cover', 'S S M')],
    ['file and find differ', boltsOff('cover', 'S M M')],
    ['one bolt is in', [...boltsOff('cover', 'S S M'), { piece: 'cover', hole: ['1'], in: 'S' }]],
    ['all are in', [...boltsOff('cover', 'S S M'), { piece: 'cover', in: 'S S M' }]],
  ])('where %s, the plan and what is next say one thing', (_, lines) => {
    expect(Object.values(said(BOLTS, lines))).toEqual([nextWork(jobOf(BOLTS, lines))?.say]);
  });

  it('where file and find differ, that is settled first', () => {
    expect(said(BOLTS, boltsOff('cover', 'S M M'))['cover on']).toBe(
      'Left cover, 2: the file says S, M came out. Settle which is true.',
    );
  });

  it('finger-tight is not on', () => {
    const text = `${BOLTS}\ntasks: {fill: {do: Fill, after: cover on}}`;
    const lines = [...boltsOff('cover', 'S S M'), { piece: 'cover', in: 'S S M' }];
    expect(plan(jobOf(text, lines), NOW).heldBy).toEqual([
      { step: 'fill', for: ['cover on'], until: null },
    ]);
    const tight = [...boltsOff('cover', 'S S M'), ...boltsOn('cover', 'S S M')];
    expect(said(text, tight)).toEqual({ fill: 'Fill.' });
  });

  it('tasks are said by what they are', () => {
    const text = `tasks:
  a: {do: Clean the case.}
  b: {adjust: Chain slack, limit: 20..30 mm}
  c: {test: Five minutes at idle, limit: no drop}
  d: {decide: Renew the seal?}
  e: {wait: until the paint is dry}`;
    expect(Object.values(said(text))).toEqual([
      'Clean the case.',
      'Adjust: Chain slack (20..30 mm).',
      'Test: Five minutes at idle (no drop).',
      'Decide: Renew the seal?',
      'Wait: until the paint is dry. Say when it is over.',
    ]);
  });

  it('nothing, when all is done', () => {
    expect(plan(jobOf('pieces: {a: {}}', [off('a'), on('a')]), NOW)).toEqual({
      steps: [
        { step: 'a off', kind: 'off', done: true },
        { step: 'a on', kind: 'on', done: true },
      ],
      off: ['a'],
      on: ['a'],
      canDo: [],
      heldBy: [],
      critical: null,
      finish: null,
    });
  });

  it('nothing, in an empty job', () => {
    expect(plan(jobOf(''), NOW)).toMatchObject({ steps: [], canDo: [], heldBy: [], finish: null });
  });
});

describe('a wait', () => {
  const TEXT = `
pieces: {cover: {}}
tasks:
  cure: {wait: "24 h, sealant cures", after: cover on}
  fill: {do: Fill with oil, after: cure}
`;
  const lines = [off('cover', at('08:00')), on('cover', at('09:30'))];

  it('begins when its last `after` is finished, and says until when it holds', () => {
    const { heldBy, canDo } = plan(jobOf(TEXT, lines), at('12:00'));
    const until = '2026-05-03T09:30:00+02:00';
    expect(canDo).toEqual([]);
    expect(heldBy).toEqual([
      { step: 'cure', for: [], until },
      { step: 'fill', for: ['cure'], until },
    ]);
  });

  it('is over when its time is up, by the calendar', () => {
    const over = plan(jobOf(TEXT, lines), '2026-05-03T09:30:00+02:00');
    expect(over.canDo).toEqual([{ step: 'fill', say: 'Fill with oil.' }]);
    expect(over.steps.find((s) => s.step === 'cure')?.done).toBe(true);
    const before = plan(jobOf(TEXT, lines), '2026-05-03T09:29:59+02:00');
    expect(before.canDo).toEqual([]);
  });

  it('counts across time zones', () => {
    expect(plan(jobOf(TEXT, lines), '2026-05-03T07:30:00Z').canDo).toHaveLength(1);
  });

  it('is over earlier when somebody says so', () => {
    const { canDo } = plan(jobOf(TEXT, [...lines, done('cure', at('10:00'))]), at('12:00'));
    expect(canDo.map((c) => c.step)).toEqual(['fill']);
  });

  it('begins with the last of several', () => {
    const text = `pieces: {a: {}, b: {}}
tasks: {soak: {wait: 2 h, after: [a off, b off]}}`;
    const { heldBy } = plan(
      jobOf(text, [off('b', at('08:00')), off('a', at('09:00'))]),
      at('10:00'),
    );
    expect(heldBy).toContainEqual({ step: 'soak', for: [], until: at('11:00') });
  });

  it('follows a wait when that one ended', () => {
    const text = `tasks:
  paint: {do: Paint}
  dry: {wait: 1 h, after: paint}
  harden: {wait: 2 h, after: dry}`;
    const { heldBy } = plan(jobOf(text, [done('paint', at('08:00'))]), at('09:30'));
    expect(heldBy).toEqual([{ step: 'harden', for: [], until: at('11:00') }]);
  });

  it('while a piece is off begins when that comes off, and holds it', () => {
    const text = 'pieces: {a: {}}\ntasks: {soak: {wait: 2 h, while: a off}}';
    const { heldBy } = plan(jobOf(text, [off('a', at('09:00'))]), at('10:00'));
    expect(heldBy).toEqual([
      { step: 'soak', for: [], until: at('11:00') },
      { step: 'a on', for: ['soak'], until: at('11:00') },
    ]);
  });
});

describe('what a part holds up', () => {
  const TEXT = `
pieces: {cover: {}}
buy:
  gasket: {what: HL-1142 cover gasket, once: true, for: cover on}
  dowel: {what: 2 dowels, for: cover}
`;
  const ordered = { buy: 'gasket', done: 'ordered', promised: '2026-05-09' };

  it('the piece cannot go on, and says for which parts', () => {
    const { canDo, heldBy } = plan(jobOf(TEXT, [off('cover')]), NOW);
    expect(canDo).toEqual([]);
    expect(heldBy).toEqual([{ step: 'cover on', for: ['gasket', 'dowel'], until: null }]);
  });

  it('says until when, once all of them are promised', () => {
    const dowel = { buy: 'dowel', done: 'here' };
    const { heldBy } = plan(jobOf(TEXT, [off('cover'), ordered, dowel]), NOW);
    expect(heldBy).toEqual([{ step: 'cover on', for: ['gasket'], until: '2026-05-09' }]);
  });

  it('a promise that is over promises nothing', () => {
    const lines = [off('cover'), { buy: 'dowel', done: 'here' }, ordered];
    const { heldBy, finish } = plan(jobOf(TEXT, lines), '2026-05-10T08:00:00+02:00');
    expect(heldBy).toEqual([{ step: 'cover on', for: ['gasket'], until: null }]);
    expect(finish).toBeNull();
  });

  it.each(['here', 'compared', 'fitted'])('%s, it goes on', (state) => {
    const lines = [off('cover'), { buy: 'gasket', done: state }, { buy: 'dowel', done: state }];
    expect(plan(jobOf(TEXT, lines), NOW).canDo.map((c) => c.step)).toEqual(['cover on']);
  });

  it.each(['wrong', 'short', 'superseded', 'wanted'])('%s, it does not', (state) => {
    const lines = [off('cover'), { buy: 'dowel', done: 'here' }, { buy: 'gasket', done: state }];
    expect(plan(jobOf(TEXT, lines), NOW).heldBy[0]?.for).toEqual(['gasket']);
  });
});

describe('what is left inside', () => {
  const TEXT = `
pieces: {lid: {}, case: {under: lid}}
tasks: {idle: {test: Idle, after: lid on}, horn: {test: Horn}}
`;
  const away = [off('lid'), off('case')];
  const rag = { piece: 'case', inside: '2 rags' };

  it('the piece that would close it does not go on, nor what goes over it, nor is anything tested', () => {
    const { canDo, heldBy } = plan(jobOf(TEXT, [...away, rag]), NOW);
    expect(canDo).toEqual([]);
    expect(heldBy.map((h) => [h.step, h.for])).toEqual([
      ['case on', ['rag']],
      ['lid on', ['case on', 'rag']],
      ['idle', ['lid on', 'rag']],
      ['horn', ['rag']],
    ]);
  });

  it('one of two out is not out', () => {
    const one = { piece: 'case', cleared: '1 rag' };
    expect(plan(jobOf(TEXT, [...away, rag, one]), NOW).heldBy[0]?.for).toEqual(['rag']);
    expect(plan(jobOf(TEXT, [...away, rag, one, one]), NOW).canDo.map((c) => c.step)).toEqual([
      'case on',
      'horn',
    ]);
  });

  it('in the machine at large it stops tests alone', () => {
    const { canDo } = plan(jobOf(TEXT, [...away, { inside: 'magnet' }]), NOW);
    expect(canDo.map((c) => c.step)).toEqual(['case on']);
  });
});

describe('critical path and finish', () => {
  const TEXT = `
pieces: {cover: {}, lever: {}}
tasks:
  cure: {wait: "24 h, sealant cures", after: cover on}
  fill: {do: Fill with oil, after: cure}
  paint: {wait: 2 h, after: lever on}
`;
  const away = [off('lever'), off('cover')];

  it('come from waits: the longest way through them', () => {
    const { critical, finish } = plan(jobOf(TEXT, away), NOW);
    expect(critical).toEqual(['cover on', 'cure', 'fill']);
    expect(finish).toBe('2026-05-03T10:00:00+02:00');
  });

  it('count only what is left of a wait that runs', () => {
    const lines = [...away, on('cover', at('08:00')), on('lever', at('08:00'))];
    const { critical, finish } = plan(jobOf(TEXT, lines), at('20:00'));
    expect(critical).toEqual(['cure', 'fill']);
    expect(finish).toBe('2026-05-03T08:00:00+02:00');
  });

  it('wait for a part until the day that it is promised for', () => {
    const text = `${TEXT}buy: {gasket: {what: gasket, for: cover on}}`;
    const lines = [...away, { buy: 'gasket', done: 'ordered', promised: '2026-05-09' }];
    const { critical, finish } = plan(jobOf(text, lines), NOW);
    expect(critical).toEqual(['cover on', 'cure', 'fill']);
    expect(finish).toBe('2026-05-10T00:00:00+02:00');
  });

  it.each([
    ['no time is known', 'pieces: {a: {}}\ntasks: {t: {do: Look, while: a off}}'],
    ['a wait names no time', 'tasks: {a: {wait: 2 h}, b: {wait: until it is dry}}'],
    [
      'a part has no date',
      'tasks: {a: {wait: 2 h}}\npieces: {c: {}}\nbuy: {g: {what: gasket, for: c on}}',
    ],
  ])('are null when %s', (_, text) => {
    expect(plan(jobOf(text), NOW)).toMatchObject({ critical: null, finish: null });
  });
});

describe('a test that is not due yet', () => {
  const TEXT = `
pieces: {hose: {}}
tasks:
  wet: {test: Dry at the clip, when: next day, after: hose on}
  far: {test: Clip still tight, when: after 100 km, after: hose on}`;
  const back = [off('hose', at('08:00')), on('hose', at('09:00'))];

  it('waits for its day, or for the distance', () => {
    const { canDo, heldBy, finish } = plan(jobOf(TEXT, back), NOW);
    expect(canDo).toEqual([]);
    expect(heldBy).toEqual([
      { step: 'wet', for: [], until: '2026-05-03' },
      { step: 'far', for: ['after 100 km'], until: null },
    ]);
    // What only use can bring about is no part of getting it ready.
    expect(finish).toBe('2026-05-03T00:00:00+02:00');
  });

  it('can be done when its day has come', () => {
    const { canDo, heldBy } = plan(jobOf(TEXT, back), '2026-05-03T07:00:00+02:00');
    expect(canDo.map((c) => c.step)).toEqual(['wet']);
    expect(heldBy.map((h) => h.step)).toEqual(['far']);
  });
});
