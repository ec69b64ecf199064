/** Random job files of one machine: as people write them, short and long, right and wrong, with what happened. */
import fc from 'fast-check';
import { printEntry } from '../../src/job/diary/entry.ts';
import type { Entry } from '../../src/model/types.ts';

const pick = (...texts: string[]) => fc.constantFrom(...texts);
const maybe = (key: string, ...texts: string[]) =>
  fc.option(pick(...texts), { nil: null }).map((t) => (t === null ? null : `${key}: ${t}`));

/** Keys of a piece, on a line each; some of them are faults. */
const keys = fc.tuple(
  maybe('bolts', 'S S M+clip S', '"S S"', 'S S S S', '[S, {kind: M, with: clip}]', 'X X'),
  maybe('name', 'Big cover', 'Cover'),
  maybe('torque', '"10 N·m, manual 2-17"', '8 lbf·ft', 'see manual', '"20 N·m + 90°"', '9000 N·m'),
  maybe('joint', 'new gasket, dry', '[sealant, dowels at 2 and 4]'),
  maybe('loose', '[2 dowels, 1 spring]'),
  maybe('caution', 'mind the spring', '{removal: hot}'),
  maybe('tip', 'top bolt last', '{fitting: [oil the lip]}', '["a: b", "#1"]'),
  maybe('holes', '{2: {note: wet, torque: 12 N·m}, 4: {turns: 7}}', '{9: {thick: 12}}'),
  maybe('sequence', '1 3 2 4', '4 4'),
  maybe('care', 'case', '[fuel, spring]'),
  maybe('under', 'lever', '[lever, gone]'),
  maybe('takes', '20 min'),
  maybe('thick', '12', 'much'),
);

/** What may have happened to it, in any order. */
const happened = fc.array(
  fc.oneof(
    fc.record({ verb: pick('out'), value: pick('S S M+clip S', 'S', 'M') }),
    fc.record({ verb: pick('removed'), value: pick('all') }),
    fc.record({ verb: pick('in'), value: pick('S', 'S S M+clip S') }),
    fc.record({ verb: pick('tight'), value: pick('snug', 'full') }),
    fc.record({
      verb: pick('state'),
      value: pick('stuck', 'pulled', 'mended', 'sheared'),
      hole: fc.constantFrom(['1'], ['2'], ['4']),
      says: pick('heat: "a lot", # of it', 'insert M6'),
    }),
    fc.record({
      verb: pick('settle'),
      value: pick('M', 'S'),
      hole: fc.constantFrom(['1'], ['2']),
    }),
    fc.record({
      verb: pick('corrected'),
      value: pick('torque'),
      was: pick('10 N·m, manual 2-17'),
      says: pick('8 N·m, bulletin 12', 'not so: see below'),
    }),
    fc.record({ verb: pick('note'), value: pick('spring the wrong way round', '- : #') }),
  ),
  { maxLength: 10 },
);

const indented = (texts: readonly string[], by: number) => texts.map((t) => ' '.repeat(by) + t);

/** Text of a file; `cover` is its piece of interest. */
export const anyJob: fc.Arbitrary<string> = fc
  .tuple(keys, happened, fc.boolean(), fc.nat({ max: 3 }), fc.boolean())
  .map(([all, marks, flow, kept, kinds]) => {
    const said = all.filter((k) => k !== null);
    const picture = ['map: |', '  1 . 2', '  . . .', '  4 . 3'];
    const cover = flow
      ? [`  cover: {${said.join(', ')}}`]
      : ['  cover:', ...indented([...said, ...(kept > 1 ? picture : [])], 4)];
    const entries = marks.map((mark, i): Entry => {
      const at = `2025-11-03T18:${String(i + 10)}:00+01:00`;
      return { at, id: `mark00${i + 10}`, piece: 'cover', ...mark } as Entry;
    });
    const keep: Entry[] = entries.slice(0, kept).map(({ at, id }, i) => {
      return { at, id: `keep00${i + 10}`, verb: 'keep', value: id };
    });
    const buy: Entry[] = [
      {
        at: '2025-11-04T10:00:00+01:00',
        id: 'buys0001',
        buy: 'gasket',
        verb: 'done',
        value: kept > 1 ? 'wrong' : 'here',
      },
    ];
    return [
      'putback: 1',
      'job: Cover weeps',
      'machine: Hollin 400 Twin, 1998, 41230 km',
      ...(kinds ? ['bolts: {S: "M6x25 flange, 8 mm", M: "M6x35 flange, 8 mm"}'] : []),
      'pieces:',
      '  lever: {bolts: S}',
      ...cover,
      'tasks:',
      '  weep: {test: Weeps?, after: cover on}',
      'buy:',
      '  gasket: {what: HL-1142 gasket, once: true, for: cover on}',
      ...(kept > 1
        ? [
            'suspects:',
            '  seal: {what: Shaft seal hard, piece: cover, likely: often}',
            '  hose: Breather hose blocked',
            'checks:',
            '  weep-seen: {check: Oil at the shaft, bad: seal, under: cover}',
            '  blow: {check: Air goes through, bad: [hose, none-such]}',
          ]
        : []),
      'diary:',
      ...indented([...entries, ...keep, ...buy].map(printEntry), 2),
      '',
    ].join('\n');
  });
