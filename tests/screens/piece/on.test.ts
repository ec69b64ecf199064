import { describe, expect, it } from 'vitest';
import { Bench } from '../../job/bench.ts';
import { LEFT_COVER } from '../covers.ts';
import { Desk } from '../desk.ts';

/** The cover of five is off and its bolts are in cup 2; the lever over it is off too. */
const on = () => new Desk(new Bench().openCover()).open('cover').press('go');

/** The big cover, all of it off. */
function bigOff(): Bench {
  const bench = new Bench(LEFT_COVER);
  for (const piece of ['gear-lever', 'sprocket-cover', 'alternator']) {
    bench.mark({ do: 'out', piece });
    bench.mark({ do: 'off', piece, tray: 'cup 2' });
  }
  return bench;
}

/** Through its gates. */
const bigOn = () => new Desk(bigOff()).open('alternator').press('go go go');

describe('on, by fingers', () => {
  it('asks first what is in the hand, and what is left in the tray', () => {
    const desk = on();
    expect(desk.screen).toBe('on');
    expect(desk.frame).toContain('What is in your hand?   S 25   M 35   L 55');
    expect(desk.frame).toContain('Left in cup 2: 3 S, 1 M, 1 L; under the heads 1 clip.');
    expect(desk.frame).toContain('In means turned by fingers, three turns at least.');
    desk.press('go');
    expect(desk.bench.states()).toBe('out out out out out');
  });

  it('lights the holes where it belongs, and a key puts one in', () => {
    const desk = on().press('s');
    expect(desk.frame).toContain('<1>S');
    expect(desk.frame).toContain('>(2)S');
    expect(desk.frame).toContain('>(5)S');
    expect(desk.frame).not.toContain('>(4)');
    expect(desk.frame).toContain('It belongs in 1, 2 and 5.');
    desk.press('go');
    expect(desk.bench.states()).toBe('in out out out out');
    expect(desk.frame).toContain('[1]S');
    expect(desk.frame).toContain('It belongs in 2 and 5.');
  });

  it('empties the hand when the last of a kind is in', () => {
    const desk = on().press('m go');
    expect(desk.bench.states()).toBe('out out in out out');
    expect(desk.frame).toContain('What is in your hand?');
    expect(desk.frame).toContain('3 has clip under the head.');
  });

  it('with what is under its head a bolt belongs where that is, and nowhere else', () => {
    const text = LEFT_COVER;
    const bench = new Bench(text);
    for (const piece of ['gear-lever', 'sprocket-cover', 'alternator']) {
      bench.mark({ do: 'out', piece });
      bench.mark({ do: 'off', piece });
    }
    const desk = new Desk(bench).open('alternator').press('p');
    while (!desk.frame.includes('What is in your hand?'))
      desk.press(desk.screen === 'gate' ? 'a' : 'go');
    desk.press('s + c o p p e r');
    expect(desk.frame).toContain('It belongs in 7.');
  });

  it('puts in all of a kind at once', () => {
    const desk = on().press('s a');
    expect(desk.bench.states()).toBe('in in out out in');
    expect(desk.bench.entries.at(-1)).toMatchObject({ verb: 'in', hole: ['1', '2', '5'] });
  });

  it('leaves out of all what takes something under the head, says it and lights it', () => {
    const desk = bigOn().press('s a');
    expect(desk.bench.states('alternator')).toBe('in in in out in in out in in out in');
    const said = '7 takes copper under the head: put it under, then Space.';
    expect(desk.frame).toContain(said);
    expect(desk.frame).toContain('7 takes S, M6x25 flange, 8 mm, copper under the head.');
    // Only such a hole is left: once more marks nothing, from wherever one points.
    desk.press('4');
    desk.press('s a');
    expect(desk.bench.states('alternator')).toBe('in in in out in in out in in out in');
    expect(desk.screen).toBe('on');
    expect(desk.frame).toContain(said);
    expect(desk.frame).toContain('7 takes S, M6x25 flange, 8 mm, copper under the head.');
    // The next bolt in the hand lights its own hole.
    desk.press('l');
    expect(desk.frame).toContain('It belongs in 10.');
    desk.press('s space');
    expect(desk.bench.states('alternator')).toBe('in in in out in in in in in out in');
    expect(desk.frame).toContain('7 has copper under the head.');
    desk.press('m a l space');
    expect(desk.bench.states('alternator')).toBe('in in in out in in in in in in in');
  });

  it('puts all of them in with what lies under the head, where that is in the hand', () => {
    const desk = bigOn();
    desk.type('s+copper').press('end');
    expect(desk.bench.states('alternator')).toBe('out out out out out out in out out out out');
    expect(desk.bench.entries.at(-1)).toMatchObject({ value: 'S+copper', hole: ['7'] });
  });

  it('a reason for something else puts none in without what belongs under the head', () => {
    const bench = new Bench().openCover();
    const wish = { do: 'in', piece: 'cover', hand: { kind: 'M' }, because: 'why not' } as const;
    expect(bench.refusal({ ...wish, spares: 'Space' })).toEqual({
      code: 'not-under',
      holes: ['3'],
    });
    expect(bench.mark(wish)).toMatchObject({ hole: ['3'], value: 'M+clip' });
  });

  it('takes a length off the rule', () => {
    const desk = on().type('.55');
    expect(desk.frame).toContain('In your hand: 55 mm long.');
    expect(desk.frame).toContain('It belongs in 4.');
    desk.press('go');
    expect(desk.bench.hole('4').holds).toEqual({ kind: 'L', with: [] });
  });

  it('goes on to tightening when the last one is in', () => {
    const desk = on().press('s a m go l go');
    expect(desk.screen).toBe('look');
    expect(desk.frame).toContain('All in, 5 of them by fingers only.');
    expect(desk.frame).toContain('Next pass, 1 of 3: snug.');
    expect(desk.done).toEqual(['cover on']);
    desk.press('go');
    expect(desk.screen).toBe('tight');
    expect(desk.bench.states()).toBe('in in in in in');
  });

  it('stops a wrong bolt, rings, and says why in mm and where it belongs', () => {
    const desk = on().press('m 1 go');
    expect(desk.screen).toBe('stop');
    expect(desk.done).toEqual(['ring']);
    expect(desk.frame).toContain('+- STOP -');
    expect(desk.frame).toContain('1 takes S, 25 mm.');
    expect(desk.frame).toContain('In your hand: M, 35 mm.');
    expect(desk.frame).toMatch(/10 mm longer/);
    expect(desk.frame).toContain('It belongs in 3.');
    expect(desk.bench.states()).toBe('out out out out out');
  });

  it('does not let a key that was meant for the next bolt through a STOP', () => {
    const desk = on().press('m 1 go go enter go a s');
    expect(desk.screen).toBe('stop');
    desk.press('backspace');
    expect(desk.screen).toBe('on');
    expect(desk.frame).toContain('What is in your hand?');
    expect(desk.bench.states()).toBe('out out out out out');
  });

  it('lets it in all the same, with a reason that is written down', () => {
    const desk = on().press('m 1 go w').type('longer one, chased the thread').press('enter');
    expect(desk.screen).toBe('on');
    expect(desk.bench.hole('1').holds?.kind).toBe('M');
    expect(desk.bench.entries.at(-1)?.because).toBe('longer one, chased the thread');
  });

  it('comes back to the STOP from the reason, and from there to the bolts', () => {
    const desk = on().press('m 1 go w escape');
    expect(desk.screen).toBe('stop');
    desk.press('escape');
    expect(desk.screen).toBe('on');
  });

  it('stops a bolt that no hole takes', () => {
    const desk = on().type('.70').press('go');
    expect(desk.screen).toBe('stop');
    expect(desk.frame).toContain('No empty hole of Cover takes it.');
  });

  it('takes back the bolt that just went in, and the next one can go in at once', () => {
    const desk = on().press('s go go backspace');
    expect(desk.bench.states()).toBe('in out out out out');
    expect(desk.frame).toContain('In your hand: S');
    desk.press('go');
    expect(desk.bench.states()).toBe('in in out out out');
  });

  it('takes back what is in the hand first, then the last bolt', () => {
    const desk = on().press('s go m backspace');
    expect(desk.bench.states()).toBe('in out out out out');
    expect(desk.frame).toContain('What is in your hand?');
    desk.press('backspace');
    expect(desk.bench.states()).toBe('out out out out out');
    expect(desk.frame).toContain('Taken back: 1 in by fingers: S.');
  });

  it('knows its own kinds before its own keys: with a kind A, a is what is in the hand', () => {
    const text = `putback: 1\njob: Lid\nbolts: {A: M6x16, N: M6x20}\npieces:\n  lid: {bolts: A A N}\ndiary:\n`;
    const bench = new Bench(text);
    bench.mark({ do: 'out', piece: 'lid' });
    bench.mark({ do: 'off', piece: 'lid' });
    const desk = new Desk(bench).open('lid').press('go a');
    expect(desk.frame).toContain('In your hand: A, M6x16.');
    expect(desk.frame).toContain('End all A in');
    desk.press('end');
    expect(desk.bench.states('lid')).toBe('in in out');
    desk.press('n');
    expect(desk.frame).toContain('In your hand: N, M6x20.');
  });

  it('reads the cautions once, with what else must be there, and not again', () => {
    const bench = bigOn();
    expect(bench.screen).toBe('on');
    const desk = new Desk(bigOff()).open('alternator').press('go go');
    expect(desk.screen).toBe('gate');
    expect(desk.frame).toContain(
      '>      The magnet pulls the cover in. Keep fingers off the edge.',
    );
    expect(desk.frame).toContain('Joint: new gasket, dry.');
    expect(desk.frame).toMatch(/Counted and in its place: 2 dowels\.\n.*thrust washer/);
    desk.press('go escape go');
    expect(desk.screen).toBe('on');
  });

  it('says what is under the head where the hand alone does not', () => {
    expect(bigOn().press('m').frame).toContain(
      '4 takes M, M6x35 flange, 8 mm, clip under the head.',
    );
    expect(bigOn().press('7').frame).toContain('7: oil passage.');
  });
});

describe('file and find differ', () => {
  /** The file says M+clip in 3, and S came out. */
  function odd(): Desk {
    const bench = new Bench();
    bench.mark({ do: 'out', piece: 'lever' });
    bench.mark({ do: 'off', piece: 'lever' });
    bench.mark({ do: 'out', piece: 'cover', row: 'S S S L S' });
    bench.mark({ do: 'off', piece: 'cover' });
    return new Desk(bench).open('cover').press('go');
  }

  it('is settled before anything goes back', () => {
    const desk = odd();
    expect(desk.screen).toBe('settle');
    expect(desk.frame).toContain('3: which is true?');
    expect(desk.frame).toContain('The file says   M, M6x35 flange, 8 mm, clip under the head');
    expect(desk.frame).toContain('Came out        S, M6x25 flange, 8 mm');
  });

  it('the file is right: it stays as it is', () => {
    const desk = odd().press('k');
    expect(desk.screen).toBe('on');
    expect(desk.bench.text).toContain('bolts: S S M+clip L S');
    expect(desk.bench.hole('3').unsettled).toBe(false);
  });

  it('the bolt that came out is right: the row of the file is changed', () => {
    const desk = odd().press('c');
    expect(desk.screen).toBe('on');
    expect(desk.bench.text).toContain('bolts: S S S L S');
  });

  it('neither is right', () => {
    const desk = odd().press('.').type('L').press('enter');
    expect(desk.bench.text).toContain('bolts: S S L L S');
  });

  it('a gate opens behind the last of them: back from there is the piece, with nothing more to settle', () => {
    const bench = new Bench(
      'putback: 1\njob: Left cover\nbolts: {S: M6x25, M: M6x35}\npieces: {cover: {bolts: S S M, loose: [2 dowels]}}\ndiary:\n',
    );
    bench.mark({ do: 'out', piece: 'cover', row: 'S S S' });
    bench.mark({ do: 'off', piece: 'cover' });
    const desk = new Desk(bench).open('cover').press('go');
    expect(desk.screen).toBe('settle');
    expect(desk.press('k').screen).toBe('gate');
    expect(desk.press('escape').screen).toBe('look');
    expect(desk.press('enter').screen).toBe('gate');
  });

  it('can wait: the others go in, that one is asked about again', () => {
    const desk = odd().press('l s a l go');
    expect(desk.bench.states()).toBe('in in out in in');
    desk.press('m 3 go');
    expect(desk.screen).toBe('settle');
    expect(desk.frame).toContain('Settle first which is true.');
  });
});

describe('a hole that needs mending', () => {
  it('takes no bolt until it is said to be mended', () => {
    const bench = new Bench().openCover();
    bench.mark({ do: 'state', piece: 'cover', hole: '3', state: 'pulled' });
    const desk = new Desk(bench).open('cover').press('go s a l go');
    expect(desk.screen).toBe('look');
    desk.press('3');
    expect(desk.frame).toContain('Thread pulled.');
    desk.press('m enter');
    expect(desk.frame).toContain('How it was mended stands in the diary: write it.');
    desk.type('stud').press('enter');
    expect(desk.frame).toContain('3 is mended: its bolt goes in, and all are gone round again.');
    desk.press('go m go');
    expect(desk.bench.states()).toBe('in in in in in');
  });

  it('with its bolt in leads to that bolt first, and then the whole way round again', () => {
    const bench = new Bench().openCover().fillCover().tightenCover();
    bench.mark({ do: 'state', piece: 'cover', hole: '4', state: 'pulled' });
    const desk = new Desk(bench).open('cover');
    if (desk.step !== 'look') desk.press('escape');
    desk.press('4 m');
    expect(desk.step).toBe('off');
    expect(desk.frame).toContain('take 4 out first');
    desk.press('space space');
    expect(bench.hole('4').state).toBe('in');
    desk.press('enter');
    expect(desk.screen).toBe('look');
    expect(bench.states()).toBe('tight tight tight out tight');
    desk.press('h');
    expect(desk.frame).toContain('thread pulled');
    desk.press('space m').type('bigger bolt, M8x55').press('enter');
    expect(bench.hole('4').trouble).toBeNull();
    desk.press('go').press('l space');
    expect(bench.hole('4')).toMatchObject({ state: 'in', passes: [] });
    // It held nothing while they were tightened.
    expect(bench.states()).toBe('in in in in in');
  });

  it('is never said to have had its pass', () => {
    const bench = new Bench().openCover().fillCover();
    bench.mark({ do: 'tight', piece: 'cover' });
    bench.mark({ do: 'state', piece: 'cover', hole: '4', state: 'pulled' });
    const desk = new Desk(bench).open('cover').press('t 4');
    expect(desk.step).toBe('tight');
    expect(desk.frame).toContain('4: thread pulled. Mend it first: m.');
    expect(desk.frame).not.toContain('has had this pass');
    desk.press('?');
    expect(desk.frame).toContain('what was wrong with the lit hole is mended');
    expect(desk.frame).toContain('what to do about the trouble');
  });
});

describe('a word where a bolt is asked for', () => {
  it('behind + is text until Enter: no blank marks, no letter is a key', () => {
    const bench = new Bench().openCover();
    const desk = new Desk(bench);
    desk.open('cover');
    desk.state = { ...desk.state, view: { screen: 'piece', piece: 'cover', step: ON_STEP } };
    desk.press('s').type('+sealing washer, all wet? !');
    expect(desk.step).toBe('on');
    expect(bench.states()).toBe('out out out out out');
    expect(desk.frame).toContain('s+sealing washer, all wet? !');
    desk.press('enter');
    expect(desk.frame).toContain('is no kind and no length yet.');
  });

  it('Enter ends it and marks; the next letter is a bolt again', () => {
    const bench = new Bench().openCover();
    const desk = new Desk(bench);
    desk.open('cover');
    desk.state = { ...desk.state, view: { screen: 'piece', piece: 'cover', step: ON_STEP } };
    desk.press('m').type('=clip').press('enter');
    expect(bench.states()).toBe('out out in out out');
    desk.press('l space');
    expect(bench.states()).toBe('out out in in out');
  });

  it('a length and then a hole are two things', () => {
    const bench = new Bench().openCover();
    const desk = new Desk(bench);
    desk.open('cover');
    desk.state = { ...desk.state, view: { screen: 'piece', piece: 'cover', step: ON_STEP } };
    desk.press('. 2 5 5 space');
    expect(bench.states()).toBe('out out out out in');
  });
});

const ON_STEP = { step: 'on', here: null, typed: '', hand: '', fresh: false } as const;

describe('bolts of which only some were noted', () => {
  const mixed = () => {
    const bench = new Bench('putback: 1\njob: x\npieces:\n  cover: {bolts: "? ? S ?"}\n');
    bench.mark({ do: 'out', piece: 'cover' });
    bench.mark({ do: 'off', piece: 'cover' });
    return new Desk(bench).open('cover').press('enter a a');
  };

  it('go in by the number of their hole, one or all of them, and a kind by its letter', () => {
    const desk = mixed();
    expect(desk.frame).toContain('What is in your hand?');
    expect(desk.frame).toContain('or its hole');
    desk.press('space a');
    expect(desk.bench.states()).toBe('out out out out');
    desk.press('2 space');
    expect(desk.bench.states()).toBe('out in out out');
    desk.press('1 a');
    expect(desk.bench.states()).toBe('in in out in');
    desk.press('s space');
    expect(desk.bench.states()).toBe('in in in in');
  });

  it('the known one does not go in by its hole alone', () => {
    const desk = mixed().press('3 space');
    expect(desk.bench.states()).toBe('out out out out');
  });
});
