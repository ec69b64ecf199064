/**
 * Of a row that changes only what changes is written. Ink writes a row anew from its first change to its end: on a wide
 * screen that is a whole line of holes for one of them.
 */

/** Looks as ECMA-48 numbers them (SGR): what sets one, by the place it has in a `Look`, and what ends it. */
const SETS: Readonly<Record<string, number>> = { 1: 0, 2: 1, 3: 2, 4: 3, 7: 4, 9: 5 };
const ENDS: Readonly<Record<string, readonly number[]>> = {
  ...{ 22: [0, 1], 23: [2], 24: [3], 27: [4], 29: [5], 39: [6] },
};
const ENDED_BY: readonly string[] = ['22', '22', '23', '24', '27', '29', '39'];
const COLOUR = 6;
const IS_COLOUR = /^(?:3[0-7]|9[0-7])$/;
/** Those that are seen on a blank: a line under it, the ground, a line through it. */
const ON_BLANKS = [3, 4, 5] as const;

/** What is set of each, as its number; empty: nothing. */
type Look = readonly string[];
const PLAIN: Look = ENDED_BY.map(() => '');

interface Cell {
  sign: string;
  look: Look;
}

/** The look after these parameters of SGR; null: one that is not known here. */
function lookAfter(look: Look, parameters: string): Look | null {
  const next = [...look];
  for (const one of parameters.split(';')) {
    const place = SETS[one];
    const ends = ENDS[one];
    if (one === '' || one === '0') next.fill('');
    else if (place !== undefined) next[place] = one;
    else if (IS_COLOUR.test(one)) next[COLOUR] = one;
    else if (ends) for (const at of ends) next[at] = '';
    else return null;
  }
  return next;
}

/** What leads from one look to another. */
function between(from: Look, to: Look): string {
  const ends = new Set(
    from.flatMap((is, at) => (is !== '' && to[at] === '' ? (ENDED_BY[at] ?? []) : [])),
  );
  // Bold and faint have one end: the other may have to be set again.
  const left = from.map((is, at) => (ends.has(ENDED_BY[at] ?? '') ? '' : is));
  const sets = to.filter((is, at) => is !== '' && is !== left[at]);
  const all = [...ends, ...sets];
  return all.length === 0 ? '' : `\x1b[${all.join(';')}m`;
}

const isOnBlank = (at: number): boolean => ON_BLANKS.some((one) => one === at);

/** Of a blank only what is seen on it counts: it is written in whatever colour there is. */
function lookFor({ sign, look }: Cell, now: Look): Look {
  return sign === ' ' ? look.map((is, at) => (isOnBlank(at) ? is : (now[at] ?? ''))) : look;
}

function isSame(a: Cell | undefined, b: Cell | undefined): boolean {
  if (!a || !b || a.sign !== b.sign) return false;
  return a.look.every((is, at) => is === b.look[at] || (a.sign === ' ' && !isOnBlank(at)));
}

const isPlain = (look: Look): boolean => look.every((is) => is === '');

const BLANK: Cell = { sign: ' ', look: PLAIN };

/** Signs of which every terminal knows that they take one column. */
const SURE = /^[\x20-\x7e\xa1-\xac\xae-\xff]*$/;
const PARTS = /\x1b\[([\d;]*)m|([^\x1b]+)/g;

/** A text as cells, null where it is not sure which column each takes; and the look behind it. Null: it has an unknown look. */
function cellsOf(text: string, from: Look): { cells: Cell[] | null; look: Look } | null {
  const cells: Cell[] = [];
  let isSure = true;
  let look = from;
  for (const [, parameters, signs = ''] of text.matchAll(PARTS)) {
    const next = parameters === undefined ? look : lookAfter(look, parameters);
    if (next === null) return null;
    look = next;
    isSure &&= SURE.test(signs);
    for (const sign of isSure ? signs : '') cells.push({ sign, look });
  }
  return { cells: isSure ? cells : null, look };
}

/** Fewer cells that stay cost less than to jump over them. */
const JUMP = 8;

/** The cells from `first` on that are not there yet, with what leads to them and to the look behind them. */
function written(
  row: readonly (Cell | undefined)[],
  cells: readonly Cell[],
  first: number,
  end: Look,
) {
  let out = '';
  let look: Look = PLAIN;
  /** The column where the terminal stands, as far as it is known. */
  let at = -1;
  for (const [i, cell] of cells.entries()) {
    const column = first + i;
    if (isSame(row[column], cell)) continue;
    const stays = column - at;
    const from = at >= 0 && stays <= JUMP ? at : column;
    if (from === column && at !== column) out += `\x1b[${column + 1}G`;
    for (let c = from; c <= column; c++) {
      const one = cells[c - first] ?? BLANK;
      const next = lookFor(one, look);
      out += between(look, next) + one.sign;
      look = next;
    }
    at = column + 1;
  }
  return out + between(look, end);
}

/** An erased row from a column on (CHA, EL), up to what leads on: where that begins a row it is in the third group. */
const ROW =
  /(?:\x1b\[(\d+)G)?\x1b\[K((?:\x1b\[[\d;]*m|[^\x1b\r\n])*)(?=(\r?\n|\x1b\[\d*E)|\x1b\[(?:\d*A|\?)|$)/y;
/** What moves, or sets a look or a mode that changes no cell. */
const MOVE = /\x1b\[(\d*)([AEG])|\r+|\n|\x1b\[([\d;]*)m|\x1b\[\?(?:25|2026)[hl]/y;

/**
 * Writes what Ink writes for a terminal of so many columns in fewer bytes: the same cells are on the screen afterwards,
 * and the cursor on the same row. All that it does not know it hands on as it is, and begins anew.
 */
export function keepsCells(): (text: string, columns: number) => string {
  /** By the row, counted from where it was begun: the cells that are known. */
  const rows = new Map<number, (Cell | undefined)[]>();
  let y = 0;
  let width = 0;
  let look: Look = PLAIN;

  /** What is to be written for a row that is erased from `first` on; null: it is not known what that makes of it. */
  function row(whole: string, first: number, body: string, mayEnd: boolean): string | null {
    const read = cellsOf(body, look);
    if (first < 0 || !isPlain(look) || !read) return null;
    look = read.look;
    const { cells } = read;
    if (cells === null || first + cells.length > width) {
      rows.delete(y);
      return whole;
    }
    const known = rows.get(y) ?? [];
    rows.set(y, known);
    let less = written(known, cells, first, look);
    const end = first + cells.length;
    const isErased = Array.from({ length: width - end }, (_, i) => known[end + i]).every((cell) =>
      isSame(cell, BLANK),
    );
    // Erased in a look, it would have that ground.
    const mayErase = isErased || isPlain(look);
    if (!isErased) less += `\x1b[${end + 1}G\x1b[K`;
    for (let i = 0; i < width - first; i++) known[first + i] = cells[i] ?? BLANK;
    return mayEnd && mayErase && less.length < whole.length ? less : whole;
  }

  function begin(): void {
    rows.clear();
    look = PLAIN;
    y = 0;
  }

  return (text, columns) => {
    if (columns !== width) begin();
    width = columns;
    let out = '';
    let isBegin = false;
    for (let at = 0; at < text.length; ) {
      ROW.lastIndex = at;
      MOVE.lastIndex = at;
      const part = ROW.exec(text);
      const move = part ? null : MOVE.exec(text);
      const [whole = '', column, body = '', leads] = part ?? move ?? [];
      let less: string | null = whole === '' ? null : whole;
      if (part) {
        const first = column === undefined ? (isBegin ? 0 : -1) : Number(column) - 1;
        // Where nothing begins a row behind it, somebody may go on from the column in which it ends.
        less = row(whole, first, body, leads !== undefined);
        isBegin = false;
      } else if (move?.[3] !== undefined) {
        const next = lookAfter(look, move[3]);
        if (next === null) less = null;
        else look = next;
      } else {
        const by = Number(move?.[1] || 1);
        if (body === 'A') y -= by;
        if (body === 'E') y += by;
        if (whole === '\n') y += 1;
        if (body === 'G') isBegin = by === 1;
        if (body === 'E' || whole.startsWith('\r')) isBegin = true;
      }
      if (less === null) {
        begin();
        return out + text.slice(at);
      }
      out += less;
      at += whole.length;
    }
    return out;
  };
}
