import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { aimedAngle, fullOf, readStages, readTorque } from '../../../src/bolt/torque/stages.ts';
import { said } from './say-stages.ts';

describe('a torque in stages', () => {
  it.each([
    ['20 Nm → 40 Nm → 90°', '20 N·m | 40 N·m | +90°'],
    ['Step 1: 20 Nm; Step 2: 90°', '20 N·m | +90°'],
    ['1) 20 N·m 2) 40 N·m', '20 N·m | 40 N·m'],
    ['20, then 40 N·m, then 90° and 90°', '20 N·m | 40 N·m | +90° | +90°'],
    ['20/40/60 N·m', '20 N·m | 40 N·m | 60 N·m'],
    ['20 N·m, turn further 90°', '20 N·m | +90°'],
    ['20 N·m plus 90 degrees', '20 N·m | +90°'],
    ['30 N·m then a quarter turn', '30 N·m | +90°'],
    ['35 Nm + 2 x 90°', '35 N·m | +90° | +90°'],
    ['hand-tight + 1/2 turn', 'snug | +180°'],
    ['½ turn', '+180°'],
    ['100 Nm, loosen, 30 Nm, 105°', '100 N·m | loosen | 30 N·m | +105°'],
    ['30 N·m + 90..100°', '30 N·m | +90..100°'],
    ['~10 N·m', '10 N·m'],
    ['8 − 12 N·m', '8..12 N·m'],
    ['15 ± 2 Nm', '13..17 N·m'],
    ['10 lb-ft', '10 lbf·ft'],
    ['95 lb/in', '95 lbf·in'],
    ['1,2 m·kg', '1.2 kgf·m'],
    ['22.5 N·m / 16.6 lbf·ft', '22.5 N·m'],
    ['12 Nm, 9 lbf·ft', '12 N·m'],
    ['tighten to 10 N·m', '10 N·m'],
    ['10 N·m max', 'max 10 N·m'],
    ['10 N·m (max.)', 'max 10 N·m'],
    ['10 N·m or less', 'max 10 N·m'],
    ['between 8 and 12 N·m', '8..12 N·m'],
    ['from 8 to 12 N·m', '8..12 N·m'],
    ['10 Nm - 12 Nm', '10..12 N·m'],
    ['25 N·m and one flat', '25 N·m | +60°'],
    ['25 N·m, then 2 flats', '25 N·m | +120°'],
    ['25 N·m + 90°(±5°)', '25 N·m | +85..95°'],
    ['25 N·m + 90° ± 5°', '25 N·m | +85..95°'],
    ['20 N·m ±2', '18..22 N·m'],
    ['20 N·m ± 10 %', '18..22 N·m'],
    ['20 N·m [15 lbf·ft]', '20 N·m'],
    ['10 N·m {1.0 kgf·m}', '10 N·m'],
    ['10 N·m 7.4 lbf·ft', '10 N·m'],
    ['10 N·m – 7.4 lbf·ft', '10 N·m'],
    ['2,5 m.daN', '2.5 daN·m'],
    ['25 Newton-mètres', '25 N·m'],
    ['1. 20 N·m 2. 40 N·m', '20 N·m | 40 N·m'],
    ['step 1: 20 N·m; step 2: turn further 60°', '20 N·m | +60°'],
    // The same angle once more, in other words.
    ['40 N·m + 90° (1/4 turn)', '40 N·m | +90°'],
    ['40 N·m + 180° (2 x 90°)', '40 N·m | +180°'],
    ['40 N·m + 1/4 turn (90 degrees)', '40 N·m | +90°'],
    ['40 N·m + 90° = 1/4 turn', '40 N·m | +90°'],
    ['40 N·m (+ 90°)', '40 N·m | +90°'],
    ['40 N·m + 90° (+ 90°)', '40 N·m | +90° | +90°'],
    ['20 N·m, then 40 N·m, oiled', '20 N·m | 40 N·m'],
    ['oiled: 20 N·m, then 40 N·m', '20 N·m | 40 N·m'],
  ])('%s: %s', (text, stages) => {
    const read = readStages(text);
    expect(said(read.stages)).toBe(stages);
    expect([read.rest, read.differ]).toEqual([[], []]);
  });

  it.each([
    ['10 N·m, manual 2-17', 'manual 2-17'],
    ['2.5 Nm, p 34', 'p 34'],
    ['2.5 Nm p34', 'p34'],
    ['2.5 Nm, manual p 34', 'manual p 34'],
    ['24 N·m, manual p. 19', 'manual p. 19'],
    ["9 N·m, maker's bulletin 12", "maker's bulletin 12"],
    ['10 N·m (manual 4-6)', 'manual 4-6'],
    ['10 N·m (7.4 lbf·ft), page 3', 'page 3'],
    ['10 N·m 4-12', '4-12'],
    ['10 N·m with the long socket', 'with the long socket'],
    ['15 N·m, tag of the new banjo fittings', 'tag of the new banjo fittings'],
    // All that stands beside the figure on the wrench.
    ['max 10 N·m, p. 3', 'no more than that, p. 3'],
    ['10 N·m or less, oiled threads', 'no more than that, oiled threads'],
    ['10 N·m, dry, manual 2-17', 'dry, manual 2-17'],
    ['20 N·m, then max 40 N·m', 'no more than that'],
  ])('%s: printed in %s', (text, where) => {
    expect(readTorque(text)).toMatchObject({ quantity: { value: expect.any(Number) }, where });
    expect(readStages(text).rest).toEqual([]);
  });

  it.each([
    ['20 N·m and then 90 more', ['90'], [16]],
    ['20 N·m²', ['20 N·m²'], [0]],
    ['M6: 10 Nm, M8: 25 Nm', ['M6', 'M8'], [0, 11]],
    ['10 Nm + threadlocker', ['threadlocker'], [8]],
    ['10 Nm, loosely', ['loosely'], [7]],
    ['10 Nm, and a bit more torque', ['a bit more'], [11]],
    // More is promised, and nothing of it is said.
    ['20 N·m then angle', ['then'], [7]],
    ['20 N·m, then turn', ['then'], [8]],
    ['20 N·m +', ['+'], [7]],
    ['20 N·m (then wait)', ['wait'], [13]],
    ['20 N·m, then again', ['then'], [8]],
    ['20 N·m, turn', ['turn'], [8]],
    ['10 N·m three times', ['three times'], [7]],
    // One or the other, and no two stages.
    ['8 N·m oiled, 10 N·m dry', ['oiled', 'dry'], [6, 20]],
    ['10 N·m (dry), 8 N·m (oiled)', ['(dry)', '(oiled)'], [7, 20]],
    // What stands in brackets is no remark because of its bracket.
    ['10 N·m (6 mm), 22 N·m (8 mm)', ['(6 mm)', '(8 mm)'], [7, 22]],
    ['20 N·m (only when hot)', ['(only when hot)'], [7]],
    ['20 N·m (sixty on top)', ['(sixty on top)'], [7]],
    ['20 N·m (2.0, 15)', ['2.0', '15'], [8, 13]],
    // Which torque is whose is not said, nor that one follows the other.
    ['10 N·m upper, 8 N·m lower', ['upper', 'lower'], [7, 20]],
    ['40 N·m, 20 N·m', ['20 N·m'], [8]],
    // A mark is no torque; a point and a comma in one figure may be thousands.
    ['M8x1.25 10.9 25 N·m then 90°', ['M8x1.25 10.9'], [0]],
    ['M8 10.9: 25 N·m', ['M8 10.9'], [0]],
    ['25 30 N·m', ['25'], [0]],
    ['1.234,5 N·m', ['1.234,5 N·m'], [0]],
    ['10 N·m?', ['?'], [6]],
    ['25 Nm, dann nochmals', ['dann'], [7]],
    ['10 N·m (greased: 8 N·m)', ['greased'], [8]],
    ['10 N·m bolts 1-4, 20 N·m bolts 5-8', ['1-4', '5-8'], [13, 31]],
    // Fifteen hundred to some.
    ['1,500 N·m', ['1,500 N·m'], [0]],
    ['12 Q·m', ['12 Q·m'], [0]],
    ['20 N·m + 90%', ['90%'], [9]],
  ])('%s: not read %j', (text, rest, at) => {
    const read = readStages(text);
    expect(read.rest.map((r) => r.text)).toEqual(rest);
    expect(read.rest.map((r) => r.at)).toEqual(at);
  });

  it('an angle that is said twice and differs is told', () => {
    for (const text of ['40 N·m + 90° (1/2 turn)', '40 N·m + 90° = 1/2 turn']) {
      expect(readStages(text).differ.map((d) => d.text)).toHaveLength(1);
    }
  });

  it('of a range of degrees the middle is turned, as a wrench is set to that of a torque', () => {
    const turned = (text: string) =>
      readStages(text).stages.flatMap((s) => (s.do === 'angle' ? [aimedAngle(s)] : []));
    expect(turned('25 N·m + 90° ± 5°')).toEqual([90]);
    expect(turned('30 N·m + 90..100°, then 60°')).toEqual([95, 60]);
  });

  it('the full figure is the last that is set', () => {
    expect(fullOf(readStages('20 N·m, 40 N·m, 90°'))).toMatchObject({ value: 40 });
    expect(fullOf(readStages('25 N·m, back off 1/2 turn, then 15 N·m'))).toMatchObject({
      value: 15,
    });
    expect(fullOf(readStages('hand-tight + 1/2 turn'))).toBe(null);
    for (const unread of ['10 N·m upper, 8 N·m lower', '10 N·m (6 mm), 22 N·m (8 mm)', '10 N·m?']) {
      expect(readTorque(unread), unread).toMatchObject({ quantity: null, where: null });
    }
    expect(readTorque('see manual')).toEqual({
      text: 'see manual',
      printed: null,
      quantity: null,
      where: null,
    });
  });

  /** A stage as it is written, and the figure that must not be lost: N·m as printed, or degrees. */
  const stageIn = (unit: string) =>
    fc.oneof(
      fc.integer({ min: 1, max: 300 }).map((n) => ({ text: `${n} ${unit}`, figure: n })),
      fc
        .integer({ min: 5, max: 270 })
        .chain((d) => fc.constantFrom(`${d}°`, `+ ${d}°`, `${d} degrees`, `turn ${d}°`))
        .map((text) => ({ text, figure: Number(/\d+/.exec(text)?.[0]) })),
      fc.constantFrom(
        { text: '1/2 turn', figure: 180 },
        { text: '3/4 turn', figure: 270 },
        { text: 'a quarter turn', figure: 90 },
        { text: '½ turn further', figure: 180 },
      ),
    );
  const noise = fc.oneof(
    fc.constantFrom('', '', '', '', '', ' dry', ' (manual 2-17)', ' oiled', ' cold', ' x', ' !'),
    fc.string({ maxLength: 4 }),
  );
  const printed = fc
    .constantFrom('N·m', 'Nm', 'N m', 'lbf·ft', 'ft-lb', 'kgf·m', 'in-lb')
    .chain((unit) => fc.array(fc.tuple(stageIn(unit), noise), { minLength: 1, maxLength: 4 }));
  const joins = fc.constantFrom(', ', ', then ', ' then ', '; ', ' → ', ' + ', ' and ');

  it('is never read as less than is printed', () => {
    let whole = 0;
    fc.assert(
      fc.property(printed, joins, (parts, join) => {
        const text = parts.map(([{ text: said }, more]) => said + more).join(join);
        const read = readStages(text);
        if (read.rest.length > 0 || read.differ.length > 0) return;
        whole += 1;
        const figures = read.stages.map((s) => {
          if (s.do === 'torque') return s.quantity.to ?? s.quantity.value;
          return s.do === 'angle' ? (s.to ?? s.degrees) : 0;
        });
        let from = 0;
        for (const [{ figure, text: said }] of parts) {
          const at = figures.findIndex((f, i) => i >= from && f >= figure);
          expect(at, `${said} of ${text}`).toBeGreaterThanOrEqual(0);
          from = at + 1;
        }
      }),
      { numRuns: 10_000, seed: 1952 },
    );
    expect(whole).toBeGreaterThan(2_000);
  });

  it('has every figure of the text in a stage, in what was not read, or in what is said of where and how', () => {
    const words = fc.constantFrom(
      ...['N·m', 'Nm', '°', 'turn', 'then', '(', ')', '[', ']', ',', ';', ':', '/', '+', '-', 'x'],
      ...['M8', 'mm', 'upper', 'lower', 'new', 'bolts', 'hot', 'only', 'oiled', 'dry', 'manual'],
      ...['page', 'and', 'or', 'to', 'max', 'min', 'with', 'loosen', 'again', 'after', 'km', '%'],
      ...['tight', 'until', 'seated', 'see', '1.', 'a)', '→', '?', 'greased', 'O-ring', 'front'],
    );
    const parts = fc.array(fc.oneof(words, fc.constant('#'), fc.constant('# N·m')), {
      minLength: 1,
      maxLength: 9,
    });
    fc.assert(
      fc.property(parts, (all) => {
        // Each figure is met once: 11, 18, 25 …
        const figures = all.flatMap((part, i) => (part.startsWith('#') ? [11 + 7 * i] : []));
        const text = all.map((part, i) => part.replace('#', `${11 + 7 * i}`)).join(' ');
        const { stages, rest, differ, where, thread } = readStages(text);
        const read = stages.flatMap((stage) => {
          if (stage.do === 'snug') return [];
          if (stage.do === 'torque') return [stage.quantity.value, stage.quantity.to];
          return [stage.degrees, stage.do === 'angle' ? stage.to : null];
        });
        const said = [...rest, ...differ].map((part) => part.text).join(' ');
        for (const figure of figures) {
          const found =
            read.some((n) => n === figure || n === figure * 360) ||
            new RegExp(`\\b${figure}\\b`).test(`${said} ${where} ${thread}`);
          expect(found, `${figure} of ${text}`).toBe(true);
        }
      }),
      { numRuns: 5_000, seed: 1952 },
    );
  });

  it('takes time that grows with its length, whatever stands in it', () => {
    for (const piece of ['9', ' ', '(', 'x ', '1/2 ', 'manual ', '20 N·m, ', '½', 'a\u0301']) {
      const read = readStages(piece.repeat(20_000));
      expect(read.stages.length + read.rest.length, piece).toBeGreaterThanOrEqual(0);
    }
  });
});

describe('what is on the thread', () => {
  it.each<[string, string | null, string]>([
    ['10 N·m, oiled threads', 'oiled threads', ''],
    ['10 N·m, no oil', 'no oil', ''],
    ['10 N·m, never oiled', 'never oiled', ''],
    ['10 N·m, clean of oil', 'clean of oil', ''],
    ['10 N·m, free from oil and grease', 'free from oil and grease', ''],
    ['12 N·m, greased O-ring', null, ''],
    ['12 N·m, greased O-ring 20 N·m more', null, 'greased O-ring more'],
  ])('%s: %s', (text, thread, rest) => {
    const read = readStages(text);
    expect(read.thread).toBe(thread);
    expect(read.rest.map((r) => r.text).join(' ')).toBe(rest);
  });

  it('as most files say it, or spelled otherwise: the same stages, rest and place', () => {
    const figures = fc.oneof(
      fc.integer({ min: 0, max: 400 }).map(String),
      fc.integer({ min: 1, max: 4000 }).map((n) => String(n / 10)),
    );
    const tails = fc.constantFrom(
      ...['', ', manual 2-17', ', page 12', '; manual 4', ', dry', ' (9 lbf·ft)', ' + 90°', ')'],
      ...[
        ', manual 2-17 or so',
        ',5',
        '.',
        ', then 40 N·m',
        ' / 7 lbf·ft',
        ' on the left, page 3-1',
      ],
    );
    fc.assert(
      fc.property(figures, tails, tails, (figure, tail, more) => {
        const [plain, other] = [' N·m', '  n·m'].map((unit) => {
          const { rest, differ, ...read } = readStages(`${figure}${unit}${tail}${more}`);
          return { ...read, rest: rest.map((r) => r.text), differ: differ.map((d) => d.text) };
        });
        // The unit itself is in what was not read of `0 N·m`.
        if (Number(figure) > 0) expect(plain).toEqual(other);
      }),
    );
  });
});
