import { describe, expect, it } from 'vitest';
import { asPrinted } from '../../src/model/said.ts';
import { withinMinutes } from '../../src/plan/twenty.ts';
import { boltsOff, done, jobOf, NOW, off, type Said } from './make.ts';

const short = (text: string, minutes: number, lines: Said[] = []) => {
  const { can, maybe } = withinMinutes(jobOf(text, lines), minutes, NOW);
  return { can: can.map((c) => [c.step, c.minutes]), maybe: maybe.map((m) => m.step) };
};
const row = (n: number) => Array(n).fill('S').join(' ');

describe('what can be done in a given time and left safe', () => {
  it('one thing after the other, as long as there is time', () => {
    const text = `bolts: {S: M6x25}
pieces: {lever: {bolts: S}, hose: {}, cover: {under: [lever, hose], bolts: ${row(8)}}}`;
    expect(short(text, 20).can).toEqual([
      ['lever off', 4],
      ['hose off', 3],
      ['cover off', 11],
    ]);
    expect(short(text, 8).can).toEqual([
      ['lever off', 4],
      ['hose off', 3],
    ]);
    expect(short(text, 2).can).toEqual([]);
  });

  it('never begins to put on what could not be tightened', () => {
    const text = `bolts: {S: M6x25}\npieces: {cover: {bolts: ${row(6)}, joint: gasket}}`;
    const lines = boltsOff('cover', row(6));
    expect(short(text, 24, lines).can).toEqual([]);
    expect(short(text, 25, lines).can).toEqual([['cover on', 25]]);
  });

  it('some bolts of a large piece can come out, if two hold it', () => {
    const text = `bolts: {S: M6x25}\npieces: {cover: {bolts: ${row(40)}}}`;
    expect(withinMinutes(jobOf(text), 20, NOW).can).toEqual([
      {
        step: 'cover off',
        say: 'Cover: 40 bolts to come out.',
        minutes: 20,
        partly: true,
        leave: 'Two bolts opposite each other stay in and hold it; note which are out.',
      },
    ]);
  });

  it.each(['brake', 'steering', 'structure', 'spring', 'head'])(
    'never begins a piece with care: %s',
    (care) => {
      expect(short(`pieces: {part: {care: ${care}}}`, 60).can).toEqual([]);
    },
  );

  it('never lets a liquid out, however short it is: it would be left half run out', () => {
    const text = `pieces: {plug: {}}
tasks:
  drain: {do: Drain the oil, takes: 10 min}
  wipe: {do: Wipe the case, takes: 5 min}
  fill: {do: Fill with oil, after: drain}`;
    expect(short(text, 20).can).toContainEqual(['wipe', 5]);
    expect(short(text, 20)).not.toMatchObject({ maybe: expect.arrayContaining(['drain']) });
    expect(short(text, 20).can.map(([step]) => step)).not.toContain('drain');
  });

  it('takes the word of the file for how long something takes', () => {
    const job = jobOf(
      'pieces: {part: {}, stopper: {care: brake}}\ntasks: {clean: {do: Clean}, look: {do: Look}}',
    );
    // How long it takes does not make it safe to leave half done.
    Object.assign(job.pieces.get('stopper')?.spec ?? {}, { takes: asPrinted('1 min') });
    Object.assign(job.pieces.get('part')?.spec ?? {}, { takes: asPrinted('15 min') });
    Object.assign(job.tasks.get('clean')?.spec ?? {}, { takes: asPrinted('1 h') });
    Object.assign(job.tasks.get('look')?.spec ?? {}, { takes: asPrinted('5 min') });
    expect(withinMinutes(job, 20, NOW).can.map((c) => [c.step, c.minutes])).toEqual([
      ['part off', 15],
      ['look', 5],
    ]);
  });

  it.each(['front-wheel', 'calipers', 'swingarm', 'return-spring', 'fuel-tank', 'side-stand'])(
    'never begins what its name says is dangerous: %s',
    (name) => {
      expect(short(`pieces: {${name}: {takes: 5 min}}`, 60)).toEqual({ can: [], maybe: [] });
      const safe = short(`pieces: {${name}: {takes: 5 min, care: none}}`, 60).can;
      expect(safe[0]).toEqual([`${name} off`, 5]);
    },
  );

  it('opens nothing while a liquid behind it is still to be let out', () => {
    const text =
      'pieces: {sump: {joint: new gasket, takes: 5 min}}\ntasks: {drain: {do: Warm it up and drain}}';
    expect(short(text, 60).can).toEqual([]);
    expect(short(text, 60, [done('drain')]).can[0]).toEqual(['sump off', 5]);
  });

  it('offers apart what nobody knows the length of, and never a wait or a test', () => {
    const text = `tasks: {a: {do: Clean}, b: {decide: New seal?}, c: {wait: 1 h}, d: {test: Idle}, e: {adjust: Slack}}`;
    expect(short(text, 20)).toEqual({ can: [], maybe: ['a', 'b', 'e'] });
    const stuck: Said[] = [
      { piece: 'cover', out: 'S !' },
      { piece: 'cover', hole: ['2'], state: 'stuck' },
    ];
    const bolts = 'bolts: {S: M6x25}\npieces: {cover: {bolts: S S}}';
    expect(short(bolts, 20, stuck)).toEqual({ can: [], maybe: ['cover off'] });
  });

  it('offers no task about brakes, steering, wheels or springs, and no piece with a spring behind it', () => {
    const text = `bolts: {S: M6x25}
pieces: {lid: {bolts: S, loose: [strong spring]}}
tasks:
  bleed: {do: Bleed the brakes}
  lever: {adjust: 'Brake lever play, by the cable'}
  nut: {do: Torque the steering head nut}
  wheel: {do: Renew the front wheel bearings}
  press: {do: Compress the fork spring}
  chain: {adjust: Chain slack}`;
    expect(short(text, 60)).toEqual({ can: [], maybe: ['chain'] });
  });

  it('leaves out what waits for a part, and what waits for something that is not chosen', () => {
    const text = `pieces: {lid: {}, cover: {under: lid}}
buy: {gasket: {what: gasket, for: cover on}}`;
    expect(short(text, 60, [off('lid'), off('cover')]).can).toEqual([]);
  });

  it('says how an opening is left', () => {
    const leave = withinMinutes(jobOf('pieces: {cover: {joint: gasket}}'), 20, NOW).can[0]?.leave;
    expect(leave).toBe('Cover what is open; note what you cover it with.');
  });
});
