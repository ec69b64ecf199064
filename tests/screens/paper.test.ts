import { describe, expect, it } from 'vitest';
import { Bench } from '../job/bench.ts';
import { LEFT_COVER } from './covers.ts';
import { Desk } from './desk.ts';

function desk(photos = 0): Desk {
  const bench = new Bench(LEFT_COVER);
  for (let i = 0; i < photos; i++) {
    const taken = `2026-04-11T16:4${9 - i}:00+02:00`;
    bench.mark({ do: 'photo', piece: 'alternator', picture: `photos/${i}.jpg`, taken });
  }
  return new Desk(bench);
}

/** What was asked of the loop by these presses. */
function asked(d: Desk, presses: string): unknown[] {
  const effects: unknown[] = [];
  const carryOut = d as unknown as { carryOut: (u: { effects: unknown[] }) => void };
  const before = carryOut.carryOut.bind(d);
  carryOut.carryOut = (u) => {
    effects.push(...u.effects);
    before(u);
  };
  d.press(presses);
  return effects;
}

const paperOf = (d: Desk, piece: string) => {
  d.state = { ...d.state, view: { screen: 'job', here: piece } };
  return d.press('p');
};

describe('paper from the screens', () => {
  it('is one key from the job: the card of the marked piece first, made and then said where it lies', () => {
    const d = paperOf(desk(), 'alternator');
    expect(d.frame).toContain('> card     Alternator cover');
    expect(asked(d, 'enter')).toEqual([
      { do: 'print', file: 'cover.yaml', paper: 'card', piece: 'alternator', open: false },
    ]);
    expect(d.state.view.screen).toBe('job');
    d.happen({ on: 'quiet', say: 'Page: /bench/cover-card-alternator.html' });
    expect(d.frame).toContain('Page: /bench/cover-card-alternator.html');
  });

  it('is opened where that is said, and is about the whole job below the card', () => {
    const d = paperOf(desk(), 'alternator').press('down down');
    expect(asked(d, 'o')).toEqual([
      { do: 'print', file: 'cover.yaml', paper: 'tag', piece: null, open: true },
    ]);
    const empty = new Desk(new Bench('putback: 1\njob: Idle\ndiary:\n'));
    expect(paperOf(empty, 'none').frame).toContain('> labels');
  });

  it('is not made by Space, and not at all on the way back', () => {
    const d = paperOf(desk(), 'alternator');
    expect(asked(d, 'space')).toEqual([]);
    expect(asked(d, 'escape')).toEqual([]);
    expect(d.state.view.screen).toBe('job');
  });
});

describe('as it was', () => {
  it('shows name and time of each photograph of this piece, and opens one after the other', () => {
    const d = desk(2).open('alternator').press('x');
    expect(d.frame).toContain('Alternator cover, as it was');
    expect(d.frame.indexOf('1.jpg')).toBeLessThan(d.frame.indexOf('0.jpg'));
    expect(asked(d, 'enter enter')).toEqual([
      { do: 'show', file: 'cover.yaml', picture: 'photos/1.jpg' },
      { do: 'show', file: 'cover.yaml', picture: 'photos/0.jpg' },
    ]);
    expect(d.press('escape').state.view.screen).toBe('piece');
  });

  it('is no key where there is none', () => {
    expect(desk().open('alternator').press('x').state.view.screen).toBe('piece');
  });
});

describe('what is photographed before it comes off', () => {
  const cover = (text: string, photo = false) => {
    const bench = new Bench(`putback: 1
job: Idle
bolts: {S: M6x25}
pieces: {cover: ${text}, lead-cable: {}}
diary:
`);
    if (photo) bench.mark({ do: 'photo', piece: 'cover', picture: 'a.jpg' });
    return new Desk(bench);
  };
  const said = (d: Desk) => d.state.quiet;

  it('is a cable or a hose, and what lies behind a piece in an order: one quiet line, once', () => {
    expect(said(cover('{}').open('lead-cable').press('enter'))).toBe(
      'Photograph how it runs before it comes off.',
    );
    const d = cover('{bolts: S S, loose: 3 shims}').open('cover').press('enter');
    expect(said(d)).toBe('Photograph what lies behind it, and in which order, before it is moved.');
    expect(said(d.press('enter'))).toBeNull();
  });

  it('is not said of what is photographed already, nor where nothing can be got wrong', () => {
    expect(
      said(cover('{bolts: S S, loose: 3 shims}', true).open('cover').press('enter')),
    ).toBeNull();
    expect(said(cover('{bolts: S S}').open('cover').press('enter'))).toBeNull();
  });
});
