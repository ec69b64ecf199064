/** What is noted of a bolt in trouble, what to do about it, and what ends it. */
import { describe, expect, it } from 'vitest';
import { adviceOf, waysOut } from '../../../src/plan/care/trouble-advice.ts';
import { Bench } from '../../job/bench.ts';
import { Desk } from '../desk.ts';

const job = (care: string) => `putback: 1
job: Front end
bolts: {S: M6x25}
pieces:
  bracket: {name: Bracket, ${care}bolts: S S, torque: '10 N·m, manual 3'}
diary:
`;
const said = (desk: Desk) => desk.frame.replace(/[|\s]+/g, ' ');
const CALIPER = job('care: brake, ');

function off(text: string): Desk {
  const desk = new Desk(new Bench(text)).open('bracket').press('go');
  for (let i = 0; i < 6 && desk.screen !== 'off'; i += 1)
    desk.press(desk.screen === 'gate' ? 'a' : 'space');
  return desk;
}

describe('a stuck bolt', () => {
  it('beside a brake is not soaked or heated, and is one for a licensed mechanic', () => {
    const desk = off(CALIPER).press('1 - s');
    expect(said(desk)).toContain('no penetrating oil and no heat here');
    desk.press('1 h');
    expect(desk.screen).toBe('advice');
    expect(said(desk)).toContain('oil on disc, pad or lining');
    expect(said(desk)).toContain('licensed mechanic');
    expect(desk.frame).not.toContain('penetrating oil, time');
  });

  it('of a piece that hurts nobody is soaked as before', () => {
    expect(said(off(job('')).press('1 - s'))).toContain('penetrating oil, time, heat');
  });

  it.each([
    'brake',
    'steering',
    'structure',
    'wheel',
    'suspension',
    'spring',
    'fuel',
    'battery',
    'mains',
    'blade',
    'lift',
    'airbag',
  ])('of care: %s is told why it is not heated', (care) => {
    const bench = new Bench(job(`care: ${care}, `));
    for (const trouble of ['stuck', 'rounded'] as const) {
      const advice = adviceOf(bench.piece('bracket').spec, trouble).join(' ');
      expect(advice).toContain('no penetrating oil and no heat here');
      expect(advice).not.toContain('oil, time, heat');
    }
  });

  it('is no mended thread: ; leads to it and notes nothing', () => {
    const desk = off(job('')).press('1 - s 1').press(';');
    expect(desk.bench.hole('1', 'bracket')).toMatchObject({ state: 'home', trouble: 'stuck' });
    expect(said(desk)).toContain('1: stuck. Its bolt is in');
    const wish = { do: 'state', piece: 'bracket', hole: '1', state: 'mended' } as const;
    expect(desk.bench.refusal(wish)).toMatchObject({ code: 'not-mended', state: 'stuck' });
    expect(desk.bench.ask({ ...wish, because: 'it turns after all' }).ok).toBe(true);
  });

  it('is out by its own letter, from the job two Enters away', () => {
    const desk = off(job('')).press('1 - s').press('2 space');
    desk.press('escape escape escape').press('enter enter enter enter enter');
    expect(desk.bench.hole('1', 'bracket')).toMatchObject({ state: 'home', trouble: 'stuck' });
  });
});

describe('a pulled thread', () => {
  const pulled = (text: string) => {
    const bench = new Bench(text);
    bench.mark({ do: 'out', piece: 'bracket' });
    bench.mark({ do: 'in', piece: 'bracket', hand: { kind: 'S' } });
    return new Desk(bench).open('bracket').press('escape').open('bracket');
  };
  function noted(text: string): Desk {
    const desk = pulled(text);
    if (desk.screen !== 'look') desk.press('escape');
    return desk.press('1 - p');
  }

  it('shows how it is mended at once, and by h from then on; s on the page of troubles is asked', () => {
    const desk = noted(job(''));
    expect(desk.screen).toBe('advice');
    expect(desk.frame).toContain('[ ] Shut every opening with rag');
    desk.press('space');
    expect(desk.screen).toBe('look');
    expect(desk.press('h').screen).toBe('advice');
    desk.press('space -');
    expect(desk.frame).toContain('Noted: thread pulled.');
    expect(desk.press('h').screen).toBe('advice');
    desk.press('space - s');
    expect(desk.bench.hole('1', 'bracket').trouble).toBe('pulled');
    expect(said(desk)).toContain('1: thread pulled is noted. Enter puts this in its place.');
    desk.press('enter');
    expect(desk.bench.hole('1', 'bracket').trouble).toBe('stuck');
  });

  it('says on its page which key leads there', () => {
    const desk = pulled(job(''));
    if (desk.screen !== 'look') desk.press('escape');
    expect(said(desk.press('1'))).toContain(
      'Thread stripped? - then p says so. Then h: how it is mended; m: it is mended.',
    );
  });

  it('of a brake is not drilled by a list: a new part, or a licensed mechanic', () => {
    const desk = noted(CALIPER);
    expect(said(desk)).toContain(
      'It keeps the brakes: not by this list. A new part, or a licensed mechanic.',
    );
    expect(desk.frame).not.toContain('drill');
    // Its bolt out first.
    desk.press('space m enter m');
    expect(said(desk)).toContain('How was 1 mended, and by whom?');
    expect(said(desk)).not.toContain('Bigger bolt');
    const { job: now } = desk.bench;
    const piece = desk.bench.piece('bracket');
    const [hole] = piece.holes;
    if (!hole) throw new Error('no hole');
    expect(
      waysOut(piece, hole, now.upper.kinds)
        .map((w) => w.do)
        .join(' '),
    ).not.toContain('insert');
  });

  it('and the status say one thing: mended first, and then all round again', () => {
    const desk = noted(job(''));
    expect(said(desk)).toContain('Leave the others as they are: this hole is mended first');
    expect(said(desk)).not.toContain('Go on with the others');
  });
});
