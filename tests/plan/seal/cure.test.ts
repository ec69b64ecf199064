import { describe, expect, it } from 'vitest';
import { checkAll } from '../../../src/plan/check.ts';
import { gate } from '../../../src/plan/gates/gate.ts';
import { backAfter } from '../../../src/plan/next/back.ts';
import { plan } from '../../../src/plan/plan.ts';
import { type Cure, curesNow, sayCure, sayCureOf } from '../../../src/plan/seal/cure.ts';
import { testList } from '../../../src/plan/tests/testlist.ts';
import { withinMinutes } from '../../../src/plan/twenty.ts';
import { boltsOff, boltsOn, done, jobOf, off, on, type Said } from '../make.ts';

const COVER = `
bolts: {S: M6x25}
pieces:
  cover:
    name: Left cover
    bolts: S S
    joint: sealant on both faces, open 10 min, cures 12 h
`;
const TASKS = `
tasks:
  drain: {do: Drain the oil, before: cover off}
  fill: {do: Fill in 1.9 l of oil, after: cover on, takes: 5 min}
  idle: {test: Five minutes at idle, limit: no oil at the edge, after: fill}
`;
const TIGHT = '2026-05-02T19:40:00+02:00';
const EVENING = '2026-05-02T20:00:00+02:00';
const shut = (at = TIGHT): Said[] => [...boltsOff('cover', 'S S'), ...boltsOn('cover', 'S S', at)];

const cures = (lines: readonly Said[], now: string, text = COVER) =>
  curesNow(jobOf(text, lines), now);
const untils = (lines: readonly Said[], now: string, text = COVER) =>
  cures(lines, now, text).map((c) => c.until);

describe('a joint that cures', () => {
  it('tells until when, in the words of the file, and what not to do', () => {
    const [cure] = cures(shut(), EVENING);
    expect(cure).toMatchObject({
      piece: 'cover',
      says: 'sealant cures 12 h',
      until: '2026-05-03T07:40:00+02:00',
      wait: null,
    });
    expect(sayCure(cure as Cure, EVENING)).toBe(
      "Sealant cures 12 h, until 07:40 tomorrow. Don't load it, don't run it.",
    );
    expect(sayCureOf(cure as Cure, '2026-05-03T01:00:00+02:00')).toBe(
      "Left cover: sealant cures 12 h, until 07:40. Don't load it, don't run it.",
    );
  });

  it('keeps the two times of one clause apart', () => {
    for (const joint of [
      'sealant, open 10 min and cures 12 h',
      'sealant skins in 10 min and sets in 12 h',
    ]) {
      const text = COVER.replace('sealant on both faces, open 10 min, cures 12 h', joint);
      expect(untils(shut(), EVENING, text)).toEqual(['2026-05-03T07:40:00+02:00']);
    }
    const long = COVER.replace('cures 12 h', 'cures 1 h and 30 min');
    expect(untils(shut(), EVENING, long)).toEqual(['2026-05-02T21:10:00+02:00']);
  });

  it('was opened: a bolt that is only turned again, or renewed by itself, makes no new joint', () => {
    const turned: Said[] = [{ piece: 'cover', hole: ['1'], tight: 'full', at: EVENING }];
    expect(cures(turned, EVENING)).toEqual([]);
    const at = '2026-05-02T22:00:00+02:00';
    const renewed: Said[] = [
      { at, piece: 'cover', hole: ['2'], out: 'S' },
      { at, piece: 'cover', hole: ['2'], in: 'S' },
      { at, piece: 'cover', hole: ['2'], tight: 'full' },
    ];
    expect(untils([...shut(), ...renewed], at)).toEqual(['2026-05-03T07:40:00+02:00']);
  });

  it('holds what starts the machine, and says nothing of a fluid elsewhere', () => {
    const text = `${COVER}  right: {}
tasks:
  pour: {do: Fill the gearbox, after: right on}
  start: {do: Start the engine, after: cover on}`;
    const lines = [off('right'), ...shut()];
    const { canDo, heldBy } = plan(jobOf(text, lines), EVENING);
    expect(canDo.map((c) => c.step)).toEqual(['right on']);
    expect(heldBy.find((h) => h.step === 'start')?.until).toBe('2026-05-03T07:40:00+02:00');
    expect(cures(lines, EVENING, text)[0]?.dont).toEqual(["don't load it", "don't run it"]);
  });

  it('does not say to fill while the oil is out', () => {
    const [cure] = cures([done('drain'), ...shut()], EVENING, COVER + TASKS);
    expect(cure?.dont).toEqual(["don't load it", "don't fill the oil in", "don't run it"]);
    const full = [done('drain'), ...shut(), done('fill', TIGHT)];
    expect(cures(full, EVENING, COVER + TASKS)[0]?.dont).toEqual(["don't load it", "don't run it"]);
  });

  it('is silent to the second when it is over', () => {
    expect(untils(shut(), '2026-05-03T07:39:59+02:00')).toHaveLength(1);
    expect(untils(shut(), '2026-05-03T07:40:00+02:00')).toEqual([]);
  });

  it('counts across zones, and tells the hour on the clock of whoever asks', () => {
    expect(untils(shut(), '2026-05-02T13:00:00-05:00')).toEqual(['2026-05-03T00:40:00-05:00']);
    expect(untils(shut('2026-05-02T17:40:00Z'), EVENING)).toEqual(['2026-05-03T07:40:00+02:00']);
    expect(untils(shut(), '2026-05-03T05:40:00Z')).toEqual([]);
  });

  it('runs from the last bolt of the last pass', () => {
    const lines: Said[] = [
      ...boltsOff('cover', 'S S'),
      { piece: 'cover', in: 'S S', at: '2026-05-02T18:00:00+02:00' },
      { piece: 'cover', tight: 'snug', at: '2026-05-02T18:10:00+02:00' },
      { piece: 'cover', tight: 'full', hole: ['1'], at: '2026-05-02T18:20:00+02:00' },
    ];
    expect(untils(lines, EVENING)).toEqual([]);
    const last = { piece: 'cover', tight: 'full', hole: ['2'], at: TIGHT };
    expect(untils([...lines, last], EVENING)).toEqual(['2026-05-03T07:40:00+02:00']);
  });

  it('does not run anew when it is tightened again cold', () => {
    const text = COVER.replace(
      'bolts: S S',
      'bolts: S S\n    passes: [snug, full, again after 1 h]',
    );
    const again = { piece: 'cover', tight: 'again', at: '2026-05-02T21:00:00+02:00' };
    expect(untils([...shut(), again], '2026-05-02T21:10:00+02:00', text)).toEqual([
      '2026-05-03T07:40:00+02:00',
    ]);
  });

  it('is not told when the tightening was taken back', () => {
    const lines = shut().map((said, i) => ({ ...said, id: `entry00${i}` }));
    expect(untils([...lines, { undo: 'entry004' }], EVENING)).toEqual([]);
  });

  it('is not told when the piece is off again, and runs anew in the second round', () => {
    const again = [...shut('2026-05-02T18:00:00+02:00'), ...boltsOff('cover', 'S S', TIGHT)];
    expect(untils(again, EVENING)).toEqual([]);
    const second = [...again, ...boltsOn('cover', 'S S', '2026-05-02T19:50:00+02:00')];
    expect(untils(second, EVENING)).toEqual(['2026-05-03T07:50:00+02:00']);
  });

  it('of a piece without bolts runs from when it was put on', () => {
    const text = 'pieces: {pipe: {joint: "sealant on the stub, cures 2 h"}}';
    expect(untils([off('pipe'), on('pipe', TIGHT)], EVENING, text)).toEqual([
      '2026-05-02T21:40:00+02:00',
    ]);
  });

  it('says nothing where no time is said, or the time of a mark cannot be read', () => {
    expect(untils(shut(), EVENING, COVER.replace(', cures 12 h', ', cures slowly'))).toEqual([]);
    expect(untils(shut('yesterday'), EVENING)).toEqual([]);
  });

  it('is not shortened by a clock that was set back', () => {
    expect(untils(shut(), '2026-05-01T08:00:00+02:00')).toEqual(['2026-05-03T07:40:00+02:00']);
  });
});

describe('until it is over', () => {
  const job = jobOf(COVER + TASKS, [done('drain'), ...shut()]);
  const OVER = '2026-05-03T08:00:00+02:00';
  const END = '2026-05-03T07:40:00+02:00';

  it('nothing is filled in and nothing run: the plan holds both until then', () => {
    expect(plan(job, EVENING).canDo).toEqual([]);
    expect(plan(job, EVENING).heldBy).toEqual([
      { step: 'fill', for: [], until: END },
      { step: 'idle', for: ['fill'], until: null },
    ]);
    expect(plan(job, OVER).canDo.map((c) => c.step)).toEqual(['fill']);
  });

  it('the calendar counts it', () => {
    expect(plan(job, EVENING).finish).toBe('2026-05-03T07:45:00+02:00');
    expect(plan(job, EVENING).critical).toContain('fill');
  });

  it('before it is made too: it stands as long as the tube says', () => {
    const open = jobOf(COVER + TASKS, [done('drain'), ...boltsOff('cover', 'S S')]);
    expect(plan(open, EVENING)).toMatchObject({
      critical: ['cover on', 'fill', 'idle'],
      finish: '2026-05-03T08:05:00+02:00',
    });
    const wait = `${COVER}tasks: {stand: {wait: "12 h, sealant cures", after: cover on}}`;
    expect(plan(jobOf(wait, boltsOff('cover', 'S S')), EVENING).finish).toBe(
      '2026-05-03T08:00:00+02:00',
    );
  });

  it('twenty minutes are not offered for it', () => {
    expect(withinMinutes(job, 20, EVENING).can).toEqual([]);
    expect(withinMinutes(job, 20, OVER).can.map((d) => d.step)).toEqual(['fill']);
  });

  it('nor behind a joint that is made in them', () => {
    const lines = [done('drain'), ...boltsOff('cover', 'S S'), { piece: 'cover', in: 'S S' }];
    const steps = (text: string) =>
      withinMinutes(jobOf(text, lines), 60, EVENING).can.map((d) => d.step);
    expect(steps(COVER + TASKS)).toEqual(['cover on']);
    expect(steps(COVER.replace(', cures 12 h', '') + TASKS)).toEqual(['cover on', 'fill']);
  });

  it('the note after days away says what must not be done', () => {
    expect(backAfter(job, EVENING).dont).toEqual([
      "Don't run it: the oil is out.",
      "Left cover: sealant cures 12 h, until 07:40 tomorrow. Don't load it, don't fill the oil in, don't run it.",
    ]);
    expect(backAfter(job, OVER).dont).toEqual(["Don't run it: the oil is out."]);
  });

  it('the start gate is loud about it, and does not stop: it weeps, and breaks nothing', () => {
    const item = (now: string) =>
      gate(job, 'start', null, now).items.find((i) => i.key === 'cure-cover');
    expect(item(EVENING)).toMatchObject({ done: false, stops: false, loud: true });
    expect(item(EVENING)?.say).toContain('until 07:40 tomorrow');
    expect(item(OVER)).toBeUndefined();
  });

  it('no tick hides it', () => {
    const ticked = jobOf(COVER, [...shut(), { seen: 'start all' }, { seen: 'start cure-cover' }]);
    const item = gate(ticked, 'start', null, EVENING).items.find((i) => i.key === 'cure-cover');
    expect(item?.done).toBe(false);
  });

  it('its tests are later, those of the file and those that follow from the work', () => {
    const text = `${COVER}tasks: {look: {test: Look at the edge, limit: dry, after: cover on}}`;
    const states = (now: string) =>
      testList(jobOf(text, shut()), now).map((t) => [t.test, t.state, t.due]);
    expect(states(EVENING)).toEqual([
      ['look', 'later', END],
      ['cover-weeps', 'later', END],
    ]);
    expect(states(OVER).map(([, state]) => state)).toEqual(['due', 'due']);
  });
});

describe('where a task of the file waits for the same', () => {
  const text = `${COVER}tasks: {stand: {wait: "12 h, sealant cures", after: cover on}}`;

  it('that one tells it, and nothing tells it twice', () => {
    expect(cures(shut(), EVENING, text)).toMatchObject([
      { says: '12 h, sealant cures', until: '2026-05-03T07:40:00+02:00', wait: 'stand' },
    ]);
    const job = jobOf(text, shut());
    expect(backAfter(job, EVENING).dont).toEqual([]);
    expect(backAfter(job, EVENING).cures).toEqual([]);
    expect(backAfter(job, EVENING).waits).toHaveLength(1);
    const keys = gate(job, 'start', null, EVENING).items.map((i) => i.key);
    expect(keys).toContain('wait-stand');
    expect(keys).not.toContain('cure-cover');
  });

  it('over is what somebody says is over', () => {
    expect(cures([...shut(), done('stand', EVENING)], EVENING, text)).toEqual([]);
  });

  it('a wait for something else is another wait', () => {
    const other = `${COVER}tasks: {paint: {wait: "2 h, paint dries", after: cover on}}`;
    expect(cures(shut(), EVENING, other)[0]?.wait).toBeNull();
  });
});

describe('a joint that cures with no figure of time', () => {
  const text = COVER.replace('cures 12 h', 'cures overnight');
  const file = (joint: string) => `putback: 1\njob: x\n${text.replace(/joint: .*/, joint)}`;

  it('is asked before it is made and before the start, and told by check', () => {
    const away = [...boltsOff('cover', 'S S')];
    const before = gate(jobOf(text, away), 'sealing', 'cover', EVENING).items;
    expect(before.find((i) => i.key === 'cure')?.say).toBe(
      'How long it cures was not read: sealant cures overnight. Look at the tube.',
    );
    const job = jobOf(text, shut());
    const start = gate(job, 'start', null, EVENING).items.find((i) => i.key === 'cure-cover');
    expect(start).toMatchObject({ done: false, stops: false });
    expect(start?.say).toBe(
      'Left cover: sealant cures overnight. How long was not read: look at the tube.',
    );
    const told = checkAll(file('joint: sealant, open 10 min, cures overnight'), 'a.yaml');
    expect(told.map((f) => [f.code, f.say])).toEqual([
      ['unread-cure', 'how long it cures was not read: sealant cures overnight'],
    ]);
  });

  it('asks nothing where a time is said, where nothing cures, or where a task waits for it', () => {
    for (const joint of ['joint: sealant cures 12 h', 'joint: "sealant, no curing needed"']) {
      expect(checkAll(file(joint), 'a.yaml')).toEqual([]);
    }
    const waits = `${text}tasks: {stand: {wait: the sealant cures, after: cover on}}`;
    const { items } = gate(jobOf(waits, shut()), 'start', null, EVENING);
    expect(items.map((i) => i.key)).not.toContain('cure-cover');
  });

  it('of two times of one clause the longer cures', () => {
    const two = COVER.replace('cures 12 h', 'cures 12 h (24 h when cold)');
    expect(untils(shut(), EVENING, two)).toEqual(['2026-05-03T19:40:00+02:00']);
  });
});
