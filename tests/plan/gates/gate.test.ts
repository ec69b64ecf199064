import { describe, expect, it } from 'vitest';
import { gate, isPassed } from '../../../src/plan/gates/gate.ts';
import type { Moment } from '../../../src/plan/gates/items.ts';
import { boltsOff, boltsOn, done, jobOf, NOW, off, type Said } from '../make.ts';

const TEXT = `
bolts: {S: M6x25, M: M6x35}
pieces:
  hose: {routes: behind the starter cable}
  cover:
    name: Left cover
    under: hose
    bolts: S S M+clip
    torque: 10 N·m, manual 2-17
    marks: dot in line with the slot
    joint: sealant along the edge, open 10 min; seal lip inwards
    loose: [2 dowels, thrust washer]
    caution: {removal: The magnet lets go at once., fitting: Keep fingers off the edge.}
    holes: {3: {wet: true}}
  plate: {under: cover, bolts: S}
tasks:
  drain: {do: Drain the oil into a can, before: cover off}
  scrape: {do: Scrape both faces, while: cover off}
  fill: {do: Fill with 1.9 l of oil, after: cover on}
  cure: {wait: "24 h, sealant cures", after: cover on}
buy:
  seal: {what: shaft seal 20x30x7, once: true, for: cover on}
`;

const items = (moment: Moment, lines: Said[], piece: string | null = 'cover') =>
  gate(jobOf(TEXT, lines), moment, piece, NOW).items;
const said = (moment: Moment, lines: Said[], piece: string | null = 'cover') =>
  Object.fromEntries(items(moment, lines, piece).map((i) => [i.key, i]));

const away = [off('hose'), ...boltsOff('cover', 'S S M+clip')];

describe('before prying', () => {
  it('stops while a bolt is in, and names it', () => {
    const one = said('prying', [{ piece: 'cover', out: 'S ! M+clip' }]);
    expect(one.bolts).toEqual({
      key: 'bolts',
      say: '2 of 3 out: 2 still in.',
      done: false,
      stops: true,
      loud: false,
      stop: '2 is still in. Get it out before you pry.',
      way: { to: 'bolts', piece: 'cover' },
    });
    expect(said('prying', [{ piece: 'cover', out: 'S S M+clip' }]).bolts).toMatchObject({
      say: '3 of 3 out.',
      done: true,
    });
  });

  it('no tick passes a bolt that is in', () => {
    const lines = [
      { piece: 'cover', seen: 'prying all' },
      { piece: 'cover', seen: 'prying bolts' },
    ];
    expect(said('prying', lines).bolts?.done).toBe(false);
  });

  it('says what lies over it, what will fall out, what to mark, and what to beware of', () => {
    expect(items('prying', []).map((i) => i.say)).toEqual([
      '0 of 3 out: 1, 2 and 3 still in.',
      'Still connected: Hose.',
      'Marked: dot in line with the slot.',
      'Falls out or stays in: 2 dowels and thrust washer.',
      'The magnet lets go at once.',
    ]);
  });

  it('a piece without bolts is not counted', () => {
    expect(items('prying', [], 'hose').map((i) => i.key)).toEqual(['routes']);
  });
});

describe('before the sealant or the gasket', () => {
  it('asks for all that must be ready', () => {
    expect(items('sealing', away).map((i) => i.say)).toEqual([
      'shaft seal 20x30x7: wanted. Used once: the old one does not go back in.',
      'To hand: sealant.',
      'Both faces clean and dry, nothing scraped into what is open.',
      'Blind holes blown dry, eyes covered: oil under a bolt cracks the boss.',
      'Sealant on the threads of 3: open to a liquid.',
      'Counted and in its place: 2 dowels.',
      'Counted and in its place: thrust washer.',
      'Joint: sealant along the edge, open 10 min.',
      'Joint: seal lip inwards.',
      'Seals: the lip the right way round, not turned over.',
      'Lined up: dot in line with the slot.',
      'Bolts sorted: 2 S, 1 M+clip.',
      'Wrench set for 10 N·m.',
      'Keep fingers off the edge.',
      'All within 10 min from then on.',
    ]);
  });

  it('stops for a rag in the opening, a thread to mend and a bolt to settle', () => {
    const lines: Said[] = [
      off('hose'),
      ...boltsOff('cover', 'M S M+clip'),
      { piece: 'cover', hole: ['2'], state: 'pulled' },
      { piece: 'cover', inside: '2 rags' },
      { piece: 'cover', cleared: 'rag' },
    ];
    const stops = items('sealing', lines).filter((i) => i.stops);
    expect(stops.map((i) => [i.say, i.done])).toEqual([
      ['1 rag still inside (Left cover).', false],
      ['Settle what belongs in 1.', false],
      ['Mend first: 2 pulled.', false],
      ['shaft seal 20x30x7: wanted. Used once: the old one does not go back in.', false],
    ]);
  });

  it('a part that is here is held against the old one', () => {
    const here = [...away, { buy: 'seal', done: 'here' }];
    expect(said('sealing', here)['part-seal']).toMatchObject({
      say: 'Here, and the same as the old one: shaft seal 20x30x7.',
      done: false,
    });
    const same = [...here, { buy: 'seal', done: 'compared' }];
    expect(said('sealing', same)['part-seal']?.done).toBe(true);
  });

  it('what lies under and is not back is named', () => {
    const open = [...away, ...boltsOff('plate', 'S')];
    expect(said('sealing', open).under?.say).toBe('Under it and not back: Plate.');
  });

  it('what hangs aside is held clear', () => {
    const lines: Said[] = [{ piece: 'hose', removed: 'aside' }, ...boltsOff('cover', 'S S M+clip')];
    expect(said('sealing', lines).clear?.say).toBe('Held clear of the joint: Hose.');
  });

  it('one key ticks all that only eyes can tell, and what is missing stays', () => {
    const open = items('sealing', [...away, { piece: 'cover', seen: 'sealing all' }]);
    expect(open.filter((i) => !i.done).map((i) => i.key)).toEqual(['part-seal']);
    const all = [
      ...away,
      { buy: 'seal', done: 'compared' },
      { piece: 'cover', seen: 'sealing all' },
    ];
    expect(isPassed(gate(jobOf(TEXT, all), 'sealing', 'cover', NOW))).toBe(true);
  });

  it('a person can tick one, strike one and add one', () => {
    const lines: Said[] = [
      ...away,
      { piece: 'cover', seen: 'sealing faces' },
      { piece: 'cover', struck: 'sealing wrench' },
      { piece: 'cover', added: 'sealing', says: 'Woodruff key in its slot.' },
    ];
    const now = said('sealing', lines);
    expect(now.faces?.done).toBe(true);
    expect(now.blind?.done).toBe(false);
    expect(now.wrench).toBeUndefined();
    expect(now['added-1']).toMatchObject({ say: 'Woodruff key in its slot.', done: false });
    const ticked = [...lines, { piece: 'cover', seen: 'sealing added-1' }];
    expect(said('sealing', ticked)['added-1']?.done).toBe(true);
  });

  it('what was ticked before it came off again does not count', () => {
    const lines = [
      ...away,
      { piece: 'cover', seen: 'sealing all' },
      ...boltsOn('cover', 'S S M+clip'),
      ...boltsOff('cover', 'S S M+clip'),
    ];
    expect(said('sealing', lines).faces?.done).toBe(false);
  });

  it('a tick on one piece is none on another, nor at another moment', () => {
    const lines = [
      ...away,
      { piece: 'plate', seen: 'sealing all' },
      { piece: 'cover', seen: 'closing all' },
    ];
    expect(said('sealing', lines).faces?.done).toBe(false);
  });
});

describe('before closing', () => {
  it('stops for everything that went in, under it too, until it is out', () => {
    const lines: Said[] = [
      ...away,
      { piece: 'cover', inside: '2 rags' },
      { piece: 'plate', inside: 'magnet' },
    ];
    const before = items('closing', lines).filter((i) => i.stops);
    expect(before.map((i) => [i.key, i.say, i.done])).toEqual([
      ['inside-cover-rag', '2 rags still inside (Left cover).', false],
      ['inside-plate-magnet', '1 magnet still inside (Plate).', false],
    ]);
    const struck = [...lines, { piece: 'cover', struck: 'closing inside-cover-rag' }];
    expect(said('closing', struck)['inside-cover-rag']?.done).toBe(false);
    const out = [
      ...lines,
      { piece: 'cover', cleared: '2 rags' },
      { piece: 'plate', cleared: 'all' },
    ];
    expect(
      items('closing', out)
        .filter((i) => i.stops)
        .map((i) => [i.say, i.done]),
    ).toEqual([
      ['2 rags in, and out again (Left cover).', true],
      ['1 magnet in, and out again (Plate).', true],
    ]);
  });

  it('more counted out than in is out', () => {
    const lines = [
      ...away,
      { piece: 'cover', inside: 'rag' },
      { piece: 'cover', cleared: '3 rags' },
    ];
    expect(said('closing', lines)['inside-cover-rag']).toMatchObject({
      say: '1 rag in, and out again (Left cover).',
      done: true,
    });
  });

  it('names the work that was to be done while it is off, and counts insert tangs', () => {
    const lines: Said[] = [
      ...away,
      { piece: 'cover', hole: ['2'], state: 'pulled' },
      { piece: 'cover', hole: ['2'], state: 'mended', says: 'wire insert' },
    ];
    const open = said('closing', lines);
    expect(open['task-scrape']).toMatchObject({
      say: 'Still to do: Scrape both faces',
      done: false,
    });
    expect(open.tangs?.say).toBe('Insert tangs counted: 1.');
    expect(said('closing', [...lines, done('scrape')])['task-scrape']).toBeUndefined();
  });

  it('has nothing to ask without a piece, or with one that is not there', () => {
    expect(items('closing', away, null)).toEqual([]);
    expect(items('closing', away, 'mirror')).toEqual([]);
  });
});

describe('before the first start', () => {
  const back = [...away, ...boltsOn('cover', 'S S M+clip'), { piece: 'hose', fitted: 'all' }];

  it('stops for what is drained, finger-tight, inside or pulled', () => {
    const lines: Said[] = [
      done('drain'),
      ...away,
      { piece: 'cover', in: 'S S M+clip' },
      { piece: 'cover', hole: ['3'], tight: 'full' },
      { piece: 'cover', hole: ['2'], state: 'pulled' },
      { inside: 'rag' },
    ];
    const stops = items('start', lines, null).filter((i) => i.stops && !i.done);
    expect(stops.map((i) => i.say)).toEqual([
      'The oil is out. Fill it in.',
      'Left cover: 1 and 2 only finger-tight.',
      '1 rag still inside.',
      'Left cover: thread pulled in 2.',
    ]);
  });

  it('no tick starts an engine without oil', () => {
    const lines = [done('drain'), ...back, { seen: 'start all' }, { seen: 'start fluid-drain' }];
    expect(said('start', lines, null)['fluid-drain']).toMatchObject({ done: false, stops: true });
    const full = said('start', [...lines, done('fill')], null);
    expect(full['fluid-drain']).toMatchObject({ say: 'In again: the oil.', done: true });
  });

  it('what fills in without a name fills in the one thing that was let out', () => {
    const text = 'tasks: {drain: {do: Drain the oil}, fill: {do: Fill to the middle of the glass}}';
    const at = (upper: string, lines: Said[]) =>
      gate(jobOf(upper, lines), 'start', null, NOW).items.find((i) => i.key === 'fluid-drain');
    expect(at(text, [done('drain')])?.done).toBe(false);
    expect(at(text, [done('drain'), done('fill')])?.done).toBe(true);
    const two = text.replace('tasks: {', 'tasks: {empty: {do: Drain the fuel}, ');
    expect(at(two, [done('drain'), done('empty'), done('fill')])?.done).toBe(false);
  });

  it('where the file has no task that fills it in, somebody has to say so', () => {
    const text = 'tasks: {drain: {do: Drain the fuel}}';
    const at = (lines: Said[]) =>
      gate(jobOf(text, lines), 'start', null, NOW).items.find((i) => i.key === 'fluid-drain');
    expect(at([done('drain'), { seen: 'start all' }])).toMatchObject({ done: false, stops: true });
    expect(at([done('drain'), { seen: 'start fluid-drain' }])?.done).toBe(true);
  });

  it('names what is not back, what still cures, and the way it runs', () => {
    const lines = back.slice(0, -1);
    const text = items('start', lines, null).map((i) => i.say);
    expect(text).toContain('Not back: Hose.');
    expect(text).toContain('Not over until 10:00 tomorrow: 24 h, sealant cures.');
    expect(text).toContain('Nothing is only finger-tight.');
    expect(text.some((say) => say.startsWith('An engine outdoors'))).toBe(true);
  });

  it('asks for controls that were disturbed; a brake must be ticked by itself', () => {
    const job = `pieces: {throttle-cable: {}, brake-caliper: {care: brake}, mirror: {}}`;
    const lines = [off('throttle-cable'), off('brake-caliper'), { seen: 'start all' }];
    const now = gate(jobOf(job, lines), 'start', null, NOW).items;
    const controls = now.filter((i) => i.key.startsWith('cable-') || i.key.startsWith('brake-'));
    expect(controls.map((i) => [i.key, i.done, i.stops])).toEqual([
      ['cable-throttle-cable', true, false],
      ['brake-brake-caliper', false, true],
    ]);
  });

  it('forgets its ticks when more is disturbed', () => {
    const ticked = [...back, { seen: 'start all' }];
    expect(said('start', ticked, null).near?.done).toBe(true);
    expect(said('start', [...ticked, off('hose')], null).near?.done).toBe(false);
  });
});
