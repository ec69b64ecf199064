/** Verbs of what is remembered from one job to the next: rows of the table in verbs.ts. */

export const REMEMBERED = {
  keep: {
    is: 'Which entry is worth knowing next time.',
    takes: 'the id of an entry',
    like: 'keep: bZ4yK1uW',
    about: [[]],
    value: 'id',
    kind: 'other',
    moves: null,
    disturbs: false,
    standsAlone: true,
  },
  taken: {
    is: 'From which earlier job something of this piece was taken over.',
    takes: 'a file',
    like: 'taken: cover-2025.yaml',
    about: [['piece!']],
    value: 'text',
    kind: 'known',
    moves: null,
    disturbs: false,
    standsAlone: true,
  },
  reading: {
    is: "What the machine's counter says.",
    takes: 'a figure with its unit',
    like: 'reading: 41400 km',
    about: [[]],
    value: 'text',
    kind: 'other',
    moves: null,
    disturbs: false,
    standsAlone: true,
  },
} as const;
