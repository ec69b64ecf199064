import { describe, expect, it } from 'vitest';
import { readJob } from '../../../src/job/read.ts';
import { asPrinted } from '../../../src/model/said.ts';
import { whileOpen } from '../../../src/plan/trace/while-open.ts';
import { Bench } from '../../job/bench.ts';
import { Desk } from '../desk.ts';
import { BEHIND, reached } from './trace-screens.ts';

const said = (desk: Desk) => desk.frame.replace(/\s+/g, ' ');
const upperOf = (desk: Desk) => readJob(desk.bench.text, 'a.yaml').upper;
const row = (desk: Desk, name: string) => {
  desk.state = { ...desk.state, view: { ...desk.state.view, here: name } as never };
  return desk;
};

describe('while it is open', () => {
  it('what is used once, seals, bears or wears is within reach, each once', () => {
    const { bench } = reached();
    const items = whileOpen(bench.job, 'cover', '2026-04-11T18:40:00+02:00');
    expect(items.map(({ what }) => what)).toEqual([
      'Renew the tensioner?',
      'HL-1142 cover gasket',
      'Lip seal',
      'Shaft bearing',
    ]);
    expect(items.find(({ what }) => what === 'Lip seal')).toMatchObject({
      look: 'Lip hard or torn, a groove on the shaft, wet below.',
    });
  });

  it('is offered by the page of what is known, only while the piece is off', () => {
    expect(said(new Desk(new Bench(BEHIND)).open('cover').press('k'))).not.toContain(
      'while it is open',
    );
    const desk = reached().press('escape');
    expect(desk.screen).toBe('known');
    expect(said(desk)).toContain('o while it is open');
    expect(whileOpen(new Bench(BEHIND).job, 'cover', '2026-04-11T18:40:00+02:00')).toEqual([]);
  });

  it('what is to be looked at goes among the tasks, and the next row is lit', () => {
    const desk = row(reached(), 'shaft-bearing').press('enter');
    expect(desk.bench.entries.at(-1)).toMatchObject({
      verb: 'chosen',
      value: 'look Shaft bearing',
    });
    expect(upperOf(desk).tasks.get('look-shaft-bearing')).toMatchObject({
      ...{ verb: 'do', say: asPrinted('Look at it: Shaft bearing'), while: ['cover off'] },
    });
    expect(said(desk)).toContain('to look at Shaft bearing');
  });

  it('what is to be renewed goes on the list too, and Backspace takes all of it back', () => {
    const desk = row(reached(), 'lip-seal').press('r');
    expect(upperOf(desk).buys.get('lip-seal')).toMatchObject({
      what: 'Lip seal',
      for: ['cover on'],
    });
    expect(upperOf(desk).tasks.get('renew-lip-seal')).toMatchObject({
      say: asPrinted('Renew: Lip seal'),
    });
    desk.press('backspace');
    expect(desk.bench.text).toBe(BEHIND);
  });

  it('what is left keeps its reason, and what is asked becomes a question', () => {
    const desk = row(reached(), 'lip-seal').press('l').type('soft and dry').press('enter');
    expect(desk.bench.entries.at(-1)).toMatchObject({
      value: 'leave Lip seal',
      says: 'soft and dry',
    });
    expect(said(desk)).toContain('left Lip seal');
    row(desk, 'shaft-bearing').press('o');
    expect(upperOf(desk).tasks.get('ask-shaft-bearing')).toMatchObject({ verb: 'decide' });
  });

  it('another answer takes out what followed from the first, and Backspace brings that back', () => {
    const desk = row(reached(), 'lip-seal').press('r');
    const renewed = desk.bench.text;
    row(desk, 'lip-seal').press('l').type('soft and dry').press('enter');
    expect(desk.bench.text).toBe(BEHIND);
    desk.press('backspace');
    expect(upperOf(desk).tasks.get('renew-lip-seal')).toMatchObject({
      say: asPrinted('Renew: Lip seal'),
    });
    expect(upperOf(desk).buys.has('lip-seal')).toBe(true);
    expect(desk.bench.text.length).toBe(renewed.length);
    desk.press('backspace');
    expect(desk.bench.text).toBe(BEHIND);
  });

  it('what was marked since stays, and that is said', () => {
    const desk = row(reached(), 'lip-seal').press('r');
    const { bench } = desk;
    bench.mark({ do: 'done', task: 'renew-lip-seal' });
    const other = { do: 'choose', piece: 'cover', what: 'Lip seal', answer: 'leave' } as const;
    expect(bench.warnings(other)).toEqual(['file-stays']);
    bench.mark(other);
    expect(bench.job.upper.tasks.has('renew-lip-seal')).toBe(true);
    expect(bench.job.upper.buys.has('lip-seal')).toBe(false);
  });

  it('a question of the file opens on what it turns on', () => {
    const desk = reached().press('enter');
    expect(desk.screen).toBe('weigh');
    expect(desk.press('escape').screen).toBe('within-reach');
  });

  it('a part that is on the list already is not listed twice', () => {
    const desk = reached().press('down r');
    expect([...upperOf(desk).buys.keys()]).toEqual(['gasket']);
  });
});
