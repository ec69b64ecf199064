import { describe, expect, it } from 'vitest';
import { cautionsFor, cautionsForLook, cautionsForTask } from '../../../src/plan/care/cautions.ts';
import { gate } from '../../../src/plan/gates/gate.ts';
import { jobOf, NOW, off } from '../make.ts';

describe('cautions of a piece', () => {
  it('are the file’s own, then what it carries, pushes, stops or steers, then fuel', () => {
    const text = `pieces:
  float-bowl:
    care: spring
    caution: {removal: It runs out., fitting: Do not pinch the seal.}`;
    const spec = jobOf(text).pieces.get('float-bowl')!.spec;
    expect(cautionsFor(spec, 'off').map((c) => c.key)).toEqual(['caution-1', 'spring', 'fuel']);
    expect(cautionsFor(spec, 'off')[0]?.say).toBe('It runs out.');
    expect(cautionsFor(spec, 'on')[0]?.say).toBe('Do not pinch the seal.');
  });

  it.each(['head', 'case', 'cap', 'brake', 'steering', 'structure', 'spring'])(
    'knows %s',
    (care) => {
      const spec = jobOf(`pieces: {part: {care: ${care}}}`).pieces.get('part')!.spec;
      expect(cautionsFor(spec, 'off').map((c) => c.key)[0]).toBe(care);
      expect(cautionsFor(spec, 'on').map((c) => c.key)[0]).toBe(care);
    },
  );

  it.each([
    ['brake', true],
    ['steering', true],
    ['structure', true],
    ['head', false],
    ['spring', false],
  ])('the manual, a licensed mechanic and local rules go first: %s', (care, first) => {
    const spec = jobOf(`pieces: {part: {care: ${care}}}`).pieces.get('part')!.spec;
    const maker = cautionsFor(spec, 'on').find((c) => c.key === 'maker')?.say ?? '';
    for (const word of ['manual', 'licensed mechanic', 'Local rules'])
      expect(maker.includes(word), word).toBe(first);
  });

  it('stand at both gates of the piece, loud, and are ticked like the rest', () => {
    const text = 'pieces: {caliper: {care: brake, joint: new seal}}';
    for (const [moment, lines] of [
      ['prying', []],
      ['sealing', [off('caliper')]],
    ] as const) {
      const items = gate(jobOf(text, lines), moment, 'caliper', NOW).items;
      const loud = items.filter((i) => i.loud).map((i) => i.key);
      expect(loud, moment).toEqual(['brake', 'maker']);
      const ticked = [...lines, { piece: 'caliper', seen: `${moment} all` }];
      const after = gate(jobOf(text, ticked), moment, 'caliper', NOW).items;
      expect(after.find((i) => i.key === 'brake')?.done, moment).toBe(true);
    }
  });

  it('are none where nothing can hurt', () => {
    expect(cautionsFor(jobOf('pieces: {mirror: {}}').pieces.get('mirror')!.spec, 'off')).toEqual(
      [],
    );
  });
});

describe('cautions of a task', () => {
  it.each([
    ['Drain the oil', ['hot']],
    ['Drain the petrol into a can', ['fuel']],
    ['Jack it up', ['raised']],
    ['Lift the front wheel on the stand', ['raised']],
    ['Fuel tap open for five minutes', ['fuel']],
    ['Drain the brake fluid', ['hot']],
    ['Scrape both faces', []],
  ])('%s', (say, keys) => {
    const spec = jobOf(`tasks: {t: {do: ${say}}}`).tasks.get('t')!.spec;
    expect(cautionsForTask(spec).map((c) => c.key)).toEqual(keys);
  });
});

describe('cautions of a look at a fault', () => {
  const ofLook = (fields: string) =>
    cautionsForLook(
      jobOf(`suspects: {coil: Coil}\nchecks: {c: {${fields}, bad: coil}}`).upper.checks.get('c')!,
    );

  it.each([
    ['Pull the plug lead and see a spark', /^A spark lights fuel/],
    ['Fuel runs freely from the hose', /^Fuel: no flame/],
    ['Lift it and spin the wheel', /^Raised: on stands/],
    ['Battery holds 12 V while it cranks', /acid|lead|[Bb]attery/],
    ['Drain some oil and look for water', /hot/],
  ])('are those of a task with its words: %s', (words, says) => {
    const task = jobOf(`tasks: {t: {do: ${words}}}`).tasks.get('t')!.spec;
    expect(ofLook(`check: ${words}`)).toEqual(cautionsForTask(task).map(({ say }) => say));
    expect(ofLook(`check: ${words}`).join(' ')).toMatch(says);
  });

  it('are none where nothing can hurt', () => {
    expect(ofLook('check: Soot in the pipe')).toEqual([]);
  });

  it('are the file’s own first, and what is usual where none of its own speaks of it', () => {
    expect(ofLook('check: A spark jumps, caution: The case is sharp.')).toEqual([
      'The case is sharp.',
      expect.stringMatching(/^A spark lights fuel/),
    ]);
    expect(ofLook('check: A spark jumps, caution: Fuel shut off first.')).toEqual([
      'Fuel shut off first.',
    ]);
  });

  it('are those beside an engine that runs, where it has to', () => {
    const said = ofLook('check: It fires on both, needs: running');
    expect(said.join(' ')).toMatch(/outdoors.*what turns/);
    expect(ofLook('check: It fires on both')).toEqual([]);
  });
});
