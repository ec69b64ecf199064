/**
 * One line for every key of a job file: what it is, what it takes, and an example. Editors show it, faults
 * quote it.
 */

export interface Help {
  /** What it is. */
  is: string;
  /** What stands behind it: `a text`. */
  takes: string;
  /** An example, as a line of the file. */
  like: string;
}

const help = (is: string, takes: string, like: string): Help => ({ is, takes, like });
const TEXT = 'a text';
const TEXTS = 'a text or a list of texts';
const FIGURE = 'a figure in mm';
const YES = 'true or false';
const STEPS = 'a step or a list of steps';

export const HELP = {
  file: {
    putback: help('Version of this file’s form.', '1', 'putback: 1'),
    job: help('What this job is, in a few words.', TEXT, 'job: Left cover weeps oil'),
    machine: help('What is being repaired.', TEXT, 'machine: Hollin 400 Twin, 1998'),
    'machine-id': help(
      'Its frame number, or another name that it alone has.',
      TEXT,
      'machine-id: HL4-20117',
    ),
    like: help('Machines that what was learnt holds for too.', TEXTS, 'like: Hollin 500 Twin'),
    complaint: help('What the owner said.', TEXT, 'complaint: Oil below the left cover'),
    found: help('What was found.', TEXT, 'found: Gasket torn at hole 7'),
    done: help('What was done.', TEXT, 'done: New gasket, faces cleaned'),
    bolts: help(
      'The kinds of bolts, each with a letter.',
      'kinds by their letters',
      'bolts: {S: "M6x25 flange, 8 mm"}',
    ),
    pieces: help(
      'What comes off and goes back.',
      'pieces by their names',
      'pieces: {gear-lever: {bolts: P}}',
    ),
    tasks: help(
      'Work that is not a piece.',
      'tasks by their names',
      'tasks: {drain: {do: Drain the oil}}',
    ),
    buy: help(
      'What must be had.',
      'things by their names',
      'buy: {gasket: {what: Cover gasket, once: true}}',
    ),
    diary: help(
      'What happened: the program adds a line for each mark.',
      'a list of entries',
      'diary:',
    ),
  },
  kind: {
    thread: help('Thread, pitch and hand.', TEXT, 'thread: M6'),
    length: help('Length under the head, mm unless said.', FIGURE, 'length: 25'),
    head: help('Form of the head.', TEXT, 'head: flange'),
    tool: help('What turns it.', TEXT, 'tool: 8 mm'),
    class: help('Class or grade as marked on the head.', TEXT, 'class: 8.8'),
    threaded: help('Length of the threaded end, mm.', FIGURE, 'threaded: 18'),
    lh: help('Left-hand thread.', YES, 'lh: true'),
    once: help('Never used twice.', YES, 'once: true'),
    note: help('Anything else.', TEXT, 'note: two of them are new'),
  },
  piece: {
    name: help('What people call it.', TEXT, 'name: Alternator cover'),
    under: help(
      'Pieces that come off before it.',
      'a piece or a list of pieces',
      'under: [gear-lever]',
    ),
    bolts: help('The kinds in its holes, in their order.', 'a row of kinds', 'bolts: S S M+clip S'),
    torque: help('Torque as printed, and where.', TEXT, 'torque: 10 N·m, manual 2-17'),
    into: help('Material that the bolts go into.', TEXT, 'into: cast aluminium'),
    thick: help('From the seat of the head to the joint face, mm.', FIGURE, 'thick: 12'),
    thread: help('Usable thread below the joint face, mm.', 'a depth', 'thread: 3..19'),
    joint: help(
      'How it meets its neighbour: gasket, sealant, dowels, lip.',
      TEXTS,
      'joint: new gasket',
    ),
    loose: help('What falls out or must stay in.', TEXTS, 'loose: [2 dowels, thrust washer]'),
    caution: help(
      'Read once before its step.',
      'texts, or removal and fitting',
      'caution: {fitting: Keep fingers off the edge.}',
    ),
    tip: help(
      'Shown beside its step.',
      'texts, or removal and fitting',
      'tip: {removal: Top bolt last.}',
    ),
    marks: help('Alignment marks.', TEXTS, 'marks: dot on the shaft in line with the split'),
    routes: help('How hoses, wires and cables run.', TEXTS, 'routes: behind the frame tube'),
    tray: help('Where its bolts lie meanwhile.', TEXT, 'tray: cup 2'),
    map: help(
      'A picture of the holes, as seen from outside.',
      'lines of numbers and dots behind a bar',
      'map: |',
    ),
    pitch: help(
      'Distance of the map’s cells, mm: one figure, or across and down.',
      'one figure or two',
      'pitch: 20',
    ),
    holes: help(
      'What is special about single holes.',
      'holes by their numbers',
      'holes: {7: {note: oil passage}}',
    ),
    sequence: help(
      'The maker’s order of tightening.',
      'holes in their order',
      'sequence: [1, 3, 2, 4]',
    ),
    passes: help('Rounds of tightening.', TEXTS, 'passes: [snug, part 5 N·m, full]'),
    care: help(
      'What is dangerous about it, or wants the maker’s order; none, so that nothing is guessed.',
      'one word or several',
      'care: brake',
    ),
    along: help(
      'Pieces with which it comes off, without a step of its own.',
      'a piece or a list of pieces',
      'along: [bracket]',
    ),
    bridges: help(
      'Pieces that it joins: it comes off before any of them.',
      'a list of pieces',
      'bridges: [cover, case]',
    ),
    takes: help('How long it takes by hand.', 'a time', 'takes: 20 min'),
    first: help('Holes that come first.', 'a hole or a list of holes', 'first: [2, 8]'),
    note: help('Anything else.', TEXT, 'note: edge was bent before'),
  },
  item: {
    kind: help('The kind in this hole.', 'a letter', 'kind: M'),
    with: help('What lies under the head, from the head down.', TEXTS, 'with: [clip, washer]'),
  },
  steps: {
    removal: help('Before it comes off.', TEXTS, 'removal: Top bolt last.'),
    fitting: help('Before it goes back.', TEXTS, 'fitting: Keep fingers off the edge.'),
  },
  hole: {
    note: help('What is special.', TEXT, 'note: oil passage'),
    thick: help('From the seat of the head to the joint face, mm.', FIGURE, 'thick: 40'),
    thread: help('Usable thread below the joint face, mm.', 'a depth', 'thread: 3..19'),
    turns: help('Turns from first bite until the head touches.', 'a number', 'turns: 15'),
    proud: help('How far the head stands off when dropped in, mm.', FIGURE, 'proud: 16'),
    at: help('Its place in mm, to the right and down.', 'two figures in a list', 'at: [84, 31]'),
    torque: help('Its own torque.', TEXT, 'torque: 22 N·m'),
    into: help('Its own material.', TEXT, 'into: steel insert'),
    wet: help('It opens into oil, fuel or another liquid.', YES, 'wet: true'),
    group: help('A group with its own turn or torque.', TEXT, 'group: inner'),
  },
  pass: {
    name: help('Name of the pass.', TEXT, 'name: part'),
    torque: help('Its torque.', TEXT, 'torque: 5 N·m'),
    angle: help('Its angle in degrees.', 'a number of degrees', 'angle: 90'),
    after: help('When, for a pass that comes again later.', TEXT, 'after: 50 km'),
  },
  task: {
    do: help('Work to be done.', TEXT, 'do: Drain the oil'),
    wait: help('What to wait for.', TEXT, 'wait: Sealant cures, 12 h'),
    adjust: help('What to set; was and set go into the diary.', TEXT, 'adjust: Chain slack'),
    test: help('What must pass.', TEXT, 'test: Five minutes at idle'),
    decide: help('A question to be answered.', TEXT, 'decide: Renew the shaft seal?'),
    before: help('Steps that come after it.', STEPS, 'before: alternator off'),
    after: help('Steps that come before it.', STEPS, 'after: alternator on'),
    while: help('Can be done while this is off.', STEPS, 'while: alternator off'),
    limit: help('What the result must keep to.', TEXT, 'limit: 20..30 mm'),
    when: help('When it is due.', TEXT, 'when: next day'),
    takes: help('How long it takes by hand.', 'a time', 'takes: 20 min'),
    note: help('Anything else.', TEXT, 'note: pan holds 3 l'),
  },
  buy: {
    what: help('What to ask for.', TEXT, 'what: HL-1142 cover gasket'),
    price: help('Price as written.', 'a figure or a text', 'price: 14.20'),
    count: help('How many.', 'a figure or a text', 'count: 2'),
    from: help('Where from.', TEXT, 'from: the dealer'),
    once: help('Never used twice.', YES, 'once: true'),
    for: help('Steps or pieces it is for.', STEPS, 'for: alternator on'),
    note: help('Anything else.', TEXT, 'note: two weeks to come'),
  },
  entry: {
    at: help('When.', 'a time with its offset', 'at: 2026-04-11T18:25:40+02:00'),
    id: help('Eight characters of its own.', 'eight characters', 'id: k3Vb9xQe'),
    piece: help('Which piece.', 'the name of a piece', 'piece: alternator'),
    hole: help('Which hole or holes.', 'a hole or a list of holes', 'hole: 9'),
    task: help('Which task.', 'the name of a task', 'task: drain'),
    buy: help('Which thing to buy.', 'a name under buy:', 'buy: gasket'),
    out: help('The row that came out; ! still in, - found empty.', 'a row', 'out: "S S M+clip !"'),
    in: help('The row that went in, by fingers.', 'a row', 'in: M+clip'),
    tight: help('The pass that was done.', 'the name of a pass', 'tight: full'),
    state: help('What is wrong with the hole, or that it is mended.', 'one word', 'state: stuck'),
    settle: help('What belongs there.', 'a kind', 'settle: M+clip'),
    removed: help('The piece came away.', 'all or aside', 'removed: all'),
    fitted: help('The piece is on its place.', 'all', 'fitted: all'),
    done: help('A task is done, or something is here.', TEXT, 'done: passed'),
    note: help('What somebody noted.', TEXT, 'note: "soaking, heat tomorrow"'),
    keep: help('Which entry is worth knowing next time.', 'the id of an entry', 'keep: bZ4yK1uW'),
    taken: help(
      'From which earlier job something of this piece was taken over.',
      'a file',
      'taken: cover-2025.yaml',
    ),
    reading: help(
      "What the machine's counter says.",
      'a figure with its unit',
      'reading: 41400 km',
    ),
    inside: help('What went into an opening.', 'how many of what', 'inside: 2 rags'),
    cleared: help('What came out of it again.', 'how many of what, or all', 'cleared: 1 rag'),
    seen: help('A moment and what was looked at.', 'a moment and a name', 'seen: sealing faces'),
    struck: help('What does not count here.', 'a moment and a name', 'struck: sealing wrench'),
    added: help('Something more to look at, in says.', 'a moment', 'added: sealing'),
    written: help('A text was put into this key, in says.', 'a key', 'written: routes'),
    corrected: help('What is printed and not so here.', 'what it is', 'corrected: torque'),
    undo: help('Takes another entry back.', 'the id of an entry', 'undo: bZ4yK1uW'),
    tray: help('Where the bolts lie.', TEXT, 'tray: cup 2'),
    set: help('What it was set to.', TEXT, 'set: 10 N·m'),
    was: help('What it was before.', TEXT, 'was: 35 mm'),
    result: help('What a test gave.', TEXT, 'result: dry'),
    limit: help('The limit that the reading was held against.', TEXT, 'limit: 0.8..1.2 ohm'),
    judged: help('How the reading keeps to it, and who said so.', TEXT, 'judged: within'),
    promised: help('When it is to come.', TEXT, 'promised: 2026-04-25'),
    says: help('What the person says.', TEXT, 'says: "heat tomorrow"'),
    because: help('Why a refusal was overruled.', TEXT, 'because: "manual says so"'),
  },
} as const satisfies Record<string, Record<string, Help>>;

export type Owner = keyof typeof HELP;

/** What a mapping is called in a message. */
export const OWNERS: Record<Owner, string> = {
  file: 'a job file',
  kind: 'a kind of bolt',
  piece: 'a piece',
  item: 'a bolt in a row',
  steps: 'a caution or tip',
  hole: 'a hole',
  pass: 'a pass',
  task: 'a task',
  buy: 'a thing to buy',
  entry: 'an entry of the diary',
};

export function helpFor(owner: Owner, key: string): Help | null {
  const keys: Record<string, Help> = HELP[owner];
  return Object.hasOwn(keys, key) ? (keys[key] ?? null) : null;
}
