import { describe, expect, it } from 'vitest';
import { CARE_WORDS as ALL, type Care } from '../../../src/model/types.ts';
import { CARES, caresOf } from '../../../src/plan/care/care.ts';
import { cautionsFor } from '../../../src/plan/care/cautions.ts';
import { checkAll } from '../../../src/plan/check.ts';
import { gate } from '../../../src/plan/gates/gate.ts';
import { jobOf, NOW, off, on } from '../make.ts';

const named = (name: string) => caresOf({ key: 'x', name, care: null }).care;

/** Names of the trade, one and several of them; common practice, no source. */
const NAMES: readonly [Care, readonly string[]][] = [
  ['head', ['cylinder head', 'cylinder heads']],
  ['case', ['crankcase', 'crankcases', 'crank case', 'case half', 'case halves']],
  ['cap', ['main cap', 'main caps', 'big-end cap', 'bearing caps', 'camshaft holder', 'cam caps']],
  [
    'brake',
    [
      ...['brake', 'brakes', 'brake caliper', 'caliper', 'calipers', 'calliper', 'callipers'],
      ...['master cylinder', 'master cylinders', 'brake disc', 'brake hoses', 'brake pads'],
      ...['brake shoes', 'wheel cylinders', 'ABS unit', 'handbrake', 'bleed nipple', 'bleeders'],
      ...['front disc', 'rear rotor', 'rear drum', 'pads'],
    ],
  ],
  [
    'steering',
    [
      ...['steering head', 'steering stem', 'handlebar', 'handlebars', 'handle bar', 'yoke'],
      ...['top yokes', 'triple clamp', 'triple tree', 'fork', 'forks', 'front fork', 'tie rod'],
      ...['tie rods', 'track rod', 'ball joint', 'ball joints', 'drag link', 'head bearing'],
      ...['steering wheel', 'steering rack', 'king pins', 'front end', 'headset'],
      ...['rack and pinion', 'pitman arm', 'idler arms', 'steering knuckle', 'stub axles'],
    ],
  ],
  [
    'structure',
    [
      ...['frame', 'frames', 'subframe', 'sub frames', 'crossmember', 'engine mount'],
      ...['engine mounts', 'centre stand', 'center stand', 'side stand', 'stands', 'tow bar'],
      ...['kickstand', 'sidecar', 'trailer hitch'],
    ],
  ],
  [
    'wheel',
    [
      ...['wheel', 'wheels', 'front wheel', 'rear wheels', 'axle', 'axles', 'front axle', 'hub'],
      ...['hubs', 'tyre', 'tires', 'wheel rim', 'rims', 'spokes', 'lug nuts'],
    ],
  ],
  [
    'suspension',
    [
      ...['fork', 'forks', 'shock', 'shocks', 'shock absorber', 'strut', 'struts', 'swingarm'],
      ...['swing arms', 'swinging arm', 'wishbone', 'control arms', 'torsion bar', 'damper'],
      ...['monoshock', 'coilover', 'coil-overs', 'stabilizer bar', 'drop links', 'knuckles'],
      ...['A-arm', 'dog bones', 'rear linkage'],
    ],
  ],
  [
    'spring',
    [
      ...['spring', 'springs', 'return spring', 'valve springs', 'recoil starter', 'kick starter'],
      ...['pull start', 'cam chain tensioner', 'belt tensioner'],
    ],
  ],
  [
    'fuel',
    [
      ...['fuel line', 'fuel lines', 'fuel pump', 'petrol tank', 'gas tank', 'gas tanks', 'tank'],
      ...['carburettor', 'carburettors', 'carburetor', 'carburetors', 'carb', 'carbs'],
      ...['throttle body', 'throttle bodies', 'injector', 'injectors', 'float bowl', 'petcock'],
    ],
  ],
  ['battery', ['battery', 'batteries', 'battery tray', 'starter motor', 'starter']],
  [
    'mains',
    [
      'mains switch',
      'mains lead',
      'contactor',
      'switchgear',
      'terminal box',
      '230 V inlet',
      'charger',
    ],
  ],
  [
    'blade',
    ['blade', 'blades', 'cutting deck', 'mower deck', 'knife', 'knives', 'cutters', 'propeller'],
  ],
  ['lift', ['gas strut', 'gas struts', 'hydraulic ram', 'hydraulics', 'hoist', 'loader arm']],
  ['airbag', ['airbag', 'airbags', 'air bag', 'belt pretensioner', 'SRS unit']],
];

describe('what is dangerous about a piece', () => {
  it.each(NAMES.flatMap(([care, names]) => names.map((name) => [name, care] as const)))(
    '%s: %s, by its name',
    (name, care) => {
      expect(named(name)).toContain(care);
      expect(named(name.toUpperCase())).toContain(care);
      const key = name.toLowerCase().replaceAll(' ', '-');
      expect(caresOf({ key, name: 'Part', care: null }).guessed).toContain(care);
    },
  );

  it('no sort of care is without names', () => {
    expect(NAMES.map(([care]) => care).sort()).toEqual([...ALL].sort());
  });

  it.each([
    ...['alternator cover', 'left cover', 'mirror', 'seat', 'sprocket cover', 'gearbox cover'],
    ...['oil tank', 'handwheel', 'flywheel', 'selector fork', 'fan blade', 'oil pump', 'breather'],
    ...['knee pads', 'turbocharger', 'super charger', 'propeller shaft', 'gear linkage'],
    ...['dashboard', 'trim', 'number plate', 'carrier', 'lamp rim', 'hubris', 'brakeless'],
  ])('%s is nothing of that', (name) => {
    expect(named(name)).toEqual([]);
  });

  it('what the file says stands first, and a guess only adds', () => {
    expect(caresOf({ key: 'fork', name: 'Fork', care: ['spring'] })).toEqual({
      care: ['spring', 'steering', 'suspension'],
      guessed: ['steering', 'suspension'],
    });
    expect(
      caresOf({ key: 'fork', name: 'Fork', care: ['steering', 'suspension'] }).guessed,
    ).toEqual([]);
  });

  it('only a person’s word leaves a guess out', () => {
    expect(caresOf({ key: 'fork', name: 'Fork', care: ['none'] }).care).toEqual([]);
    expect(caresOf({ key: 'fork', name: 'Fork', care: ['spring', 'none'] }).care).toEqual([
      'spring',
    ]);
  });

  it.each(ALL)('%s is said before its first bolt, out and in', (care) => {
    const { spec } = jobOf(`pieces: {part: {care: ${care}}}`).pieces.get('part')!;
    for (const way of ['off', 'on'] as const) {
      const said = cautionsFor(spec, way);
      expect(said[0]).toEqual({ key: care, say: CARES[care].say });
      expect(said.some((c) => c.key === 'maker')).toBe(CARES[care].licensed);
    }
  });

  it('a guessed brake stops the start until its lever was pumped', () => {
    const job = jobOf('pieces: {front-calipers: {}}', [
      off('front-calipers'),
      on('front-calipers'),
    ]);
    const item = gate(job, 'start', null, NOW).items.find((i) => i.key === 'brake-front-calipers');
    expect(item).toMatchObject({ stops: true, done: false });
    expect(item?.say).toContain('pumped');
  });

  it('check says where a guess was made, and how to say it for sure', () => {
    const text = (care: string) =>
      `putback: 1\njob: x\npieces:\n  front-wheel: {bolts: S, torque: 8 N·m${care}}\nbolts: {S: M8x40}\ndiary:\n`;
    const [fault] = checkAll(text(''), 'x.yaml');
    expect(fault).toMatchObject({ code: 'guessed-care', severity: 'warning', line: 4, column: 3 });
    expect(fault?.fix).toContain('care: wheel');
    expect(checkAll(text(', care: wheel'), 'x.yaml')).toEqual([]);
    expect(checkAll(text(', care: none'), 'x.yaml')).toEqual([]);
  });
});
