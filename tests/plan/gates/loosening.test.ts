/** Before the first bolt: only what applies, known by care, name, words and tasks; nothing stops. */
import { describe, expect, it } from 'vitest';
import { gate, isPassed } from '../../../src/plan/gates/gate.ts';
import { boltsOff, done, jobOf, NOW, type Said } from '../make.ts';

const piece = (text: string, rest = '') =>
  `bolts: {S: M6x25}\n${rest}pieces:\n  it: {bolts: S S, ${text}}\n  other: {bolts: S}`;
const asked = (text: string, lines: readonly Said[] = [], key = 'it') =>
  gate(jobOf(text, lines), 'loosening', key, NOW);
const keys = (text: string, lines: readonly Said[] = []) =>
  asked(text, lines).items.map((i) => i.key);
const open = (text: string, lines: readonly Said[] = []) =>
  asked(text, lines)
    .items.filter((i) => !i.done)
    .map((i) => i.say);

describe('what is to be made safe before the first bolt', () => {
  it.each([
    ['name: Cylinder head', 'head', /^Cold/],
    ['care: fuel', 'fuel', /Fuel shut off/],
    ['care: battery', 'battery', /minus first/],
    ['care: mains', 'mains', /locked/],
    ['care: wheel', 'wheel', /On stands/],
    ['care: steering', 'steering', /cannot fall/],
    ['care: structure', 'structure', /Held by a stand/],
    ['care: blade', 'blade', /Plug lead or battery off/],
    ['care: spring', 'spring', /spring pushes/i],
    ['care: lift', 'lift', /Lowered or propped/],
    ['care: airbag', 'airbag', /Battery off/],
    ['name: Exhaust', 'cold', /^Cold, or gloves on/],
    ['name: Turbocharger', 'cold', /^Cold, or gloves on/],
    ['name: Pressure cap', 'pressure', /without pressure/],
    ['name: Radiator cap', 'pressure', /^Cold, and without pressure/],
    ['name: Ignition coil', 'lead', /Battery lead off/],
    ['name: Flywheel', 'plug-lead', /Plug lead off/],
    ['loose: [return spring]', 'loose-spring', /spring is behind it/],
    ['loose: [2 magnets]', 'loose-magnet', /magnet pulls/],
    ['name: Gearbox', 'weight', /^It is heavy/],
    ['note: 34 kg with its oil', 'weight', /^It weighs 34 kg/],
    ['note: 40 lb', 'weight', /^It weighs 40 lb/],
    ['loose: ["heavy, slides off its dowels"]', 'weight', /^It is heavy/],
  ])('%s: %s', (text, key, say) => {
    const item = asked(piece(text)).items.find((i) => i.key === key);
    expect(item).toMatchObject({ done: false, stops: false, say: expect.stringMatching(say) });
  });

  it.each([
    'name: Cover',
    'name: Alternator cover',
    'name: Flywheel guard',
    'name: Engine mount bracket, care: none',
    'loose: [2 dowels]',
    'note: 4 kg',
    // A torque or a pressure in pounds is no weight.
    'note: set to 30 lb-ft',
    'note: "30 lb·ft, then 90°"',
    'note: 40 lbs. ft.',
    'note: 15 kg·m',
    'note: 12 kg/cm²',
    'care: none, name: Fuel tank',
  ])('%s: nothing is asked', (text) => {
    expect(keys(piece(text))).toEqual([]);
    expect(isPassed(asked(piece(text)))).toBe(true);
  });

  it('mains on a machine that hangs on them, before anything of it is off', () => {
    const lathe = piece('name: Guard', 'machine: Ostrell lathe 280\n');
    expect(keys(lathe)).toEqual(['mains']);
    expect(keys(lathe, boltsOff('other', 'S'))).toEqual([]);
    expect(keys(piece('name: Guard', 'machine: "Ostrell compressor, petrol engine"\n'))).toEqual(
      [],
    );
    expect(keys(piece('name: Guard', 'machine: Hollin 400 Twin\n'))).toEqual([]);
  });

  it('the tasks before it, done or not, by what they let out', () => {
    const drain = `${piece('name: Cover')}\ntasks: {drain: {do: Drain the oil, before: it off}}`;
    expect(open(drain)).toEqual(['Still to do: Drain the oil']);
    const after = asked(drain, [done('drain')]);
    expect(after.items).toMatchObject([
      { done: true, say: 'Done: Drain the oil (the oil is out).' },
    ]);
    expect(isPassed(after)).toBe(true);
    const warm = `${piece('name: Cover')}\ntasks: {warm: {do: Warm it up, before: it off}}`;
    expect(open(warm)).toEqual(['Still to do: Warm it up']);
  });

  it('what is to be read stands on the same list, and nothing twice', () => {
    const text = piece(
      'name: Exhaust, loose: [spring], marks: dot at 6, routes: over the frame, caution: {removal: "Rusty."}',
    );
    expect(keys(text)).toEqual(['loose-spring', 'cold', 'marks', 'routes', 'caution-1']);
  });

  it('never stops, and is passed when all was seen', () => {
    const text = piece('care: [fuel, mains, battery], loose: [spring]');
    expect(asked(text).items.filter((i) => i.stops)).toEqual([]);
    const seen = asked(text, [{ piece: 'it', seen: 'loosening all' }]);
    expect(isPassed(seen)).toBe(true);
  });

  it('asks again in the next round', () => {
    const text = piece('care: spring');
    const lines: Said[] = [
      { piece: 'it', seen: 'loosening all' },
      ...boltsOff('it', 'S S'),
      { piece: 'it', in: 'S S' },
      { piece: 'it', tight: 'snug' },
      { piece: 'it', tight: 'full' },
      { piece: 'it', out: 'S S' },
    ];
    expect(isPassed(asked(text, lines.slice(0, 2)))).toBe(true);
    expect(asked(text, lines).items.some((i) => !i.done)).toBe(true);
  });
});
