/**
 * The first frame, painted before what draws the later ones is loaded, which takes longer than all before it. Keys that
 * are pressed meanwhile wait in the terminal.
 */

/** Rows as a terminal takes them, none wider than it, and where its cursor stands; null: it is hidden. */
export interface Frame {
  rows: readonly string[];
  cursor: { x: number; y: number } | null;
}

/** Synchronized output, private mode 2026: shown when all of it has come. */
const AT_ONCE = { from: '\x1b[?2026h', to: '\x1b[?2026l' };
const ENTER = '\x1b[?1049h';
/** The cursor shown, the alternate screen left. */
const LEAVE = '\x1b[?25h\x1b[?1049l';
/** What ends a program that listens for none of them. */
const SIGNALS = ['SIGINT', 'SIGTERM', 'SIGHUP'] as const;

/** Enters the alternate screen and paints. */
function frameText({ rows, cursor }: Frame): string {
  const at = cursor === null ? '' : `\x1b[${cursor.y + 1};${cursor.x + 1}H\x1b[?25h`;
  const whole = `\x1b[?25l\x1b[H\x1b[J${rows.join('\r\n')}${at}`;
  return `${ENTER}${AT_ONCE.from}${whole}${AT_ONCE.to}`;
}

export interface Painted {
  /** The stream for what draws from now on: it enters the alternate screen no second time. */
  handOn<T extends NodeJS.WriteStream>(stdout: T): T;
  /** From now on somebody else restores the terminal. */
  done(): void;
  /** The terminal as it was, where nobody else came to restore it. */
  undo(): void;
}

/** Until `done` a signal, or the end of the process, leaves the terminal as it was found. */
export function paintFirst(
  frame: Frame,
  { stdin, stdout }: { stdin: NodeJS.ReadStream; stdout: NodeJS.WriteStream },
): Painted {
  const done = () => {
    for (const signal of SIGNALS) process.off(signal, stopped);
    process.off('exit', undo);
  };
  const undo = () => {
    done();
    stdout.write(LEAVE);
    stdin.setRawMode(false);
  };
  const stopped = (signal: NodeJS.Signals) => {
    undo();
    process.kill(process.pid, signal);
  };
  for (const signal of SIGNALS) process.on(signal, stopped);
  process.on('exit', undo);
  stdout.write(frameText(frame));
  return {
    done,
    undo,
    handOn(stream) {
      let entered = false;
      const write = (chunk: unknown, ...rest: unknown[]) => {
        const again = !entered && chunk === ENTER;
        entered ||= again;
        return Reflect.apply(stream.write, stream, [again ? '' : chunk, ...rest]);
      };
      return new Proxy(stream, {
        get(target, name) {
          if (name === 'write') return write;
          const value = Reflect.get(target, name);
          return typeof value === 'function' ? value.bind(target) : value;
        },
      });
    },
  };
}
