import { describe, expect, it } from 'vitest';
import { circlesOf } from '../../../src/plan/order/relations.ts';
import { plan } from '../../../src/plan/plan.ts';
import { boltsOff, boltsOn, done, jobOf, NOW, off, on, type Said } from '../make.ts';

const COVER = `
pieces:
  gear-lever: {}
  hose: {}
  alternator: {under: [gear-lever, hose, sprocket-cover]}
  sprocket-cover: {}
`;

const order = (text: string, lines: Said[] = []) => {
  const { off: down, on: up } = plan(jobOf(text, lines), NOW);
  return { down, up };
};

describe('the order off', () => {
  it('takes off first what lies over, in the order of the file', () => {
    expect(order(COVER).down).toEqual(['gear-lever', 'hose', 'sprocket-cover', 'alternator']);
  });

  it('shows what came off as it came off, then the rest', () => {
    const { down } = order(COVER, [off('sprocket-cover'), off('gear-lever')]);
    expect(down).toEqual(['sprocket-cover', 'gear-lever', 'hose', 'alternator']);
  });

  it('keeps the order of the file where the file says nothing', () => {
    expect(order('pieces: {c: {}, a: {}, b: {}}').down).toEqual(['c', 'a', 'b']);
  });

  it('knows a piece that only the diary names', () => {
    expect(order('pieces: {a: {}}', [off('b')]).down).toEqual(['b', 'a']);
  });
});

describe('the order on', () => {
  it('puts back first what lies under', () => {
    expect(order(COVER).up[0]).toBe('alternator');
  });

  it('is the way it came off turned round, where nothing else is said', () => {
    const lines = [off('b'), off('a'), off('c')];
    expect(order('pieces: {a: {}, b: {}, c: {}}', lines).up).toEqual(['c', 'a', 'b']);
  });

  it('is the way it came off turned round among pieces of which the file says only what they lie over', () => {
    const lines = ['hose', 'sprocket-cover', 'gear-lever', 'alternator'].map((p) => off(p));
    expect(order(COVER, lines).up).toEqual(['alternator', 'gear-lever', 'sprocket-cover', 'hose']);
  });

  it('believes `under` where it came off the other way', () => {
    const lines = [off('alternator'), off('hose'), off('gear-lever'), off('sprocket-cover')];
    expect(order(COVER, lines).up).toEqual(['alternator', 'sprocket-cover', 'gear-lever', 'hose']);
  });

  it('counts from when the piece was pulled away, not from its first bolt', () => {
    const lines: Said[] = [
      { piece: 'a', hole: ['1'], out: 'S' },
      ...boltsOff('b', 'S'),
      { piece: 'a', hole: ['2'], out: 'S' },
      { piece: 'a', removed: 'all' },
    ];
    const text = 'bolts: {S: M6x25}\npieces: {a: {bolts: S S}, b: {bolts: S}}';
    expect(order(text, lines)).toEqual({ down: ['b', 'a'], up: ['a', 'b'] });
  });

  it('leaves out what was taken back', () => {
    const lines = [off('a'), off('b'), { undo: 'i0000000' }, off('a')];
    expect(order('pieces: {a: {}, b: {}}', lines).up).toEqual(['a', 'b']);
  });

  it('makes a piece of which the file says nothing wait for all that came off after it', () => {
    const text = 'pieces: {fairing: {}, pipe: {}, cover: {under: pipe}}';
    const lines = [off('fairing'), off('pipe'), off('cover')];
    const { heldBy, canDo } = plan(jobOf(text, lines), NOW);
    expect(canDo.map((c) => c.step)).toEqual(['cover on']);
    expect(heldBy).toEqual([
      { step: 'pipe on', for: ['cover on'], until: null },
      { step: 'fairing on', for: ['pipe on'], until: null },
    ]);
  });

  it('makes a piece wait for one that came off after it and of which the file says nothing', () => {
    const text = 'pieces: {pipe: {}, cover: {under: pipe}, fairing: {}}';
    const lines = [off('pipe'), off('cover'), off('fairing')];
    const { heldBy, canDo } = plan(jobOf(text, lines), NOW);
    expect(canDo.map((c) => c.step)).toEqual(['fairing on']);
    expect(heldBy[0]).toEqual({ step: 'cover on', for: ['fairing on'], until: null });
  });

  it('lets pieces go on in any order that the file says are only over another', () => {
    const lines = ['hose', 'sprocket-cover', 'gear-lever', 'alternator'].map((p) => off(p));
    const { canDo } = plan(jobOf(COVER, [...lines, on('alternator')]), NOW);
    expect(canDo.map((c) => c.step)).toEqual(['gear-lever on', 'sprocket-cover on', 'hose on']);
  });
});

describe('steps and tasks', () => {
  const TEXT = `${COVER}
tasks:
  drain: {do: Drain the oil, before: alternator off}
  scrape: {do: Scrape both faces, while: alternator off}
  fill: {do: Fill with oil, after: alternator on}
  weep: {test: Five minutes at idle, after: fill}
`;

  it('are one list, tasks where they belong', () => {
    expect(plan(jobOf(TEXT), NOW).steps.map((s) => s.step)).toEqual([
      'gear-lever off',
      'hose off',
      'sprocket-cover off',
      'drain',
      'alternator off',
      'scrape',
      'alternator on',
      'sprocket-cover on',
      'hose on',
      'gear-lever on',
      'fill',
      'weep',
    ]);
  });

  it('work that something waits for comes before anything goes back on', () => {
    const text =
      'pieces: {a: {}, b: {}}\ntasks: {look: {do: Look}, drain: {do: Drain, before: b off}}';
    expect(plan(jobOf(text), NOW).steps.map((s) => s.step)).toEqual([
      'a off',
      'drain',
      'b off',
      'b on',
      'a on',
      'look',
    ]);
  });

  it('what comes off first goes back last, though nothing says what lies over what', () => {
    const text = 'pieces: {battery: {}, starter: {}, solenoid: {}}';
    expect(plan(jobOf(text), NOW).on).toEqual(['solenoid', 'starter', 'battery']);
    expect(plan(jobOf(text, [off('battery')]), NOW).on).toEqual(['solenoid', 'starter', 'battery']);
  });

  it('carry their kind, and whether they are done', () => {
    const { steps } = plan(jobOf(TEXT, [off('hose'), done('drain')]), NOW);
    expect(steps.slice(0, 3)).toEqual([
      { step: 'hose off', kind: 'off', done: true },
      { step: 'drain', kind: 'do', done: true },
      { step: 'gear-lever off', kind: 'off', done: false },
    ]);
    expect(steps.find((s) => s.step === 'weep')).toEqual({
      step: 'weep',
      kind: 'test',
      done: false,
    });
  });

  it('do not depend on how a step is spaced', () => {
    const text = 'pieces: {a: {}}\ntasks: {t: {do: Look, while: a  off}}';
    expect(plan(jobOf(text), NOW).steps.map((s) => s.step)).toEqual(['a off', 't', 'a on']);
  });
});

describe('a task while another goes on', () => {
  it('can be done as soon as that one has begun', () => {
    const text = `pieces: {a: {}}
tasks: {soak: {wait: 12 h, while: a off}, clean: {do: Clean, while: soak}}`;
    expect(plan(jobOf(text), NOW).heldBy.find((h) => h.step === 'clean')?.for).toEqual(['a off']);
    expect(plan(jobOf(text, [off('a')]), NOW).canDo.map((c) => c.step)).toEqual(['clean']);
  });
});

describe('pieces that turned out not to be in the way', () => {
  it('are left out once all under them is off without them', () => {
    const text = 'pieces: {lever: {}, cover: {under: lever}}';
    expect(order(text, [off('cover')])).toEqual({ down: ['cover'], up: ['cover'] });
  });

  it('still lie between what is over and what is under them', () => {
    const text = 'pieces: {lid: {}, lever: {under: lid}, cover: {under: lever}}';
    const { off: down, heldBy } = plan(jobOf(text, [off('lid'), off('cover')]), NOW);
    expect(down).toEqual(['lid', 'cover']);
    expect(heldBy).toEqual([{ step: 'lid on', for: ['cover on'], until: null }]);
  });

  it('are left out once what lies over them is back', () => {
    const text = 'pieces: {a: {}, b: {under: a}, c: {under: b}}';
    expect(order(text, [off('a'), on('a')]).down).toEqual(['a']);
  });

  it('stay as long as a task speaks of them, and say what lies over them again', () => {
    const text = 'pieces: {a: {}, b: {under: a}}\ntasks: {t: {do: Look, while: b off}}';
    const { heldBy } = plan(jobOf(text, [off('a'), on('a')]), NOW);
    expect(heldBy[0]).toEqual({ step: 'b off', for: ['a off'], until: null });
  });
});

describe('a piece that comes off with another, or bridges two', () => {
  const job = jobOf('pieces: {pipe: {}, cover: {}, case: {}, seal: {}}');
  Object.assign(job.pieces.get('pipe')?.spec ?? {}, { bridges: ['cover', 'case'] });
  Object.assign(job.pieces.get('seal')?.spec ?? {}, { along: ['cover'] });

  it('has its place in the order', () => {
    const { off: down, on: up } = plan(job, NOW);
    expect(down).toEqual(['pipe', 'cover', 'case', 'seal']);
    expect(up.indexOf('seal')).toBeLessThan(up.indexOf('cover'));
    expect(up.at(-1)).toBe('pipe');
  });

  it('is off as soon as the other is', () => {
    const moved = jobOf('pieces: {cover: {}, seal: {}}', [off('cover')]);
    Object.assign(moved.pieces.get('seal')?.spec ?? {}, { along: ['cover'] });
    const doneOf = plan(moved, NOW).steps.filter((s) => s.done);
    expect(doneOf.map((s) => s.step)).toEqual(['cover off', 'seal off', 'seal on']);
  });
});

describe('rounds', () => {
  const TEXT = `
bolts: {S: M6x25}
pieces: {cover: {bolts: S}}
tasks:
  drain: {do: Drain, before: cover off}
  clean: {do: Clean, while: cover off}
  fill: {do: Fill, after: cover on}
  weep: {test: Idle, after: fill}
`;
  const first: Said[] = [
    done('drain'),
    ...boltsOff('cover', 'S'),
    done('clean'),
    ...boltsOn('cover', 'S'),
    done('fill'),
    { task: 'weep', done: 'failed' },
  ];

  it('a test that failed is open again', () => {
    const { canDo } = plan(jobOf(TEXT, first), NOW);
    expect(canDo).toEqual([
      { step: 'weep', say: 'It failed: Idle. Find the place and mend it, then test again.' },
    ]);
  });

  it('what hangs on a piece is to be done again in its next round, but not what was done for it already', () => {
    const again = [...first, done('drain'), ...boltsOff('cover', 'S')];
    const { steps, canDo } = plan(jobOf(TEXT, again), NOW);
    expect(steps.filter((s) => s.done).map((s) => s.step)).toEqual(['drain', 'cover off']);
    expect(canDo.map((c) => c.step)).toEqual(['clean']);
  });
});

describe('circles', () => {
  it.each([
    ['pieces: {a: {under: b}, b: {under: a}}', [['a', 'b']]],
    ['pieces: {a: {under: c}, b: {under: a}, c: {under: b}, d: {}}', [['a', 'b', 'c']]],
    ['pieces: {a: {under: a}}', [['a']]],
    ['pieces: {a: {}}\ntasks: {t: {do: x, after: a on, before: a off}}', [['a', 't']]],
    ['tasks: {t: {do: x, after: u}, u: {do: y, after: t}}', [['t', 'u']]],
    ['pieces: {a: {}, b: {under: a}}\ntasks: {t: {do: x, after: a off}}', []],
  ])('%s', (text, keys) => {
    const { upper } = jobOf(text);
    const named = circlesOf(upper).map((c) => c.keys.toSorted());
    expect(named).toEqual(keys);
  });

  it('are named in the order in which each waits for the one before', () => {
    const { upper } = jobOf('pieces: {a: {under: c}, b: {under: a}, c: {under: b}}');
    expect(circlesOf(upper)[0]?.steps).toEqual(['a off', 'b off', 'c off']);
  });

  it('leave the rest of the plan standing', () => {
    const { off: down, canDo } = plan(
      jobOf('pieces: {a: {under: b}, b: {under: a}, c: {under: a}}'),
      NOW,
    );
    expect(down).toEqual(['a', 'b', 'c']);
    expect(canDo.length).toBeGreaterThan(0);
  });
});
