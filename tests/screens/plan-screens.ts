/** Screens of the whole job: coming back, gates, parts, tasks, tests; reached by keys. */
import type { Opening } from '../../src/screens/base/start.ts';
import { Bench } from '../job/bench.ts';
import { Desk } from './desk.ts';
import { CASE, caseOpen, caseShut } from './plan-jobs.ts';

type Look = Partial<Omit<Opening, 'on'>> & { on?: Opening['on'] };
const LATER = '2026-05-02T10:00:00+02:00';

/** Left for three weeks with a rag inside, a pulled thread, and a gasket that is late. */
export function leftAlone(): Bench {
  const bench = caseOpen();
  bench.mark({ do: 'inside', piece: 'case-cover', what: '2 rags' });
  bench.mark({ do: 'cleared', piece: 'case-cover', what: '1 rag' });
  const hole = { do: 'state', piece: 'case-cover', hole: '3' } as const;
  bench.mark({ ...hole, state: 'pulled', says: 'insert M6 x 9' });
  bench.mark({ do: 'buy', buy: 'gasket', state: 'ordered', promised: '2026-04-25' });
  bench.mark({ do: 'buy', buy: 'insert', state: 'here', tray: 'shelf' });
  return bench;
}

/** All that goes on with the cover is here, and the faces are scraped. */
export function ready(text = CASE): Bench {
  const bench = caseOpen(text);
  bench.mark({ do: 'done', task: 'scrape' });
  for (const buy of ['gasket', 'insert']) bench.mark({ do: 'buy', buy, state: 'compared' });
  return bench;
}

function oilIn(): Bench {
  const bench = caseShut();
  bench.mark({ do: 'done', task: 'fill' });
  return bench;
}

function weeps(): Bench {
  const bench = oilIn();
  bench.mark({ do: 'note', piece: 'case-cover', text: 'edge nicked at 3' });
  bench.mark({ do: 'done', task: 'weep', result: 'failed', says: 'a drop at 3' });
  return bench;
}

/** A task, opened from the job. */
function task(bench: Bench, here: string, look: Look): Desk {
  const desk = new Desk(bench, look);
  desk.state = { ...desk.state, view: { screen: 'job', here } };
  return desk.press('go');
}

const CURES = CASE.replace('open 10 min;', 'open 10 min, cures 12 h;');

/** Much to be seen before it is pried off: what hurts, what is over it, what runs where. */
const MUCH = CASE.replace(
  '    caution: {fitting:',
  '    marks: dot in line with the split\n    routes: lead over the frame tube\n    care: spring\n    caution: {removal: The magnet lets go at once., fitting:',
);

/** The cover is all out, and nobody has pried yet. */
function counted(text: string): Bench {
  const bench = new Bench(text);
  bench.mark({ do: 'out', piece: 'case-cover' });
  return bench;
}

/** Oil out, a magnet and a rag inside, bolts in by fingers only. */
function muchStops(): Bench {
  const bench = caseOpen();
  for (const buy of ['gasket', 'insert']) bench.mark({ do: 'buy', buy, state: 'here' });
  for (const kind of ['S', 'M']) bench.mark({ do: 'in', piece: 'case-cover', hand: { kind } });
  bench.mark({ do: 'inside', what: '1 magnet' });
  return bench;
}

export const OF_THE_JOB: Record<string, (look: Look) => Desk> = {
  'note, left alone': (look) => new Desk(leftAlone(), { ...look, now: LATER }),
  'bench, loud': (look) =>
    new Desk(leftAlone(), { ...look, on: { folder: '/Repairs' }, now: LATER }),
  'gate, sealant': (look) => new Desk(ready(), look).open('case-cover').press('go go'),
  'gate, STOP': (look) => new Desk(leftAlone(), look).open('case-cover').press('go go'),
  'gate, a part on order': (look) => {
    const bench = caseOpen();
    bench.mark({ do: 'buy', buy: 'gasket', state: 'ordered', promised: '2026-05-04' });
    return new Desk(bench, look).open('case-cover').press('go go');
  },
  'gate, before you pry': (look) => {
    const bench = caseOpen();
    bench.mark({ do: 'undo', id: bench.entries.at(-1)?.id ?? '' });
    return new Desk(bench, look).open('case-cover').press('g');
  },
  'gate, before the first start': (look) => new Desk(caseShut(), look).press('s'),
  'gate, all that stops': (look) => new Desk(muchStops(), { ...look, now: LATER }).press('go s'),
  'gate, a joint cures': (look) => new Desk(caseShut(CURES), look).press('s'),
  'count, much to see': (look) => new Desk(counted(MUCH), look).open('case-cover'),
  'look, a joint cures': (look) => new Desk(caseShut(CURES), look).open('case-cover'),
  'job, a joint cures': (look) => new Desk(caseShut(CURES), look),
  'task, a joint cures': (look) => task(caseShut(CURES), ':fill', look),
  'gate, something more': (look) => new Desk(caseShut(), look).press('s +').type('chain guard'),
  'gate, what it is': (look) =>
    new Desk(caseShut(), look).press('s +').type('chain guard').press('enter'),
  'on, sealant runs': (look) => new Desk(ready(), look).open('case-cover').press('go go go'),
  'what goes in': (look) =>
    new Desk(leftAlone(), look).open('case-cover').press('i').type('1 plug'),
  'what came out': (look) => new Desk(leftAlone(), look).press('x'),
  'job, something inside': (look) => new Desk(leftAlone(), look),
  'look, something inside': (look) => new Desk(leftAlone(), look).open('case-cover'),
  parts: (look) => new Desk(leftAlone(), { ...look, now: LATER }).press('b'),
  'parts, all here': (look) => new Desk(ready(), look).press('b'),
  'parts, promised': (look) => new Desk(caseOpen(), look).press('b go').type('25 april'),
  'parts, new number': (look) => new Desk(caseOpen(), look).press('b n').type('HL-9'),
  'job, way down': (look) => new Desk(new Bench(CASE), look),
  'job, way up': (look) => new Desk(caseShut(), look),
  'task, caution': (look) => task(new Bench(CASE), ':drain', look),
  'task, to do': (look) => task(caseOpen(), ':scrape', look),
  'task, to adjust': (look) => task(oilIn(), ':play', look),
  'task, to test': (look) => task(oilIn(), ':weep', look).press('go'),
  'add, a torque': (look) =>
    new Desk(new Bench(CASE), look)
      .open('case-cover')
      .press('+')
      .type('torque 12 N·m')
      .press('enter'),
  'task, STOP before it': (look) => {
    const bench = new Bench('putback: 1\njob: Brakes\npieces: {brake-lever: {}}\ndiary:\n');
    bench.mark({ do: 'off', piece: 'brake-lever' });
    bench.mark({ do: 'on', piece: 'brake-lever' });
    const desk = new Desk(bench, look).press('t');
    for (let i = 0; i < 9 && !/> .*holds at a walk/.test(desk.frame); i += 1) desk.press('down');
    return desk.press('enter');
  },
  'task, was and set': (look) => task(oilIn(), ':play', look).press('go').type('was 5, set 3'),
  'task, failed': (look) => task(weeps(), ':weep', look).press('go'),
  'task, what it showed': (look) => task(oilIn(), ':weep', look).press('go -').type('a drop'),
  tests: (look) => new Desk(oilIn(), look).press('t'),
  'tests, one failed': (look) => new Desk(weeps(), look).press('t'),
  'round again': (look) => task(weeps(), ':weep', look).press('go go'),
  within: (look) => new Desk(caseOpen(), look).press('m enter'),
  'within, asked': (look) => new Desk(caseOpen(), look).press('m').type(' x').press('enter'),
};
