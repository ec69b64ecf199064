import { describe, expect, it } from 'vitest';
import { Bench } from '../../job/bench.ts';
import { LEFT_COVER } from '../covers.ts';
import { Desk } from '../desk.ts';

const cover = () => new Desk(new Bench());
/** The cover of five, a key a bolt. */
const off = () => cover().open('cover').press('go');

describe('off, a key a bolt', () => {
  it('lights the first of the loosening order, and the next one when that is out', () => {
    const desk = off();
    expect(desk.screen).toBe('off');
    const order: string[] = [];
    for (let i = 0; i < 5; i += 1) {
      order.push(/Next out: (\d)|Last to come out: (\d)/.exec(desk.frame)?.slice(1).join('') ?? '');
      desk.press('go');
    }
    expect([...order].sort()).toEqual(['1', '2', '3', '4', '5']);
    expect(desk.bench.states()).toBe('out out out out out');
    expect(desk.bench.entries).toHaveLength(5);
  });

  it('notes what came out where it is another than the file says, and says so', () => {
    const desk = off().press('3 s');
    expect(desk.frame).toContain('3: you say it is S, M6x25 flange, 8 mm.');
    desk.press('enter');
    expect(desk.bench.hole('3').found).toEqual({ kind: 'S', with: [] });
    expect(desk.frame).toContain('3: the file says M+clip, and S');
    expect(desk.frame).toContain('Lever is noted as over it, and is still on.');
  });

  it('takes a length, and what lay under the head', () => {
    const desk = off().press('1 . 5 5 go 2').press('m + c l i p enter');
    expect(desk.bench.hole('1').found).toEqual({ kind: 'L', with: [] });
    expect(desk.bench.hole('2').found).toEqual({ kind: 'M', with: ['clip'] });
  });

  it('asks for the rest of what is typed by half', () => {
    const desk = off().press('. go');
    expect(desk.frame).toContain('. is no length yet: .25 in mm, .1-1/4 or .1.5" in inches.');
    expect(desk.bench.entries).toHaveLength(0);
  });

  it('takes inches by their sign, and no figure that lacks it', () => {
    expect(off().press('. 1 go').bench.entries).toHaveLength(0);
    const desk = off().press('. 1 . 5 " go');
    expect(desk.bench.entries).toHaveLength(1);
    const [kind] = [...desk.bench.job.upper.kinds.values()].filter((k) => k.length === 38.1);
    expect(desk.bench.entries[0]).toMatchObject({ verb: 'out', value: kind?.letter });
  });

  it('counts the bolts large before anybody pries, asks for the tray, and goes back to the job', () => {
    const desk = off().press('go go go go go');
    expect(desk.screen).toBe('off-count');
    expect(desk.frame).toContain('5 of 5 out');
    expect(desk.frame).toContain('#### ');
    expect(desk.done).toEqual([]);
    desk.press('go').type('cup 2').press('enter');
    expect(desk.screen).toBe('job');
    expect(desk.frame).toContain('Cover is off, 5 of 5 bolts in cup 2.');
    expect(desk.bench.piece().tray).toBe('cup 2');
    expect(desk.done).toEqual(['cover off']);
  });

  it('leaves the tray out where nothing is said', () => {
    const desk = off().press('go go go go go go enter');
    expect(desk.bench.piece().where).toBe('open');
    expect(desk.bench.piece().tray).toBeNull();
  });

  it('keeps a stuck bolt for the end and stops before anybody pries', () => {
    const desk = off().press('4 - s');
    expect(desk.frame).toContain('4 is noted as stuck.');
    expect(desk.frame).toContain('4 comes out last: on an upright face hold the piece');
    expect(desk.frame).not.toContain('until last, so that the piece hangs');
    desk.press('go go go go');
    expect(desk.screen).toBe('off-count');
    expect(desk.frame).toMatch(/STOP[\s\S]*4 of 5 out\.[\s\S]*4 is still in: stuck since 18:25\./);
    expect(desk.done).toEqual(['ring']);
    desk.press('go');
    expect(desk.frame).toContain('Last to come out: 4.');
    // Enter led here; once more it does not say that it came out.
    desk.press('enter enter');
    expect(desk.bench.hole('4').state).toBe('home');
    expect(desk.frame).toContain('4: stuck. o when it is out after all.');
    desk.press('o');
    expect(desk.frame).toContain('5 of 5 out');
    expect(desk.bench.hole('4').trouble).toBeNull();
  });

  it('lets it come off with a bolt in, with a reason that is written down', () => {
    const desk = off().press('4 - s go go go go w');
    expect(desk.screen).toBe('field');
    desk.press('enter');
    expect(desk.frame).toContain('A reason is needed');
    desk.type('  ').press('enter');
    expect(desk.frame).toContain('A reason is needed');
    expect(desk.screen).toBe('field');
    desk.type('drilled head').press('enter');
    expect(desk.screen).toBe('job');
    expect(desk.bench.entries.at(-1)).toMatchObject({ verb: 'removed', because: 'drilled head' });
    expect(desk.frame).toContain('off, 4 of 5 bolts out');
  });

  it('counts a sheared bolt as out: it holds nothing', () => {
    const desk = off().press('go go go go -').press('b');
    expect(desk.screen).toBe('off-count');
    expect(desk.frame).toContain('5 of 5 out');
  });

  it('takes back one mark after the other', () => {
    const desk = off().press('go go backspace');
    expect(desk.bench.states().match(/out/g)).toHaveLength(1);
    expect(desk.frame).toMatch(/Taken back: \d out: [SML]/);
    desk.press('backspace');
    expect(desk.bench.states()).toBe('home home home home home');
    desk.press('backspace');
    expect(desk.frame).toContain('Nothing of this piece is left to take back.');
    expect(desk.bench.entries).toHaveLength(4);
  });

  it('goes to another hole by its number and by arrows', () => {
    const desk = new Desk(new Bench(LEFT_COVER)).open('alternator').press('go');
    expect(desk.screen).toBe('off');
    desk.press('1');
    expect(desk.frame).toContain('< 1>');
    desk.press('1');
    expect(desk.frame).toContain('<11>');
    desk.press('2');
    expect(desk.frame).toContain('< 2>');
    desk.press('down');
    expect(desk.frame).toContain('< 7>');
    desk.press('1 2');
    expect(desk.frame).toContain('< 2>');
    desk.press('left');
    expect(desk.frame).toContain('< 1>');
  });

  it('says that there is no such hole', () => {
    const desk = off().press('7');
    expect(desk.frame).toContain('There is no hole 7.');
  });
});

describe('a piece without bolts', () => {
  it('is off with what there is to look for, and on again', () => {
    const desk = cover().open('hose');
    expect(desk.frame).toContain('Look for what holds it before you pull');
    desk.press('o enter');
    expect(desk.bench.piece('hose').where).toBe('open');
    expect(desk.frame).toMatch(/Hose {2,}off/);
    desk.open('hose').press('go');
    expect(desk.bench.piece('hose').where).toBe('on');
    expect(desk.frame).toContain('Hose is back on.');
    expect(desk.done).toEqual(['hose off', 'hose on']);
  });

  it('can be moved aside, still connected', () => {
    const desk = cover().open('hose').press('v');
    expect(desk.bench.piece('hose').away).toBe('aside');
    desk.press('escape');
    expect(desk.frame).toContain('moved aside, still connected');
  });
});

describe('a piece that the file does not know', () => {
  it('is written by taking it off, its row with it', () => {
    const desk = cover().press('o').type('Left foot rest').press('enter');
    expect(desk.screen).toBe('look');
    expect(desk.frame).toContain('Left foot rest');
    desk.press('go').type('s .35 s').press('enter');
    expect(desk.screen).toBe('off-count');
    expect(desk.bench.text).toContain('left-foot-rest');
    expect(desk.bench.piece('left-foot-rest').holes.map((h) => h.found?.kind)).toEqual([
      'S',
      'M',
      'S',
    ]);
  });

  it('can be one without bolts', () => {
    const desk = cover().press('o').type('air box').press('enter o go');
    expect(desk.bench.piece('air-box').where).toBe('open');
  });
});

describe('a bolt that nobody has noted', () => {
  const counted = () =>
    new Desk(new Bench('putback: 1\njob: Cover weeps\n')).press('o').type('cover 9').press('enter');

  it('is said by its length, with what lies under its head: no letter of that is a key', () => {
    const desk = counted();
    expect(desk.frame).toMatch(/Nobody has noted what it is: its length says it, \.25/);
    desk.press('6 . 2 5 +').type('sealing washer');
    expect(desk.frame).toContain('6: you say it is');
    expect(desk.bench.piece().holes.filter((h) => h.state === 'out')).toEqual([]);
    desk.press('enter');
    expect(desk.bench.hole('6').found).toEqual({ kind: 'S', with: ['sealing-washer'] });
    expect(desk.frame).toContain('coming off, 1 of 9 out');
  });

  it('a length of a kind with its washer goes in as that kind', () => {
    const desk = counted().press('6 . 2 5 +').type('washer').press('enter a enter enter');
    desk.open('cover').press('enter a a');
    expect(desk.screen).toBe('on');
    desk.press('6 . 2 5 +').type('washer').press('enter');
    expect(desk.bench.hole('6')).toMatchObject({ state: 'in' });
  });

  it('passes over no letter without a kind, and no length without its dot', () => {
    const bare = 'putback: 1\njob: A\npieces: {lid: {bolts: "? ? ? ? ? ? ? ? ?"}}\ndiary:\n';
    const desk = new Desk(new Bench(bare));
    desk.open('lid').press('go s');
    expect(desk.frame.replace(/\s+/g, ' ')).toContain(
      'S is no kind of this job yet. Tab types the row',
    );
    desk.press('2 5');
    expect(desk.frame).toContain('There is no hole 25: 5 is meant. A length has a dot: .25');
    expect(desk.press('h').screen).toBe('keys');
  });
});

describe('what is typed of a hole', () => {
  const MANY = `putback: 1\njob: Cover\npieces:\n  cover: {bolts: "${Array(27).fill('?').join(' ')}"}\ndiary:\n`;
  const many = () => new Desk(new Bench(MANY)).open('cover').press('o');
  const litHole = (desk: Desk) => {
    const { view } = desk.state;
    return view.screen === 'piece' && 'here' in view.step ? view.step.here : null;
  };

  it('a length goes with the hole that it was said of', () => {
    const desk = off().press('3 . 3 5');
    expect(desk.frame).toContain('3: you say it is .35');
    desk.press('2');
    expect(desk.frame).not.toContain('.35');
    desk.press('go');
    expect(desk.bench.entries.at(-1)).toMatchObject({ hole: ['2'] });
    expect(desk.bench.hole('2').found).toEqual(desk.bench.hole('2').claim);
  });

  it('stays with the lit hole, which is pointed at too', () => {
    const desk = off().press('3 . 3 5 3');
    expect(desk.frame).toContain('3: you say it is .35');
  });

  it('a digit does not go on behind another key', () => {
    for (const between of ['u', 'backspace', 'space', '%', '] escape', 'n escape']) {
      const desk = many().press(`2 ${between} 7`);
      expect([between, litHole(desk)]).toEqual([between, '7']);
    }
    expect(litHole(many().press('2 7'))).toBe('27');
  });

  it('the key that a stuck hole offers holds behind a whole length, quickly typed too', () => {
    const stuck = () => off().press('4 - s');
    const quick = stuck().press('4').blind('.35');
    expect(quick.frame).toContain('o it is out after all');
    quick.happen({ on: 'press', press: 'o', soon: true });
    expect(quick.frame).not.toContain('is no length');
    expect(quick.bench.hole('4').state).toBe('out');
    // A nought that slipped is no answer.
    const slip = stuck().press('4').blind('.2o');
    expect(slip.frame).toContain('.2o is no length');
    expect(slip.bench.hole('4').state).not.toBe('out');
  });
});
