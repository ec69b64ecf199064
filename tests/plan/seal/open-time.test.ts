import { describe, expect, it } from 'vitest';
import { openTimes, sayOpenTime } from '../../../src/plan/seal/open-time.ts';
import { boltsOff, boltsOn, jobOf, type Said } from '../make.ts';

const COVER = `
bolts: {S: M6x25}
pieces:
  cover: {name: Left cover, bolts: S S, joint: "sealant, open 10 min"}
`;
const SEEN = '2026-05-02T18:40:00+02:00';
const ready = (item = 'all', at = SEEN): Said[] => [
  ...boltsOff('cover', 'S S', '2026-05-02T10:00:00+02:00'),
  { piece: 'cover', seen: `sealing ${item}`, at },
];
const at = (time: string) => `2026-05-02T${time}+02:00`;
const said = (lines: readonly Said[], now: string, text = COVER) =>
  openTimes(jobOf(text, lines), now).map((t) => sayOpenTime(t, now));

describe('the open time of the sealant', () => {
  it('runs from when all was seen to be ready, as long as the file says', () => {
    expect(said(ready(), at('18:41:00'))).toEqual(['sealant: closed by 18:50']);
    expect(said(ready(), at('18:50:00'))).toEqual(['sealant: closed by 18:50']);
    expect(said(ready(), at('18:50:01'))).toEqual(['sealant: its time was over at 18:50']);
  });

  it('does not run when one thing was ticked, but with the last of them', () => {
    expect(said(ready('faces'), at('18:41:00'))).toEqual([]);
    expect(said(ready('hurry'), at('18:41:00'))).toEqual(['sealant: closed by 18:50']);
  });

  it('goes on running whatever else is ticked afterwards', () => {
    const lines = [...ready(), { piece: 'cover', seen: 'closing all', at: at('18:45:00') }];
    expect(said(lines, at('18:46:00'))).toEqual(['sealant: closed by 18:50']);
  });

  it('does not run while something is inside, unless one went on all the same', () => {
    const [out, away, seen] = ready();
    const rag: Said = { piece: 'cover', inside: '1 rag', at: at('18:30:00') };
    const lines = (more: Said = {}) => [out!, away!, rag, { ...seen, ...more }];
    expect(said(lines(), at('18:41:00'))).toEqual([]);
    expect(said(lines({ because: 'it stays' }), at('18:41:00'))).toHaveLength(1);
  });

  it('is told on the clock of whoever asks', () => {
    expect(said(ready(), '2026-05-02T16:41:00Z')).toEqual(['sealant: closed by 16:50']);
  });

  it('is silent when it is tight, off again, or on another day', () => {
    const shut = [...ready(), ...boltsOn('cover', 'S S', at('18:45:00'))];
    expect(said(shut, at('18:46:00'))).toEqual([]);
    expect(said([...shut, ...boltsOff('cover', 'S S', at('18:47:00'))], at('18:48:00'))).toEqual(
      [],
    );
    expect(said(ready(), '2026-05-03T08:00:00+02:00')).toEqual([]);
  });

  it('says how long it stands first, and by when it is closed', () => {
    const text = COVER.replace('open 10 min', 'let it set 10 min, then close, within 20 min');
    expect(said(ready(), at('18:41:00'), text)).toEqual([
      'sealant: not closed before 18:50, closed by 19:00',
    ]);
    expect(said(ready(), at('18:50:00'), text)).toEqual(['sealant: closed by 19:00']);
    const only = COVER.replace('open 10 min', 'let it set 10 min, then close; cures 24 h');
    expect(said(ready(), at('18:41:00'), only)).toEqual(['sealant: not closed before 18:50']);
    expect(said(ready(), at('18:51:00'), only)).toEqual([]);
  });

  it('of a range takes the shorter end', () => {
    const text = COVER.replace('10 min', '5-10 min');
    expect(said(ready(), at('18:41:00'), text)).toEqual(['sealant: closed by 18:45']);
  });

  it('is silent where the file names no time', () => {
    const text = COVER.replace(', open 10 min', '');
    expect(said(ready(), at('18:41:00'), text)).toEqual([]);
  });
});
