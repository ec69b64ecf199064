/** What a command is, what it is called with, and what it answers. */
import type { Fault, Job, Refusal } from '../../model/types.ts';
import type { World } from '../../world.ts';

/** Options of a command: whether each takes a value, its line of help, and its one letter where it has one. */
export type Options = Record<string, { value: string | null; say: string; letter?: string }>;

export interface Command {
  /** Several names where they differ in one word only: `off`, `on`, `aside`. */
  names: readonly string[];
  /** What stands behind the name: `FILE PIECE [HOLE…]`. */
  usage: string;
  say: string;
  /** More lines for its own help. */
  more?: readonly string[];
  /** Whole command lines, without the program's name. */
  examples: readonly string[];
  options: Options;
  /** How many plain words it takes. */
  words: { least: number; most: number };
  load: () => Promise<{ run: RunCommand }>;
}

export interface Call {
  /** Which of the command's names was used. */
  name: string;
  words: string[];
  options: Record<string, string | true>;
  /** All commands there are. */
  commands: readonly Command[];
  world: World;
}

export type RunCommand = (call: Call) => Promise<Answer> | Answer;

/** 0 answered, done, already so; 1 the answer is no; 2 wrong use, no such file, piece, hole; 3 not saved. */
export type Exit = 0 | 1 | 2 | 3;

export interface Answer {
  exit: Exit;
  /** What `--json` prints. */
  json: Record<string, unknown>;
  /** For stdout otherwise, without a last newline; empty: nothing. */
  text: string;
  /** Printed instead of the text, byte for byte: a file of a form of its own. */
  exact?: string;
  /** For stderr otherwise, without a last newline. */
  error?: string;
  /** A folder whose screens open once the answer is printed. */
  open?: string;
}

export function answer(json: Record<string, unknown>, text: string): Answer {
  return { exit: 0, json: { ok: true, ...json }, text };
}

export function refused(refusal: Refusal, hint = ''): Answer {
  const { code, say, data, overrulable } = refusal;
  const error = overrulable && hint ? `${say}\n${hint}` : say;
  return {
    exit: overrulable ? 1 : 2,
    json: { ok: false, refused: { code, say, ...data } },
    text: '',
    error,
  };
}

/** Wrong use. */
export function misuse(code: string, say: string, data: Record<string, unknown> = {}): Answer {
  return refused({ code, say, data, overrulable: false });
}

/** Not saved: what was in the way, and the way out. */
export function unsaved(why: { code: string; say: string; fix?: string }): Answer {
  const error = `Not saved. ${[why.say, why.fix].filter((s) => s).join(' ')}`;
  const { code, say, fix } = why;
  const refused = { code, say, ...(fix === undefined ? {} : { fix }) };
  return { exit: 3, json: { ok: false, refused }, text: '', error };
}

/** What is wrong with a figure that nobody can mean; null where it lies within what is taken, both ends with it. */
export function outOf(value: number, from: number, to: number, unit: string): string | null {
  return value >= from && value <= to ? null : `${from} to ${to} ${unit} are taken`;
}

/** The faults as `--json` prints them. */
export function faultsJson(faults: readonly Fault[]): Record<string, unknown>[] {
  return faults.map(({ code, severity, file, line, column, say, fix }) => ({
    code,
    severity,
    file,
    line,
    column,
    say,
    fix,
  }));
}

export function optionText(call: Call, option: string): string | undefined {
  const value = call.options[option];
  return typeof value === 'string' ? value : undefined;
}

/** A job that could be opened, or the answer that says why not. `none`: nothing in the file is of a job. */
export type Opened =
  | { job: Job; file: string; faults: Fault[] }
  | { answer: Answer; none?: boolean };
