import { describe, expect, it } from 'vitest';
import { cautionsFor, cautionsForTask } from '../../src/plan/cautions.ts';
import { jobOf } from './make.ts';

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
      expect(cautionsFor(spec, 'off').map((c) => c.key)).toEqual([care]);
    },
  );

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
    ['Scrape both faces', []],
  ])('%s', (say, keys) => {
    const spec = jobOf(`tasks: {t: {do: ${say}}}`).tasks.get('t')!.spec;
    expect(cautionsForTask(spec).map((c) => c.key)).toEqual(keys);
  });
});
