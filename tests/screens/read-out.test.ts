import { describe, expect, it } from 'vitest';
import { changedLines, readOut } from '../../src/screens/show/read-out.ts';
import { update } from '../../src/screens/show/update.ts';
import { Bench } from '../job/bench.ts';
import { LEFT_COVER } from './covers.ts';
import { Desk } from './desk.ts';
import { everyScreen } from './every-screen.ts';
import { long } from './long-screens.ts';

describe('a screen that is read out', () => {
  it.each(everyScreen().map((s) => [s.name, s.state] as const))(
    '%s: says its name and its keys, and nothing for the eye alone',
    (_, state) => {
      const lines = readOut(state);
      expect(lines.length).toBeGreaterThan(1);
      expect(lines.at(-1)).toMatch(/(\?|Tab) keys$/);
      for (const text of lines) {
        expect(text).not.toMatch(/[\x00-\x1f\x7f]/);
        expect(text).not.toMatch(/[#*=|+_-]{3,}| {2}/);
      }
    },
  );

  it('says STOP, and each hole with its state in words', () => {
    const at = (name: string) => readOut(everyScreen().find((s) => s.name === name)!.state);
    expect(at('stop').join('\n')).toMatch(/^STOP$/m);
    const tight = at('tight, second pass').join('\n');
    expect(tight).toMatch(/^1: .*in, by fingers/m);
    expect(at('on, in the hand').join('\n')).toMatch(/takes what is in your hand/);
  });

  it('leaves out nothing of a text that no screen holds', () => {
    const text = long('Fault');
    const bench = new Bench(LEFT_COVER.replace(/^job:.*$/m, `job: ${JSON.stringify(text)}`));
    const read = readOut(new Desk(bench).state).join(' ');
    expect(read).toContain(text.replace(/\s+/g, ' '));
    expect(read).not.toContain('below)');
  });

  it('after a mark says what is new, after another screen all of it', () => {
    const desk = new Desk(new Bench()).open('cover').press('go');
    const before = desk.press('go').state;
    const after = desk.press('go').state;
    const changed = changedLines(before, after);
    expect(changed.length).toBeLessThan(readOut(after).length);
    expect(changed.join('\n')).toMatch(/of 5 out/);
    expect(changedLines(before, desk.press('?').state)).toEqual(readOut(desk.state));
    expect(changedLines(before, before)).toEqual([]);
  });

  it('is not cut or broken where a terminal of 60 columns would do it', () => {
    const desk = new Desk(new Bench(LONG_TASK), { columns: 60 });
    const lines = readOut(desk.state);
    expect(lines).toContain(`${SCRAPE}: to do`);
    expect(lines.join('\n')).not.toContain('..');
  });

  it('puts a stop between columns and between keys, and the mark of a list into words', () => {
    const lines = readOut(new Desk(new Bench(LONG_TASK)).state);
    expect(lines).toContain('Marked: Cover: untouched');
    expect(lines.at(-1)).toMatch(/^Space open; /);
    const keys = readOut(new Desk(new Bench(LONG_TASK)).press('?').state);
    expect(keys).toContain(
      '+, =: add anything in one line: a part, something to do or to measure, a caution, a note',
    );
    expect(keys.join('\n')).not.toContain('( ) empty');
  });

  it('says of the holes that the hand fits, and no more of those that it does not fit any more', () => {
    const before = everyScreen().find((s) => s.name === 'on, in the hand')!.state;
    const after = update(before, { on: 'press', press: 's' }).state;
    const said = changedLines(before, after);
    expect(said).toContain('5: S, out; takes what is in your hand');
    expect(said.join('\n')).not.toMatch(/^4: /m);
  });

  it('reads the next gate whole, though it looks like the one before', () => {
    const gate = everyScreen().find((s) => s.name === 'before it closes')!.state;
    const next = everyScreen().find((s) => s.name === 'before the joint is made')!.state;
    expect(changedLines(gate, next)).toEqual(readOut(next));
    expect(changedLines(gate, next)[0]).toBe('Alternator cover');
  });

  it('leaves a text that is typed as it is', () => {
    const desk = new Desk(new Bench(LONG_TASK)).press('n').type('   two   blanks');
    expect(readOut(desk.state)).toContain('> two blanks');
  });

  it('says of another row that it is marked, and nothing of the one that was', () => {
    const desk = new Desk(new Bench(LONG_TASK));
    const before = desk.state;
    expect(changedLines(before, desk.press('down').state)).toEqual([`Marked: ${SCRAPE}: to do`]);
  });

  it('says of the large letters what they spell', () => {
    const far = everyScreen().filter(({ name }) => name.endsWith(', far'));
    expect(far.length).toBeGreaterThan(2);
    for (const { state } of far) {
      const lines = readOut(state);
      expect(lines.join('\n')).not.toContain('█');
      expect(lines.some((text) => /^Hole \d+: [SML], /.test(text))).toBe(true);
    }
  });

  it('says of a lit hole why it is lit: nothing is in the hand while a tray is counted', () => {
    const at = (name: string) =>
      readOut(everyScreen().find((s) => s.name === name)!.state).join('\n');
    expect(at('left over')).toMatch(/^3: S, in, by fingers; to be looked at$/m);
    expect(at('settle')).toMatch(/^10: L, out; here; to settle$/m);
    expect(at('left over') + at('settle')).not.toContain('in your hand');
  });

  it('says where the mark is while holes are drawn, and which are there', () => {
    const { state } = everyScreen().find(({ name }) => name === 'draw, half way')!;
    const lines = readOut(state);
    expect(lines.some((text) => /^1: column -?\d+, row -?\d+$/.test(text))).toBe(true);
    expect(lines.some((text) => /^The mark: column -?\d+, row -?\d+$/.test(text))).toBe(true);
  });
});

const SCRAPE = 'Scrape both faces clean, blow out the holes, and look at them with a lamp';
const LONG_TASK = `putback: 1
job: Left cover
bolts: {S: M6x25}
pieces:
  cover: {bolts: S S S}
tasks: {scrape: {do: ${JSON.stringify(SCRAPE)}}}
diary:
`;
