/** The keys of what a fault may be, of a look at it, and of what a question to decide is weighed by: one row each. */
import { type Keys, note, takes } from './key-row.ts';

export const SUSPECT_KEYS = {
  what: { value: 'called', is: 'What it may be.', like: 'what: Float needle leaks' },
  likely: {
    value: 'likely',
    is: 'How often it is this: often, now and then, rarely, or a weight.',
    like: 'likely: often',
  },
  piece: {
    value: 'text',
    takes: 'the name of a piece',
    is: 'The piece that it sits in.',
    like: 'piece: carburettor',
  },
  part: {
    value: 'text',
    is: 'What puts it right: a name under buy:, or what to ask for.',
    like: 'part: needle',
  },
  takes: takes('takes: 30 min', 'How long it takes to put right.'),
  note: note('note: was renewed last year'),
} as const satisfies Keys;

export const CHECK_KEYS = {
  check: { value: 'called', is: 'What is looked at.', like: 'check: Blue spark at the plug' },
  limit: { value: 'text', is: 'What the reading must keep to.', like: 'limit: 0.8..1.2 ohm' },
  bad: {
    value: 'texts',
    takes: 'a suspect or a list of suspects',
    is: 'Suspects that it would show.',
    like: 'bad: [coil, plug]',
  },
  along: {
    value: 'texts',
    takes: 'suspects, or checks on the way',
    is: 'A way up to here: it would show all on it.',
    like: 'along: [tank, tap, filter]',
  },
  takes: takes('takes: 3 min', 'How long the look takes.'),
  under: { value: 'pieceNames', is: 'Pieces that must be off for it.', like: 'under: tank' },
  needs: { value: 'texts', is: 'What must be so for it.', like: 'needs: [hot, running]' },
  caution: {
    value: 'texts',
    is: 'Read before the look.',
    like: 'caution: Fuel wiped up, tank cap shut.',
  },
  note: note('note: with the grey lead'),
} as const satisfies Keys;

/** Money and time; `chance` only of what touching it may break. */
export const AMOUNT_KEYS = {
  price: {
    value: 'text',
    takes: 'a figure',
    is: 'In the money of the bench.',
    like: 'price: 12.50',
  },
  takes: takes('takes: 40 min'),
} as const satisfies Keys;

export const HARM_KEYS = {
  chance: {
    value: 'text',
    takes: 'a chance',
    is: 'How often touching it goes wrong.',
    like: 'chance: 1 in 20',
  },
  ...AMOUNT_KEYS,
} as const satisfies Keys;
