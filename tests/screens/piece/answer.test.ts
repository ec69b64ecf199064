import { describe, expect, it } from 'vitest';
import { gateOf } from '../../../src/plan/gates/gate.ts';
import { Bench } from '../../job/bench.ts';
import { GRINDER, LEFT_COVER } from '../covers.ts';
import { Desk } from '../desk.ts';
import { coverBut, off } from '../more-screens.ts';

const said = (desk: Desk) => desk.frame.replace(/\s+/g, ' ');
/** Holes that light up on the map. */
const lit = (desk: Desk) => [...desk.frame.matchAll(/>[[({]\s*(\d+)[\])}]/g)].map((m) => m[1]);
const byNumber = (names: (string | undefined)[]) => names.map(Number).sort((a, b) => a - b);
const cover = (...empty: string[]) => new Desk(coverBut(...empty)).open('alternator');

describe('what is left over, at the end of putting in', () => {
  it('is one key on the piece, on the way in, and while tightening', () => {
    const looks = cover('10').press('escape');
    expect(looks.screen).toBe('look');
    expect(looks.rows.at(-1)).toContain('l left over');
    for (const desk of [looks, cover('10'), cover('10').press('tab')]) {
      const from = desk.screen;
      desk.press('delete');
      expect([from, desk.screen, said(desk)].join(' ')).toMatch(
        /field .*What is left in the tray\?/,
      );
      desk.press('escape');
      expect(desk.screen).toBe(from);
    }
  });

  it('comes right after the last bolt went in', () => {
    const desk = cover('10').press('l go');
    expect(desk.screen).toBe('look');
    expect(desk.frame).toContain('All in, 11 of them by fingers only.');
    expect(desk.press('l').screen).toBe('field');
  });

  it('stands at the foot of the narrowest screen', () => {
    const desk = new Desk(coverBut(), { columns: 60, rows: 16 }).open('alternator').press('escape');
    if (desk.screen === 'job') desk.press('go');
    expect(desk.screen).toBe('look');
    expect(desk.rows.at(-1)).toContain('l left over');
  });

  it('a stray bolt is noted in one key, and is asked for until it is found where it belongs', () => {
    const desk = cover().press('l').type('1 S').press('enter');
    expect(desk.rows.at(-1)).toContain('n note it');
    desk.press('n');
    expect(desk.bench.entries.at(-1)).toMatchObject({ verb: 'written', value: 'do' });
    expect(said(desk)).toContain('Find where 1 S (25 mm) belongs, left over at Alternator cover');
    const gate = gateOf(desk.bench.job, 'start', null, '2026-04-11T18:25:00+02:00');
    expect(gate.map((item) => item.say).join()).toContain('Find where 1 S (25 mm) belongs');
  });

  it('a stray bolt that was only said is told on the way out, till it is noted', () => {
    for (const way of ['escape', 'space']) {
      const desk = cover().press('l').type('1 S').press('enter').press(way);
      expect(said(desk)).toContain('Left over, not noted: 1 S (25 mm). l, then n puts it among');
    }
    const noted = cover().press('l').type('1 S').press('enter').press('n').press('escape');
    expect(said(noted)).not.toContain('not noted');
  });

  it('says what should be there while it asks', () => {
    expect(said(cover('10', '1').press('delete'))).toContain(
      'You should have 1 S (25 mm) and 1 L (55 mm), 2 bolts in all.',
    );
    expect(said(cover().press('l'))).toContain('No hole is empty: nothing should be.');
  });

  it('gives the likely explanation, how one look settles it, and lights up its holes', () => {
    const desk = cover('10').press('delete').type('m').press('enter');
    expect(desk.screen).toBe('answer');
    expect(said(desk)).toContain(
      'Most likely: 1 hole is wrong. 4 takes M and holds L. Its head should stay off the seat, up to 20 mm; if it is down, take it out and measure it: 55 mm under the head, not 35 mm.',
    );
    expect(lit(desk)).toEqual(['4']);
  });

  it('names every hole that may hold the wrong bolt, on the map as well', () => {
    const desk = cover('10').press('delete').type('s').press('enter');
    expect(said(desk)).toContain(
      'Most likely: 1 hole is wrong. One of 1, 2, 3, 5, 6, 7, 8, 9 and 11 takes S and holds L.',
    );
    expect(byNumber(lit(desk))).toEqual([1, 2, 3, 5, 6, 7, 8, 9, 11]);
  });

  it('always says that two bolts swapped for each other leave no trace', () => {
    const no = 'Two bolts swapped for each other leave no trace in a tray: of M and S';
    expect(said(cover('10').press('delete').type('l').press('enter'))).toMatch(
      new RegExp(`What is left is what the empty holes take\\. ${no}`),
    );
    const desk = cover('10').press('delete').type('m').press('enter down down down down down');
    expect(said(desk)).toContain(no);
  });

  it('says which bolt is missing, or what is one too many', () => {
    expect(said(cover('10').press('delete enter'))).toContain(
      '1 bolt too few; missing is 1 L (55 mm).',
    );
    const desk = cover('10').press('delete').type('L, S').press('enter');
    expect(said(desk)).toContain('1 bolt too many; over is 1 S (25 mm).');
    expect(byNumber(lit(desk))).toEqual([1, 2, 3, 5, 6, 7, 8, 9, 11]);
  });

  it('says what it cannot read, and keeps what was typed', () => {
    const desk = cover('10').press('delete').type('2 Q').press('enter');
    expect(desk.screen).toBe('field');
    expect(said(desk)).toContain('No kind of bolt is called Q. Kinds here: S, M, L and P.');
    expect(desk.frame).toContain('> 2 Q');
    desk.press('backspace backspace backspace').type('m').press('enter');
    expect(desk.screen).toBe('answer');
  });

  it('is typed again from its answer, and left to where it was asked', () => {
    const desk = cover('10').press('delete').type('m').press('enter r');
    expect(desk.frame).toContain('> m');
    desk.press('backspace').type('l').press('enter');
    expect(said(desk)).toContain('What is left is what the empty holes take.');
    expect(desk.press('go').screen).toBe('on');
    expect(desk.press('delete').type('m').press('enter escape').screen).toBe('on');
  });

  it('is kept half written, and writes nothing in the diary', () => {
    const desk = cover('10');
    const before = desk.bench.entries.length;
    desk.press('delete').type('1 m').press('escape delete');
    expect(desk.frame).toContain('> 1 m');
    desk.press('enter go');
    expect(desk.bench.entries.length).toBe(before);
  });

  it('is not asked at a piece nobody has touched', () => {
    const desk = new Desk(new Bench(GRINDER)).open('guard').press('l');
    expect(desk.screen).toBe('look');
  });

  it('leaves L to the hand where it is a kind of this job', () => {
    const desk = cover('10').press('l');
    expect(desk.screen).toBe('on');
    expect(said(desk)).toContain('In your hand: L, M6x55 flange, 8 mm.');
  });
});

describe('before anything goes back', () => {
  it('says what should lie in the tray, on the page before', () => {
    const desk = new Desk(off('guard')).open('guard');
    expect(desk.screen).toBe('look');
    expect(said(desk)).toContain(
      'In cup 1: you should have 1 R (25 mm) and 5 S (25 mm), 6 bolts in all.',
    );
  });
});

describe('the page before it goes back on', () => {
  it('asks which bolt is missing, after the cautions', () => {
    const desk = new Desk(coverOf(LEFT_COVER)).open('alternator').press('go go');
    expect(desk.screen).toBe('gate');
    expect(said(desk)).toMatch(
      /The magnet .* Bolts sorted: 8 S, 1 M\+clip, 1 S\+copper, 1 L\. You should have 9 S \(25 mm\), 1 M \(35 mm\) and 1 L \(55 mm\), 11 bolts in all; under the heads 1 clip, 1 copper\. Wrench/,
    );
  });
});

describe('the heights of the heads', () => {
  const row = '12 12.5 12 12 12 12 12 22 12 12 12';
  const typed = (text: string) => cover().press('escape d').type(text).press('enter');

  it('light up the odd one, and say which bolt would stand so', () => {
    const desk = typed(row);
    expect(desk.screen).toBe('answer');
    expect(lit(desk)).toEqual(['8']);
    expect(said(desk)).toContain('8 stands 22 mm off');
    expect(desk.frame).toContain('>[ 8]22');
  });

  it('are as they should be where like stands with like', () => {
    const desk = typed('12 12.5 12 - 12 12 - 12 12 - 12');
    expect(lit(desk)).toEqual([]);
    expect(said(desk)).toContain('All 8 stand as they should.');
  });

  it('all too high alike, the piece is not down on its dowels', () => {
    const text = LEFT_COVER.replace(
      '    into: cast',
      '    thick: 10\n    thread: 3..30\n    into: cast',
    );
    const desk = new Desk(coverOf(text)).open('alternator').press('d');
    // 25 under the head, less 10, less 3 of counterbore: 12 mm proud; the others by their lengths. All 4 mm more.
    desk.type('16 16 16 26 16 16 16 16 16 46 16').press('enter');
    expect(said(desk)).toMatch(
      /All heads stand 4 mm too high alike: the piece is not down on its dowels/,
    );
    expect(lit(desk)).toEqual([]);
  });

  it('say what cannot be read, with the way out', () => {
    expect(said(typed('12 12'))).toContain('2 heights for 11 holes');
    expect(said(typed(row.replace('22', 'x')))).toContain('x is no height for hole 8');
  });

  it('are not asked once every head is down', () => {
    const bench = coverBut();
    for (const pass of ['snug', 'full', 'final']) {
      bench.mark({ do: 'tight', piece: 'alternator', pass });
    }
    const desk = new Desk(bench).open('alternator').press('d');
    expect(desk.screen).toBe('look');
    expect(desk.press('l').screen).toBe('field');
  });

  it('are one key on the way in as well, though D may be a kind', () => {
    const text = GRINDER.replaceAll('S:', 'D:').replaceAll(/\bS\b(?=[ \],])/g, 'D');
    const desk = new Desk(off('hub', text)).open('hub').press('go d');
    expect(said(desk)).toContain('In your hand: D');
    expect(said(desk.press('home'))).toContain('How high do the heads stand?');
    desk.type('9 9 19').press('enter');
    expect(desk.screen).toBe('answer');
    expect(desk.press('go').screen).toBe('on');
  });
});

/** The cover is off, its bolts are out. */
function coverOf(text: string): Bench {
  const bench = new Bench(text);
  for (const over of ['gear-lever', 'sprocket-cover', 'alternator']) {
    bench.mark({ do: 'out', piece: over });
    bench.mark({ do: 'off', piece: over });
  }
  return bench;
}

describe('the swap that nobody would notice', () => {
  it('is told when the piece comes off, in one sentence, and not again', () => {
    const desk = new Desk(new Bench(LEFT_COVER)).open('alternator');
    const bench = new Bench(LEFT_COVER);
    for (const over of ['gear-lever', 'sprocket-cover']) {
      bench.mark({ do: 'out', piece: over });
      bench.mark({ do: 'off', piece: over });
    }
    bench.mark({ do: 'out', piece: 'alternator' });
    const counted = new Desk(bench).open('alternator');
    expect(counted.screen).toBe('off-count');
    expect(said(counted)).toMatch(/Mind S and L: S would go into 10 unnoticed\./);
    counted.press('go').type('cup 2').press('enter');
    expect(said(counted)).not.toContain('Mind ');
    expect(said(desk)).not.toContain('Mind ');
  });

  it('is not told where every bolt is the same', () => {
    const bench = new Bench(GRINDER);
    bench.mark({ do: 'out', piece: 'hub' });
    const desk = new Desk(bench).open('hub');
    expect(desk.screen).toBe('off-count');
    expect(said(desk)).not.toContain('Mind ');
  });
});
