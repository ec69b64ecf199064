import fc from 'fast-check';
import { expect, it } from 'vitest';
import { heldTorque } from '../../../src/job/fold/against.ts';
import { fold } from '../../../src/job/fold/fold.ts';
import { readJob } from '../../../src/job/read.ts';
import type { HoleNow, RowItem } from '../../../src/model/types.ts';

const JOB = `putback: 1
job: Pump cover
bolts:
  S: M6x25 flange, 8 mm
  L: M6x55 flange, 8 mm, 8.8
  B: {text: M8x30, class: 12.9, note: oiled}
pieces:
  cover:
    bolts: S L B S L
    torque: 10 N·m, manual 2-17
    into: cast aluminium
    thick: 12 mm
    holes:
      2: {depth: 14 mm, into: steel}
      3: {torque: 40 N·m, note: threadlocker}
diary: []
`;

const item = fc.option(
  fc.record<RowItem>({
    kind: fc.constantFrom('S', 'L', 'B', '?'),
    with: fc.subarray(['washer', 'clip', '1.5mm']),
  }),
  { nil: null },
);
const set = fc.option(
  fc.record({
    value: fc.constantFrom(5, 10, 45, 200),
    to: fc.constantFrom(null, 250),
    unit: fc.constantFrom('N·m', 'lbf·ft'),
  }),
  { nil: null },
);
const asked = fc.array(fc.record({ at: fc.nat({ max: 4 }), holds: item, belongs: item, set }), {
  minLength: 1,
  maxLength: 30,
});

it('a torque that was held against another hole of the ring says what it would say of this one alone', () => {
  const { upper } = readJob(JOB, 'job.yaml');
  const piece = fold(upper, []).pieces.get('cover');
  if (!piece) throw new Error('no cover');
  const verdicts = new Set<string>();
  fc.assert(
    fc.property(asked, (questions) => {
      for (const { at, holds, belongs, set } of questions) {
        const of = piece.holes[at];
        if (!of) throw new Error('no hole');
        const hole: HoleNow = { ...of, holds, belongs };
        const alone = heldTorque({ ...piece, spec: { ...piece.spec } }, hole, upper.kinds, set);
        expect(heldTorque(piece, hole, upper.kinds, set)).toEqual(alone);
        verdicts.add(`${alone?.against.verdict}`);
      }
    }),
  );
  expect([...verdicts]).toEqual(expect.arrayContaining(['cannot say', 'undefined', 'yields']));
});
