import { describe, expect, it } from 'vitest';
import { Bench } from '../../job/bench.ts';
import { Desk } from '../desk.ts';
import { CASE, caseOpen, caseShut } from '../plan-jobs.ts';

const at = (bench: Bench, here: string, look = {}): Desk => {
  const desk = new Desk(bench, look);
  desk.state = { ...desk.state, view: { screen: 'job', here } };
  return desk;
};
const last = (desk: Desk) => desk.bench.entries.at(-1);

function oilIn(): Bench {
  const bench = caseShut();
  bench.mark({ do: 'done', task: 'fill' });
  return bench;
}

describe('the job as a way down and up', () => {
  it('shows what lies under what, with tasks where they come', () => {
    const { frame } = new Desk(new Bench(CASE));
    const rows = frame.split('\n').map((r) => r.slice(2, 26).trimEnd());
    expect(rows.slice(3, 13)).toEqual([
      'Lever',
      'Fuel pipe',
      'Drain the oil',
      '  Case cover',
      '    Scrape both faces',
      '',
      'and on the way up',
      'Lever play',
      'Fill the oil in again',
      'Five minutes at idle',
    ]);
    expect(frame).toContain('> Lever ');
  });

  it('says where each is: done and with what, to do, waits for what', () => {
    const { frame } = new Desk(caseOpen());
    expect(frame).toMatch(/Drain the oil {2,}done: 1\.4 l, clean/);
    expect(frame).toMatch(/Scrape both faces {2,}to do/);
    expect(frame).toMatch(/Five minutes at idle {2,}waits for Fill the oil in again/);
    expect(frame).toMatch(/ {4}Case cover {2,}off, bolts in cup 2/);
    expect(frame).toMatch(/> {5}Scrape both faces/);
  });

  it('what waits for a part or a task is not the next thing', () => {
    const bench = caseOpen();
    expect(new Desk(bench).frame).toContain('Next: Scrape both faces.');
    bench.mark({ do: 'done', task: 'scrape' });
    expect(new Desk(bench).frame).toContain(
      'Next: Case cover waits for cover gasket and wire inserts M6 x 9.',
    );
    for (const buy of ['gasket', 'insert']) bench.mark({ do: 'buy', buy, state: 'here' });
    expect(new Desk(bench).frame).toContain(
      'Next: Case cover: faces and joint first, then 1 takes S',
    );
  });

  it('is not done by one key before its turn: a word does it', () => {
    const desk = at(new Bench(CASE), ':scrape').press('space enter');
    expect(desk.screen).toBe('task');
    expect(desk.frame).toContain('Not yet: it waits for Case cover off.');
    expect(desk.bench.entries).toEqual([]);
    desk.press('r').type('through the filler').press('enter');
    expect(last(desk)).toMatchObject({ verb: 'done', task: 'scrape' });
  });

  it('a test for which the machine runs is not due while the oil is out', () => {
    const bench = new Bench(`putback: 1
job: Case weeps
bolts: {S: M6x25}
pieces: {cover: {bolts: S, joint: new gasket}}
tasks: {drain: {do: Drain the oil}, fill: {do: Fill the oil in}}
diary:
`);
    bench.mark({ do: 'done', task: 'drain' });
    for (const what of ['out', 'off'] as const) bench.mark({ do: what, piece: 'cover' });
    bench.mark({ do: 'in', piece: 'cover', hand: { kind: 'S' } });
    for (const pass of ['snug', 'full']) bench.mark({ do: 'tight', piece: 'cover', pass });
    expect(new Desk(bench).press('t').frame).toMatch(
      /> not yet {2}Cover: weeps when hot\?[\s\S]*Not run yet: the oil is out\./,
    );
    bench.mark({ do: 'done', task: 'fill' });
    expect(new Desk(bench).press('t').frame).toMatch(/> now: hot {2}Cover: weeps when hot\?/);
  });

  it('says the next task where all pieces rest', () => {
    const { frame } = new Desk(caseShut());
    expect(frame).toContain('Next: Adjust: Lever play (2..4 mm).');
    expect(frame).toMatch(/> Lever play {2,}to adjust/);
  });
});

describe('a task', () => {
  it('is done in one key, and one is back on the job', () => {
    const desk = at(caseOpen(), ':scrape').press('go');
    expect(desk.frame).toMatch(/^Scrape both faces {2,}to do/);
    desk.press('go');
    expect(last(desk)).toMatchObject({ task: 'scrape', verb: 'done', value: 'done' });
    expect(desk.screen).toBe('job');
    expect(desk.frame).toContain('- Scrape both faces: done.');
  });

  it('has its caution read once before it', () => {
    const desk = at(new Bench(CASE), ':drain').press('go');
    expect(desk.frame).toContain('Caution   What runs out may be hot');
    expect(desk.frame).toContain('Space read, go on');
    desk.press('go');
    expect(desk.bench.entries).toHaveLength(0);
    desk.press('escape go');
    expect(desk.frame).toContain('Enter it is done');
    desk.press('r').type('1.2 l, grey').press('enter');
    expect(last(desk)).toMatchObject({ task: 'drain', result: '1.2 l, grey' });
  });

  it.each([
    ['was 5, set 3', { was: '5', set: '3' }],
    ['5 3', { was: '5', set: '3' }],
    ['set to 3 mm, cable frayed', { set: '3 mm', result: 'cable frayed' }],
  ])('adjust: %s in one line', (text, said) => {
    const desk = at(oilIn(), ':play').press('go');
    expect(desk.frame).toContain('Limit     2..4 mm');
    desk.press('go').type(text).press('enter');
    expect(last(desk)).toMatchObject({ task: 'play', ...said });
    expect(desk.frame).toContain('Lever play');
  });

  it('can be taken back', () => {
    const desk = at(caseOpen(), ':scrape').press('go go');
    desk.press('backspace');
    expect(desk.bench.job.tasks.get('scrape')?.done).toBeNull();
    expect(desk.frame).toContain('- Taken back: Scrape both faces: done.');
    desk.press('backspace');
    expect(desk.frame).toMatch(/The last mark is of an earlier sitting: Case cover:/);
    expect(desk.bench.piece('case-cover').away).toBe('removed');
  });
});

describe('the test list', () => {
  it('writes itself, and says when each is due', () => {
    const bench = oilIn();
    bench.mark({ do: 'aside', piece: 'fuel-pipe' });
    bench.mark({ do: 'on', piece: 'fuel-pipe' });
    const desk = new Desk(bench);
    expect(desk.frame).toMatch(/t \d tests due/);
    desk.press('t');
    expect(desk.frame).toMatch(/now {2,}Five minutes at idle/);
    expect(desk.frame).toMatch(/now: fuel on {2,}Fuel pipe: smell or drop of fuel\?/);
    for (let i = 0; i < 9 && !/^> .*Fuel pipe: smell/m.test(desk.frame); i += 1) desk.press('down');
    expect(desk.frame).toContain('From what was disturbed; what the maker says goes first.');
    desk.press('go go');
    expect(last(desk)).toMatchObject({ task: 'fuel-pipe-smell', value: 'passed' });
    expect(bench.text).toMatch(/fuel-pipe-smell: \{test:/);
    expect(desk.screen).toBe('tests');
    expect(desk.frame).toMatch(/passed {2,}Fuel pipe: smell/);
  });

  it('what makes the engine run comes after what is to be seen to before the first start', () => {
    const desk = at(oilIn(), ':weep').press('go');
    expect(desk.frame).toContain('before the first start');
    desk.press('go');
    expect(desk.screen).toBe('task');
    desk.press('go');
    expect(last(desk)).toMatchObject({ task: 'weep', value: 'passed' });
  });
});

describe('a test that failed', () => {
  it('opens round 2 in one key, with what round 1 found and what is used once', () => {
    const bench = oilIn();
    bench.mark({ do: 'note', piece: 'case-cover', text: 'edge nicked at 3' });
    const desk = at(bench, ':weep').press('go go -').type('drop at 3').press('enter');
    expect(last(desk)).toMatchObject({ task: 'weep', value: 'failed', says: 'drop at 3' });
    expect(desk.frame).toContain('Off again     Lever and Case cover');
    expect(desk.frame).toContain('drop at 3');
    expect(desk.frame).toContain('11 April, Case cover: edge nicked at 3');
    expect(desk.frame).toContain('New again     cover gasket');
    expect(desk.frame).toContain('Enter round 2: Lever comes off');
    desk.press('go');
    if (desk.screen === 'read') desk.press('go');
    expect(desk.screen).toBe('off');
    desk.press('go');
    expect(bench.piece('lever').round).toBe(2);
  });

  it('can be looked at again from the job', () => {
    const bench = oilIn();
    bench.mark({ do: 'done', task: 'weep', result: 'failed', says: 'a drop' });
    const desk = at(bench, ':weep');
    expect(desk.frame).toMatch(/> Five minutes at idle {2,}failed: a drop/);
    desk.press('go');
    if (desk.screen === 'gate') desk.press('go');
    desk.press('go');
    expect(desk.screen).toBe('round');
  });
});

describe('twenty minutes', () => {
  it('a time typed says what can be done in it and left safe', () => {
    const desk = new Desk(caseOpen()).press('m');
    expect(desk.frame).toContain('Nothing is 20.');
    desk.press('enter');
    expect(desk.frame).toContain('In 20 minutes, and left safe');
    expect(desk.frame).toMatch(/10 min {3}Scrape both faces\./);
    desk.press('go m').type('5 min').press('enter');
    expect(desk.frame).toContain('In 5 minutes');
    expect(desk.frame).not.toContain('Scrape');
  });

  it('how it is left safe is said, and a part of a piece is a part', () => {
    const desk = new Desk(
      new Bench(CASE.replace('lever: {bolts: S,', 'lever: {bolts: S S S S S S S S,')),
    );
    desk.press('m ctrl-u').type('7').press('enter');
    expect(desk.frame).toContain('A part of it.');
    expect(desk.frame).toContain('Two bolts opposite each other stay in');
  });

  it('no time is asked for again', () => {
    const desk = new Desk(caseOpen()).press('m ctrl-u').type('a while').press('enter');
    expect(desk.frame).toContain('That is no time yet');
  });
});

describe('a reading out of its limit', () => {
  const text = `putback: 1
job: No spark
tasks: {primary: {test: Coil primary, limit: 0.8..1.2 ohm}}
diary:
`;
  const typed = (reading: string) => {
    const desk = new Desk(new Bench(text));
    desk.press('down enter');
    if (desk.screen !== 'task') desk.press('enter');
    return desk.press('r').type(reading).press('enter');
  };

  it('rings, asks why, and is passed with that reason alone', () => {
    const desk = typed('0.4 ohm');
    expect(desk.done).toContain('ring');
    expect(desk.frame).toContain('0.4 ohm is out of limit: 0.8..1.2 ohm');
    expect(desk.bench.job.tasks.get('primary')?.done).toBe(null);
    expect(desk.press('escape').bench.job.tasks.get('primary')?.done).toBe(null);
    const again = typed('0.4 ohm').type('meter is borrowed').press('enter');
    expect(again.bench.job.tasks.get('primary')).toMatchObject({
      done: 'passed',
      judged: 'beyond',
    });
  });

  it('within it is passed at once', () => {
    const desk = typed('0.94 ohm');
    expect(desk.bench.job.tasks.get('primary')).toMatchObject({ done: 'passed', judged: 'within' });
  });

  it('Enter asks for the reading: with none it rings, and is passed with a reason that stays in the diary', () => {
    const desk = new Desk(new Bench(text));
    desk.press('down enter');
    if (desk.screen !== 'task') desk.press('enter');
    expect(desk.frame).toContain('Enter what it reads');
    desk.press('enter');
    expect(desk.frame).toContain('What does it read?');
    expect(desk.bench.entries).toHaveLength(0);
    desk.press('enter');
    expect(desk.done).toContain('ring');
    expect(desk.frame).toContain('No reading to hold against 0.8..1.2 ohm.');
    desk.press('enter');
    expect(desk.bench.entries).toHaveLength(0);
    desk.type('the meter is away').press('enter');
    expect(last(desk)).toMatchObject({ judged: 'no reading', because: 'the meter is away' });
    expect(desk.frame).toContain('Coil primary: passed, without a reading.');
  });

  it('no repeated key passes it', () => {
    const desk = new Desk(new Bench(text));
    desk.press('down enter');
    for (let i = 0; i < 30; i += 1) desk.press(i % 3 === 0 ? 'go' : 'enter');
    expect(desk.bench.entries).toHaveLength(0);
  });
});
