/**
 * Everything that can be wrong with a job file: one closed table. A code has a severity, what is wrong in the
 * trade's words, and the way out; `{words}` in braces are filled in where the fault was found.
 *
 * An error means that something in the file is not taken as it stands; a warning, that it is taken but may not
 * be what was meant. What is merely missing is no fault.
 */
import { error, type FaultText, warning } from './fault-text.ts';

export const FAULTS = {
  // ------------------------------------------------------------ the file cannot be read
  'not-text': error(
    'this is no text: there is a NUL character in it',
    'Job files are plain text. If this one was, take its last good version from git.',
  ),
  'too-big': error(
    'the file has {count} characters; at most {most} are read, or {whole} where each line of the diary is as putback wrote it',
    'A line of the diary that was changed is written as the others are; else start a second file for what comes next.',
  ),
  'too-deep': error(
    'lists or mappings stand inside each other too deeply here, or one is too long',
    'A job file needs seven levels. Take out the brackets or the indentation that is too much.',
  ),
  conflict: error(
    'git left two versions here: one below this line, the other between lines {theirs} and {end}',
    'Keep what is true of both, then delete the marker lines.',
  ),
  tab: error(
    'a tab indents this line, and YAML counts blanks only',
    'Put two blanks for each tab at the start of the line.',
  ),
  colon: error(
    'a second colon in this line makes a key of the text before it',
    'Put the text in quotes: {like}',
  ),
  'not-yaml': error('this is not YAML: {what}', '{way}'),
  'two-files': error(
    'a second document starts here; putback reads the first one only',
    'Move what is below this line into a file of its own, or delete the line.',
  ),
  more: warning('and {count} more faults', 'Mend the ones above first.'),

  // ------------------------------------------------------------ silent losses
  'not-utf8': warning(
    'a character here was not UTF-8 and is lost',
    'Save the file as UTF-8 in your editor and write the character again.',
  ),
  'cut-text': warning(
    'the text ends before {rest}: a blank and # start a comment',
    'If it belongs to the text, put all of it in quotes. If it is a comment, write "# " with a blank behind it.',
  ),
  'split-text': error(
    'a comma cut the text, and {rest} stands alone',
    'Put the whole text in quotes: {like}',
  ),
  tilde: error(
    '{value} without quotes says nothing to one reader and is a text to another',
    'Leave the place empty, or put it in quotes if it is a text.',
  ),
  tag: error(
    'a word that starts with ! is a tag and vanishes',
    'Put the text in quotes: "{value}"',
  ),
  anchor: error(
    '{value} is a YAML anchor or alias, which job files do not use',
    'Write the text out; if it starts with & or *, put it in quotes.',
  ),
  'folded-map': error(
    'the lines of this picture run together into one',
    'Start it with a bar, the lines below it: map: |',
  ),
  'bare-switch': warning(
    '{value} without quotes is a yes-or-no to older readers of YAML',
    'Put it in quotes: "{value}". Where yes or no is meant, write true or false.',
  ),
  twice: error(
    '{key} stands here a second time, the first is in line {line}; only the first counts',
    'Make one of the two.',
  ),

  // ------------------------------------------------------------ the form
  'not-a-job': error(
    'a job file has keys such as job: and pieces:, and here is {what}',
    'Start with two lines: putback: 1, then job: and what is wrong.',
  ),
  'odd-key': error(
    'a key is one word or name, and here is {what}',
    'Put the key in quotes, or give it a name.',
  ),
  'no-version': error('the version of the form is missing', 'Write as the first line: putback: 1'),
  'bad-version': error('{value} is no version of the form', 'Write: putback: 1'),
  'late-version': warning('putback: is not the first key', 'Move this line to the top.'),
  'newer-version': error(
    'this file has form {value}, and this putback knows form 1: it reads the file and writes nothing into it',
    'Get a newer putback to go on with this job.',
  ),
  missing: error('{key}: is missing', 'Write, for example: {like}'),
  lacks: error('{key}: is missing, so this is not read', 'Write, for example: {like}'),
  'unknown-key': error('{key} is no key of {owner}', '{near}{known}'),
  'wrong-type': error('{key} takes {takes}, and here is {what}', 'For example: {like}'),
  'not-settings': error(
    '{owner} are keys with values, and here is {what}',
    'Write one setting a line, such as {like}.',
  ),
  'bad-setting': error('{value} cannot be read as {key}', 'For example: {like}'),
  'unknown-key-name': error(
    'no key of the screens is called {value}',
    '{near}putback keys lists them.',
  ),
  'bad-press': error(
    '{value} is no press',
    '{near}Write one letter or sign, or its name: space, enter, pagedown, ctrl-n, f13.',
  ),
  'fixed-press': error('{key} is {is}, and can be nothing else', 'Take this line away.'),
  'press-clash': error(
    'one screen needs {value} for {key} and for {other}',
    'Give one of the two another press.',
  ),
  'bad-choice': error('{value} is no word for {key}', '{near}One of: {known}.'),
  'bad-name': error(
    '{value} is no name for {owner}',
    'Names are small letters, digits and hyphens: {like}. What people call it goes into {shown}:.',
  ),
  'bad-kind': error(
    '{value} is no letter for a kind of bolt',
    'A kind is a letter, or a letter and more letters or digits: S, M, L, S2.',
  ),
  'bad-hole': error(
    '{value} is no name for a hole',
    'Holes are 1 to 999, with a small letter behind if need be: 4, 4a.',
  ),
  'task-verb': error(
    'a task says one of do, wait, adjust, test, decide, and here is {what}',
    'Write the work behind one of them, for example: {like}',
  ),
  'diary-not-last': warning(
    'keys stand below the diary, where marks are added',
    'Move diary: and its lines to the end of the file.',
  ),

  // ------------------------------------------------------------ bolts, holes, figures
  'bad-row': error(
    '{value} is no bolt in a row',
    'A row is kinds with blanks between, what lies under the head behind a plus: S S M+clip S.',
  ),
  'bad-length': error(
    '{value} is no length',
    'Write mm, or a unit behind the figure: 25, 2.5 cm, 1-1/2 in.',
  ),
  'bad-depth': error(
    '{value} is no depth of thread',
    'Write where the thread starts and ends below the joint face, in mm: 3..19.',
  ),
  'bad-turns': error(
    '{value} is no number of turns',
    'Write turns from first bite to head: 15, or 7.5.',
  ),
  'bad-place': error(
    '{value} is no place in mm',
    'Write how far to the right, and how far down: [84, 31].',
  ),
  'bad-pitch': error(
    '{value} is no distance of the cells',
    'Write mm, one figure or one across and one down: 20, or [20, 25].',
  ),
  'bad-pass': error(
    '{value} is no pass',
    'Write its name, then the torque, the angle or when: snug, part 5 N·m, full, angle 90°.',
  ),
  'final-after-angle': error(
    'a final round at full torque behind an angle is none: {value}',
    'Leave it out: a bolt that was turned by an angle is never clicked again.',
  ),
  'map-cell': error(
    'in the map, {value} is neither a hole nor a dot',
    'Write 1, 2, 4a for holes and . for nothing.',
  ),
  'map-twice': error(
    'hole {value} is drawn twice in the map',
    'Give one of the two its own number.',
  ),
  'map-ragged': error(
    'this line of the map has {count} cells, the first has {first}',
    'Fill it up with dots.',
  ),
  'map-empty': error(
    'the map has no hole in it',
    'Draw the holes by their numbers, or leave the map out.',
  ),
  'unread-length': warning(
    'the length of {letter} was not read from “{value}”, so it counts as unknown',
    'Write thread x length: M6x25, M8x1x20, 1/4-20 x 1-1/2; the hexagon stands behind a comma: M6x25, 8 mm.',
  ),
  'unread-torque': warning(
    '“{rest}” of this torque was not read, so it is done as it is printed, without a figure to set',
    'Write stages as {like}, or say them one by one in passes:; what is no figure goes into note:.',
  ),
  'units-differ': warning(
    '{text} is not the same as {first}: one of the two is wrong',
    'Look at the manual again, and write what it says.',
  ),
  'unread-limit': warning(
    'this limit was not read whole, so no reading is held against it',
    'Write it as {like}; what is no figure goes into note:.',
  ),
  'bad-likely': error(
    '{value} does not say how often it is this one',
    'Write often, now and then or rarely, or a weight above zero: 4.',
  ),
  'unread-cure': warning(
    'how long it cures was not read: {value}',
    'Say what each time is for: open 10 min, cures 24 h.',
  ),
  'unread-takes': warning(
    '{value} is no time, so it counts as unknown',
    'Write minutes or hours: {like}.',
  ),
  'odd-when': warning(
    'no calendar and no counter has {value}, so it counts as due now',
    'Write when it is due as {like}.',
  ),
  'unread-price': warning(
    '{value} is no figure, so the price counts as unknown',
    'Write the figure alone: 12.50; what is no figure goes into note:.',
  ),
  'unread-chance': warning(
    '{value} was not read as a chance, so nothing is weighed by it',
    'Write 1 in 6, or often, now and then, rarely.',
  ),
  'guessed-care': warning(
    '{name} is taken as care: {what}, by its name alone',
    'Say it for sure: {like}, or {without} if it is not; then nothing is guessed.',
  ),
  'no-torque': warning(
    "torque not known: the manual's figure for {name}, which is taken as care: {what}",
    'Look it up, and write it as torque: of the piece or of the hole.',
  ),
  'never-out': warning(
    '{name} was off, and nobody noted that its bolt in {hole} came out',
    'If this hole was added since, mark its bolt: putback out, then in, then tight. If it is not there, take it out of the row.',
  ),
  'odd-torque': warning('{say}', 'Look at the manual again: figure, point and unit.'),
  'row-length': error(
    'the row has {bolts}, and {other} {holes}',
    'Count them on the piece, and correct the one that is wrong.',
  ),
  'unknown-hole': error('{piece} has no hole {value}', '{near}Its holes: {known}.'),
  'sequence-twice': error(
    'hole {value} comes twice in this sequence',
    'Look at the manual again: each hole comes once.',
  ),
  'sequence-missing': error(
    'this sequence leaves out {value}',
    'Add what is missing, as the manual prints it.',
  ),

  // ------------------------------------------------------------ one part of the file and another
  'unknown-kind': warning(
    'no kind {value} is listed under bolts:',
    '{near}If it is a kind of its own, add it there: {like}',
  ),
  'unknown-piece': error('no piece is called {value}', '{near}Pieces: {known}.'),
  'unknown-step': error(
    '{value} is no step of this job',
    '{near}A step is a piece with off or on (alternator off), or the name of a task.',
  ),
  'unknown-suspect': error('no suspect is called {value}', '{near}Suspects: {known}.'),
  'unknown-check': error('no check is called {value}', '{near}Checks: {known}.'),
  'shows-nothing': warning(
    '{name} could show none of the suspects, whatever it says',
    'Write which suspects make it come out bad: bad: [{like}].',
  ),
  'circle-along': error(
    'the way to these checks leads round in a circle: {value}',
    'One of them comes first: take the other one out of its along:.',
  ),
  'too-many-traced': warning(
    'more than {most} are listed, and from here on they are not read',
    'Take out what was cleared long ago.',
  ),
  circle: error(
    'these pieces lie under each other in a circle: {value}',
    'One of them comes off first: take it out of the other one’s under:.',
  ),
  'circle-steps': error(
    'these steps wait for each other in a circle: {value}',
    'One of them can be done first: take what it waits for out of its before:, after: or while:.',
  ),

  // ------------------------------------------------------------ the diary
  'bad-entry': error('this is no entry of the diary: {what}', 'An entry is one mapping: {like}'),
  'entry-verb': error(
    'an entry says one thing that happened, and here is {what}',
    '{near}One of: {known}.',
  ),
  'entry-place': error(
    'this entry names {what}, and {verb} is about {places}',
    'For example: {like}',
  ),
  'bad-time': error(
    '{value} is no time',
    'Write date, time and offset: 2026-04-11T18:25:40+02:00.',
  ),
  'bad-id': error('{value} is no id', 'An id is eight letters, digits, - or _: k3Vb9xQe.'),
  'entry-row': error(
    '{value} is no bolt in a row',
    'Write kinds with blanks between, ! for still in, - for found empty: S S M+clip ! -.',
  ),
  'entry-truth': warning(
    '{value} cannot be read, so what is printed counts',
    'Write what is true of {what} as the file would: 25, 3..19, part 5 N·m, 1 4 2 3.',
  ),
  'entry-piece': warning(
    'the diary speaks of a piece {value}, which this job has not',
    '{near}Pieces: {known}.',
  ),
  'entry-hole': warning(
    'the diary speaks of hole {value}, which {piece} has not',
    'Its holes: {known}.',
  ),
  'entry-task': warning(
    'the diary speaks of a task {value}, which this job has not',
    '{near}Tasks: {known}.',
  ),
  'entry-buy': warning(
    'the diary speaks of {value} to buy, which this job has not',
    '{near}To buy: {known}.',
  ),
  'entry-check': warning(
    'the diary speaks of a check {value}, which this job has not',
    '{near}Checks: {known}.',
  ),
  'entry-suspect': warning(
    'the diary speaks of a suspect {value}, which this job has not',
    '{near}Suspects: {known}.',
  ),
  'two-truths': error(
    '{name}, hole {hole}: {say}',
    'Look which bolt is in it, then say so: putback settle FILE {piece} {hole} KIND.',
  ),
  'two-corrections': error(
    '{what}: instead of {printed} another entry says {says}, and that counts; this one says {value}',
    'Find out which is true, and take the other one back.',
  ),
  'lost-truth': warning(
    '{what}: {says} was said to be true of “{was}”, and the file says that no more: it does not count',
    'Say it again of what is printed now (putback correct), or take it back: putback undo FILE {id}.',
  ),
  'same-id': warning(
    'another entry has the id {value}, in line {line}',
    'If it is the same entry, delete one of the two lines; if not, change one letter of this id.',
  ),
  'undo-unknown': warning(
    'no entry has the id {value} that is to be undone',
    '{near}Delete this line if it undoes nothing.',
  ),
} as const satisfies Record<string, FaultText>;
