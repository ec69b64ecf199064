/** Screens about a fault: reached by keys. An invented single, its makes and parts invented too. */
import type { Opening } from '../../../src/screens/base/start.ts';
import { Bench } from '../../job/bench.ts';
import { Desk } from '../desk.ts';

type Look = Partial<Omit<Opening, 'on'>> & { on?: Opening['on'] };

export const STARTS = `putback: 1
job: Won't start
machine: Tarn 125
pieces:
  tank: {takes: 10 min}
  carburettor: {under: tank, takes: 15 min, care: fuel}
suspects:
  float: {what: Float needle leaks, likely: often, piece: carburettor, part: TN-31 needle}
  coil: {what: Coil open, likely: now and then}
  plug: {what: Plug wet, likely: now and then}
  switch: {what: Stop switch corroded, likely: rarely}
checks:
  spark: {check: Blue spark at the plug, bad: [coil, switch, plug], takes: 3 min, caution: "Tank cap shut, fuel wiped up, plug held against the head, away from its hole."}
  primary: {check: Coil primary, limit: 0.8..1.2 ohm, bad: [coil], takes: 5 min, under: tank}
  unplugged: {check: Spark with the switch unplugged, bad: [coil, plug], takes: 2 min}
  bowl: {check: Fuel stands still in the bowl, bad: float, takes: 10 min, under: tank, needs: in the light}
diary:
`;
/** A cover with a shaft seal behind it. */
export const SEAL = `putback: 1
job: Left cover weeps oil
machine: Hollin 400 Twin
pieces:
  lever: {takes: 5 min}
  cover: {under: lever, takes: 30 min, joint: new gasket}
tasks:
  seal: {decide: Renew the shaft seal?, while: cover off, now: {price: 12.50, takes: 40 min}, chance: 1 in 2, harm: {chance: 1 in 20, price: 60.00, takes: 0 min}}
  bearing: {decide: Renew the bearing?, while: cover off}
  hose: {decide: Renew the brake hose?, chance: rarely}
buy:
  gasket: {what: cover gasket, price: 14.20, once: true, for: cover on}
diary:
`;

export function question(look: Look, task: string): Desk {
  const desk = new Desk(new Bench(SEAL), look);
  desk.state = { ...desk.state, hour: 20, view: { screen: 'job', here: `:${task}` } };
  return desk.press('space');
}

/** A cover that is off, with what lies behind it. */
export const BEHIND = `putback: 1
job: Left cover weeps oil
pieces:
  cover: {joint: new gasket; lip seal inwards, loose: 2 dowels}
  bearing: {name: Shaft bearing, under: cover}
  bracket: {under: cover}
tasks:
  chain: {decide: Renew the tensioner?, while: cover off, now: 30, chance: rarely}
buy:
  gasket: {what: HL-1142 cover gasket, once: true, for: cover on}
diary:
`;

export function reached(look: Look = {}): Desk {
  const bench = new Bench(BEHIND);
  bench.mark({ do: 'off', piece: 'cover' });
  return new Desk(bench, look).open('cover').press('k o');
}

export const EMPTY = `putback: 1
job: Drips somewhere
machine: Marlow 250
diary:
`;

export const fault = (look: Look = {}, text = STARTS) => new Desk(new Bench(text), look).press('k');

/** Bad spark, a good coil, a plug that was changed to try and is back. */
export const looked = (look: Look = {}) => new Desk(lookedAt(), look).press('k');

function lookedAt(): Bench {
  const bench = new Bench(STARTS);
  bench.mark({ do: 'look', check: 'spark', how: 'bad' });
  bench.mark({ do: 'look', check: 'primary', reading: '0.94 ohm' });
  bench.mark({ do: 'try', suspect: 'plug', put: 'new plug' });
  bench.mark({ do: 'tried', suspect: 'plug', how: 'same', old: 'back' });
  return bench;
}

export const TRACE: Record<string, (look: Look) => Desk> = {
  'find the fault': (look) => fault(look),
  'find the fault, a suspect': (look) => fault(look).press('up up up'),
  'find the fault, a reading': (look) => fault(look).press('up'),
  'find the fault, with looks': (look) => looked(look),
  'find the fault, it does not fit': (look) => {
    const bench = lookedAt();
    bench.mark({ do: 'look', check: 'unplugged', how: 'bad' });
    return new Desk(bench, look).press('k');
  },
  'find the fault, found': (look) => looked(look).press('enter'),
  'find the fault, nothing listed': (look) => fault(look, EMPTY),
  'find the fault, a line more': (look) =>
    fault(look).press('+').type('Fuse blown, rarely').press('enter'),
  'lists to start from': (look) => fault(look, EMPTY).press('l'),
  'renew it or leave it': (look) => question(look, 'seal'),
  'a question to decide': (look) => question(look, 'bearing'),
  'renew it, by the manual': (look) => question(look, 'hose'),
  'renew it or leave it, nothing known': (look) => question(look, 'bearing').press('w'),
  'other figures': (look) => question(look, 'seal').press('c'),
  'leave it, and why': (look) => question(look, 'seal').press('l').type('no seal here'),
  'while it is open, a question': (look) => reached(look),
  'while it is open': (look) => reached(look).press('down enter'),
  'a line each': (look) =>
    fault(look, EMPTY).press('n').type('Gasket torn, often').press('enter').type('seal hard'),
  'a reading': (look) => fault(look).press('up enter').type('0.4'),
  'how it went': (look) => {
    const bench = lookedAt();
    bench.mark({ do: 'try', suspect: 'coil', put: 'coil of the donor' });
    return new Desk(bench, look).press('k down down c');
  },
};
