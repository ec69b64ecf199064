/** What Ink writes, in fewer bytes: a slow line or tmux pays for each. */
import { keepsCells } from './loop-cells.ts';

/** A line from where it was erased on. */
const ERASED = /\x1b\[K(?:(?!\x1b\[E)[^\r\n])*/g;
/** Shorter runs of blanks cost less than the sequence that jumps over them. */
const BLANKS = / {7,}/g;
/** Inverse video: blanks are visible in it. */
const INVERSE = /\x1b\[([\d;]*;)?7(;[\d;]*)?m/;
/** The same run of colours and weights more than once, and nothing shown between. */
const AGAIN = /((?:\x1b\[[\d;]*m)+?)\1+/g;

/** Texts of one colour with nothing but blanks between them; a blank has no colour to be seen. */
const SAME = /\x1b\[(3\d)m[^\x1b]*(?:\x1b\[39m *\x1b\[\1m[^\x1b]*)+/g;
const BETWEEN = /\x1b\[39m( *)\x1b\[3\dm/g;

/** A colour that ends before blanks, behind which another begins; not where blanks are seen. */
const ENDED =
  /\x1b\[(?:\d+;)*7(?:;\d+)*m[\s\S]*?(?:\x1b\[(?:\d+;)*27(?:;\d+)*m|$)|\x1b\[39m( +)(?=\x1b\[3\dm)/g;

/** What sets looks, one or several. */
const LOOK = /\x1b\[([\d;]*)m/g;

/** A colour that is set already is left out; what sets several looks at once may set any. */
function changes(): (look: string, sets: string) => string {
  let colour: string | null = null;
  return (look, sets) => {
    if (/^3\d$/.test(sets)) {
      if (sets === colour) return '';
      colour = sets;
    } else if (!/^[1-9]$|^2[1-9]$/.test(sets)) colour = null;
    return look;
  };
}

/** Line after line of which nothing changes: down by as many at once (CNL of ECMA-48). */
const DOWN = /(?:\x1b\[E){2,}/g;
/** A colour that another follows at once. */
const UNSEEN = /(?:\x1b\[3\dm)+(\x1b\[3\dm)/g;
/** Looks set one after the other, set together. */
const LOOKS = /(?:\x1b\[\d+m){2,}/g;

/**
 * The same screen: behind an erased line blanks are there already (Ink erases before it sets a look), so they
 * are jumped over; colours that are set twice are set once, since each sets what it sets whatever was before.
 */
export function thin(text: string): string {
  return (
    text
      .replace(ERASED, (line) =>
        INVERSE.test(line) ? line : line.replace(BLANKS, (run) => `\x1b[${run.length}C`),
      )
      .replace(AGAIN, '$1')
      .replace(SAME, (run) => run.replace(BETWEEN, '$1'))
      .replace(ENDED, (all, blanks) => blanks ?? all)
      // A new line begins in its first column.
      .replace(/\r?\n\x1b\[1G/g, '\r\n')
      .replace(DOWN, (run) => `\x1b[${run.length / 3}E`)
      .replace(UNSEEN, '$1')
      .replace(LOOK, changes())
      .replace(LOOKS, (run) => `\x1b[${run.slice(2, -1).replaceAll('m\x1b[', ';')}m`)
  );
}

/** The terminal's stream with thinned output, unchanged in everything else. */
export function thinned<T extends NodeJS.WriteStream>(stdout: T): T {
  const keeps = keepsCells();
  const less = (chunk: unknown) => {
    if (typeof chunk !== 'string') return chunk;
    const [whole, changed] = [thin(chunk), thin(keeps(chunk, stdout.columns))];
    return changed.length < whole.length ? changed : whole;
  };
  const write = (chunk: unknown, ...rest: unknown[]) =>
    Reflect.apply(stdout.write, stdout, [less(chunk), ...rest]);
  return new Proxy(stdout, {
    get(target, name) {
      if (name === 'write') return write;
      const value = Reflect.get(target, name);
      return typeof value === 'function' ? value.bind(target) : value;
    },
  });
}
