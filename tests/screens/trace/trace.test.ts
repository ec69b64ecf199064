import { describe, expect, it } from 'vitest';
import { readJob } from '../../../src/job/read.ts';
import { nextNow } from '../../../src/plan/next/next-now.ts';
import { Bench } from '../../job/bench.ts';
import { Desk } from '../desk.ts';
import { EMPTY, fault, looked, STARTS } from './trace-screens.ts';

const upperOf = (desk: Desk) => readJob(desk.bench.text, 'a.yaml').upper;
const said = (desk: Desk) => desk.frame.replace(/\s+/g, ' ');

describe('finding the fault', () => {
  it('begins with what it may be, in words, and the look that ends it soonest', () => {
    const desk = fault();
    expect(said(desk)).toContain('often Float needle leaks now and then Coil open');
    expect(said(desk)).toContain(
      'Look next: Spark with the switch unplugged A spark lights fuel: caps shut, what was spilt wiped up, the plug held against metal away from its hole. b, the fault shows: Coil open or Plug wet g, as it should be: clears them; left: Float needle leaks or Stop switch corroded',
    );
    expect(said(desk)).toContain('10 min on the whole until you know.');
  });

  it('is marked by one key, and the next look is lit', () => {
    const desk = fault().press('up up b');
    expect(desk.bench.entries.at(-1)).toMatchObject({
      check: 'spark',
      verb: 'looked',
      value: 'bad',
    });
    expect(said(desk)).toContain(
      'not alone Float needle leaks Blue spark at the plug: bad, 18:25; alone it would not do that',
    );
    expect(said(desk)).toContain('> Spark with the switch unplugged');
    expect(said(desk)).toContain('Blue spark at the plug: bad.');
    desk.press('g');
    expect(desk.bench.entries.at(-1)).toMatchObject({ check: 'unplugged', value: 'good' });
    expect(said(desk)).toContain('left Stop switch corroded');
  });

  it("can't say changes nothing, and Backspace takes a look back", () => {
    const desk = fault().press('up up u');
    expect(desk.bench.entries.at(-1)).toMatchObject({ value: 'unclear' });
    expect(said(desk)).toContain('often Float needle leaks');
    desk.press('b');
    const before = desk.bench.entries.at(-1)!;
    desk.press('backspace');
    expect(desk.bench.entries.at(-1)).toMatchObject({ verb: 'undo', value: before.id });
  });

  it('says a caution before what a look is good for', () => {
    const frame = said(fault().press('up up'));
    expect(frame.indexOf('Tank cap shut')).toBeGreaterThan(0);
    expect(frame.indexOf('Tank cap shut')).toBeLessThan(frame.indexOf('left: Float'));
  });

  it('says before the press which key blames whom, and which clears', () => {
    const text = EMPTY.replace('diary:', 'suspects: {vent: Tank vent, coil: Coil}\ndiary:');
    const desk = fault({}, text).press('n').press('enter');
    desk.type('Runs on with the cap open, bad: vent').press('enter').press('enter');
    expect(said(desk)).toContain(
      'b, the fault shows: Tank vent g, as it should be: clears it; left: Coil',
    );
    desk.press('g');
    expect(said(desk)).toContain('cleared Tank vent');
  });

  it('says what must be off first, and what must be so', () => {
    expect(said(fault().press('down'))).toContain('First off: Tank. It needs: in the light.');
  });

  it('takes a reading by its limit, and asks why where somebody says otherwise', () => {
    const desk = fault().press('up enter').type('0.4 ohm').press('enter');
    expect(desk.bench.entries.at(-1)).toMatchObject({ value: 'bad', judged: 'beyond' });
    expect(said(desk)).toContain('Coil primary: 0.4 ohm, bad.');
    const other = fault().press('up enter').type('good, 0.4 ohm').press('enter');
    expect(said(other)).toContain('Why all the same? 0.4 ohm is out of limit: 0.8..1.2 ohm.');
    other.type('meter reads low').press('enter');
    expect(other.bench.entries.at(-1)).toMatchObject({
      ...{ value: 'good', judged: 'by hand', because: 'meter reads low' },
    });
    expect(other.screen).toBe('trace');
  });

  it('asks for the unit of a bare figure far off its limit, and marks nothing before', () => {
    const desk = fault().press('up enter').type('940').press('enter');
    expect(said(desk)).toContain('“940” has no unit, and 940 ohm would be far off 0.8..1.2 ohm');
    expect(desk.bench.entries).toEqual([]);
    desk.type(' mohm').press('enter');
    expect(desk.bench.entries.at(-1)).toMatchObject({ value: 'good', result: '940 mohm' });
  });

  it('asks for the reading where one key says good of a look with a limit, and why where there is none', () => {
    const desk = fault().press('up g');
    expect(said(desk)).toContain('What was measured? Limit: 0.8..1.2 ohm.');
    expect(said(desk)).toContain('Not measured: write good, and then why.');
    desk.type('0.94 ohm').press('enter');
    expect(desk.bench.entries.at(-1)).toMatchObject({ value: 'good', judged: 'within' });
    const other = fault().press('up g').type('good').press('enter');
    expect(said(other)).toContain('Why all the same? Nothing measured to hold against');
    other.type('measured last week').press('enter');
    expect(other.bench.entries.at(-1)).toMatchObject({ value: 'good', judged: 'no reading' });
    expect(said(other)).toContain('Coil primary: without a reading, good');
    // Bad clears nobody: it is noted, and told.
    const bad = fault().press('up b');
    expect(bad.bench.entries.at(-1)).toMatchObject({ value: 'bad', judged: 'no reading' });
  });

  it('asks for the figure again where it was none', () => {
    const desk = fault().press('up enter').type('fine').press('enter');
    expect(said(desk)).toContain('Say good, bad or unclear.');
    expect(desk.screen).toBe('field');
  });

  it('is no thing that Space can mark', () => {
    const desk = fault();
    const before = desk.bench.entries.length;
    desk.press('space space');
    expect(desk.bench.entries).toHaveLength(before);
  });
});

describe('a part changed to try', () => {
  it('is asked how it went, and whether the old one went back', () => {
    const desk = fault().press('up up up up').press('c').type('new plug').press('enter');
    expect(desk.bench.entries.at(-1)).toMatchObject({ suspect: 'plug', verb: 'tried' });
    expect(said(desk)).toContain('new plug is in for Plug wet: how did it go?');
    desk.press('c').type('same, back').press('enter');
    expect(desk.bench.entries.at(-1)).toMatchObject({
      suspect: 'plug',
      value: 'good',
      old: 'back',
    });
    expect(said(desk)).toContain('cleared Plug wet Plug wet: new part tried: good');
  });

  it('two at once are told', () => {
    const desk = fault().press('up up up up').press('c').type('new plug').press('enter');
    desk.press('up c').type('coil of the donor').press('enter');
    expect(said(desk)).toContain('Two things are changed at once: put one back first.');
  });
});

describe('what was found', () => {
  it('goes into the file in one key, with its part, its test and its piece next', () => {
    const desk = fault().press('up up up up up up').press('enter');
    const upper = upperOf(desk);
    expect(upper.found).toBe('Float needle leaks');
    expect([...upper.buys.values()].map(({ what }) => what)).toEqual(['TN-31 needle']);
    expect(upper.tasks.get('proof-float')).toMatchObject({
      verb: 'test',
      after: ['carburettor on'],
    });
    expect(said(desk)).toContain(
      'Found: Float needle leaks. Its part is on the list. Next: Tank: take it off.',
    );
    desk.press('escape');
    expect(said(desk)).toContain('Next: Tank: take it off.');
  });

  it('is proved by the look that showed it, and then nothing is left to look at', () => {
    const desk = looked().press('enter');
    expect(said(desk)).toContain('found Stop switch corroded not put right yet');
    expect(said(desk)).toContain(
      'Found: Stop switch corroded. It is not put right yet. What proves it then: Blue spark at the plug, once more.',
    );
    expect(said(desk)).toContain('may be Float needle leaks');
    expect(nextNow(desk.bench.job, desk.state.now)?.say).toBe('Put right: Stop switch corroded.');
    desk.press('p').type('contacts cleaned').press('enter');
    expect(desk.bench.entries.at(-1)).toMatchObject({ task: 'mend-switch', verb: 'done' });
    expect(said(desk)).toContain('found Stop switch corroded put right, not proved yet');
    expect(said(desk)).toContain('good: the repair is proved');
    desk.press('g');
    expect(said(desk)).toContain('Found, put right and proved: Stop switch corroded.');
    expect(said(desk)).toContain('Blue spark at the plug: before bad, now good');
  });
});

describe('what nobody said', () => {
  it('is not said: no suspect is often where nobody called it so', () => {
    const text = STARTS.replace('{what: Coil open, likely: now and then}', 'Coil open');
    expect(said(fault({}, text))).toContain('may be Coil open');
  });

  it('a look that comes out good before the mending is noted leaves it as not noted', () => {
    const desk = looked().press('enter down g');
    expect(said(desk)).toContain('What was done about it is not noted yet.');
    expect(said(desk)).not.toContain('put right and proved');
  });

  it('a list that was taken over goes out of the file in one key, and what was changed since stays', () => {
    const desk = fault({}, EMPTY).press('l enter');
    expect(upperOf(desk).suspects.size).toBeGreaterThan(5);
    desk.press('backspace');
    expect([upperOf(desk).suspects.size, upperOf(desk).checks.size]).toEqual([0, 0]);
    expect(desk.frame).not.toContain('stays in the file');
    const other = fault({}, EMPTY).press('l enter g');
    other.press('backspace');
    expect(upperOf(other).suspects.size).toBeGreaterThan(5);
  });
});

describe('one key too many', () => {
  it('finds nothing more: what was found is marked where nothing is to be looked at', () => {
    const desk = fault({}, STARTS.replace(/checks:[\s\S]*diary/, 'diary'));
    desk.press('enter');
    const before = desk.bench.entries.length;
    desk.press('enter enter space');
    expect(desk.bench.entries).toHaveLength(before);
    expect(said(desk)).toContain('> found Float needle leaks');
    desk.press('escape k enter');
    expect(desk.screen).toBe('trace');
    expect(desk.bench.entries).toHaveLength(before);
  });

  it('unclear goes to another look, and back to it when no other tells more', () => {
    const desk = fault().press('u');
    expect(said(desk)).toContain('Look next: Blue spark at the plug');
    desk.press('u');
    expect(said(desk)).toContain('Look next: Coil primary');
    desk.press('u u');
    expect(said(desk)).toContain(
      'It told nothing, and no other look tells more: once more, or another way.',
    );
  });
});

describe('from an empty job', () => {
  it('suspects and looks are typed a line each, by their numbers', () => {
    const desk = fault({}, EMPTY).press('n');
    for (const text of ['Gasket torn, often', 'Seal hard, rarely', 'Dusted: 1, 5 min', 'Wiped: 9'])
      desk.type(text).press('enter');
    expect(said(desk)).toContain('There is no number 9 on the list.');
    desk.press('ctrl-u').type('Wiped: 2').press('enter');
    expect(said(desk)).toContain('To look at: Wiped.');
    desk.press('enter');
    expect(desk.screen).toBe('trace');
    const upper = upperOf(desk);
    expect([...upper.suspects.keys()]).toEqual(['gasket-torn', 'seal-hard']);
    expect(upper.checks.get('dusted')).toMatchObject({ bad: ['gasket-torn'], takes: '5 min' });
    expect(said(desk)).toContain('Look next: Dusted');
  });

  it('an empty line ends the suspects only: the looks are asked then, and no text runs on as keys', () => {
    const desk = fault({}, EMPTY)
      .press('n')
      .type('Gasket torn')
      .press('enter')
      .type('Flat battery');
    desk.press('enter enter');
    expect(said(desk)).toContain(
      'What can be looked at? A line each; an empty line ends the list.',
    );
    desk.type('look at the light').press('enter');
    expect(said(desk)).toContain('Say behind a colon what it would show');
    desk.press('ctrl-u').type('Voltage 12.4..12.8 V: flat battery, 5 min').press('enter enter');
    expect(desk.screen).toBe('trace');
    const [look] = [...upperOf(desk).checks.values()];
    expect(look).toMatchObject({ check: 'Voltage', limit: '12.4..12.8 V', bad: ['flat-battery'] });
    expect(upperOf(desk).suspects.size).toBe(2);
  });

  it('+ adds anything as everywhere, and offers first what it may be, or a look', () => {
    const desk = fault({}, EMPTY).press('+').type('Gasket torn, often').press('enter');
    expect(said(desk)).toContain('The whole job: one thing that the fault may be?');
    desk.press('enter');
    expect(desk.screen).toBe('trace');
    expect(said(desk)).toContain('It may be: Gasket torn.');
    desk.press('+').type('Dusted: gasket, 5 min').press('enter');
    expect(said(desk)).toContain('a check that finds the fault?');
    desk.press('enter +').type('buy: talcum').press('enter');
    expect(said(desk)).toContain('to buy?');
    desk.press('enter +').type('drips when parked').press('enter n');
    const upper = upperOf(desk);
    expect([...upper.suspects.keys()]).toEqual(['gasket-torn']);
    expect(upper.checks.get('dusted')).toMatchObject({ bad: ['gasket-torn'], takes: '5 min' });
    expect(upper.buys.get('talcum')).toMatchObject({ what: 'talcum' });
    expect(desk.bench.entries.at(-1)).toMatchObject({ verb: 'note', value: 'drips when parked' });
  });

  it('or a list to start from is taken over, and its marks go on', () => {
    const desk = fault({}, EMPTY).press('l');
    expect(said(desk)).toContain("Small petrol engine won't start Electric machine won't run");
    expect(said(desk)).toContain('> Oil drips');
    desk.press('enter');
    expect(desk.screen).toBe('trace');
    const upper = upperOf(desk);
    expect(upper.suspects.size).toBe(11);
    expect(upper.job).toBe('Drips somewhere');
    expect(readJob(desk.bench.text, 'a.yaml').faults).toEqual([]);
    const before = desk.bench.entries.length;
    desk.press('g');
    expect(desk.bench.entries).toHaveLength(before + 1);
    const again = new Desk(new Bench(desk.bench.text)).press('k l down down down enter');
    expect(again.bench.entries).toHaveLength(0);
  });

  it('no list is marked where none is about the complaint, and Enter asks', () => {
    const desk = fault({}, EMPTY.replace('Drips somewhere', 'It stalls when warm')).press('l');
    expect(desk.frame).not.toMatch(/^> /m);
    expect(said(desk)).toContain('None of these is plainly about that.');
    expect(said(desk)).toContain('a look made cold clears nothing for it');
    desk.press('enter');
    expect(desk.bench.entries).toEqual([]);
    expect(said(desk)).toContain('mark one with the arrows first');
    desk.press('down');
    expect(said(desk)).toContain("> Small petrol engine won't start");
    desk.press('enter');
    expect(upperOf(desk).suspects.size).toBe(11);
    expect(said(desk)).toContain('a look made cold clears nothing for it');
  });

  it('the job itself shows the way there', () => {
    expect(said(new Desk(new Bench(EMPTY)))).toContain('k find the fault');
    expect(said(new Desk(new Bench(STARTS)))).toContain('k find the fault');
  });
});
