/**
 * What the screens know, what happens to them, and what they want done: types only.
 * `update` (show/update.ts) goes from one to the next, `picture` (show/picture.ts) draws it.
 */

import type { Wrench } from '../../bolt/torque/wrench.ts';
import type { Held } from '../../find/question.ts';
import type { Due } from '../../memory/due.ts';
import type { Before } from '../../memory/last.ts';
import type { Hours } from '../../model/hours.ts';
import type { Fault, Half, Job, Moment, Recorded, Refusal, Wish } from '../../model/types.ts';
import type { PaperName } from '../../paper/ask.ts';
import type { Drawing } from '../../piece/drawing.ts';
import type { Of } from '../../plan/known/rows.ts';
import type { Milestone } from '../../plan/next/milestone.ts';
import type { AnswerKind } from '../../plan/piece/answers.ts';
import type { Start } from '../../plan/trace/starts.ts';
import type { TextField } from '../kit/field.ts';
import type { Palette } from '../kit/palettes.ts';
import type { OwnPresses, Press } from '../kit/press.ts';
import type { AddTo, Asks } from './asks.ts';

// ---------------------------------------------------------------- what comes in

/** What reading a job file gave. `faults` beside a job are warnings; without one nothing could be folded. */
export type FileState =
  | { ok: true; job: Job; faults: Fault[] }
  | { ok: false; faults: Fault[] }
  | { ok: false; unread: { code: string; say: string; fix: string } };

/** A job as the bench shows it; `benchRow` (bench-row.ts) makes it from a file. */
export interface BenchRow {
  /** What the loop opens it by. */
  file: string;
  job: string;
  machine: string;
  /** Where it stands: `open 21 days`, `tight`, `cannot be read`. */
  stands: string;
  /** What may not be forgotten: `2 bolts only by fingers`, `1 rag inside`; mostly empty. */
  loud: string;
  /** What is next, or what is in the way. */
  next: string;
  /** Done, and nothing has happened to it for a year. */
  old?: true;
}

export type Happening =
  /**
   * `soon`: closer behind the press before it than a page is read. `held`: and the same press: the key was not let go.
   * `repeats`: the keyboard sends it by itself.
   */
  | { on: 'press'; press: Press; held?: boolean; soon?: boolean; repeats?: boolean }
  | { on: 'paste'; text: string }
  | { on: 'recorded'; result: Recorded; wish: Wish; file: string }
  /** `wrenches`: those of the bench that the file lies on, where they were read with it. `say`: what had to be done for it. */
  | {
      on: 'file';
      file: string;
      read: FileState;
      wrenches?: readonly Wrench[];
      hour?: number | null;
      hours?: Hours;
      starts?: readonly Start[];
      say?: string;
      /** It was to be started, and could not be made. */
      unmade?: true;
      /** What an earlier sitting left half done, where the person opens the file. */
      half?: Half;
    }
  /** `more`: so many files are yet to be read. */
  | { on: 'bench'; jobs: readonly BenchRow[]; more?: number }
  /** What earlier jobs on the machine of this job know. */
  | { on: 'earlier'; file: string; before: readonly Before[]; older: number }
  /** Lines that answer; `reading`: how many files are read of how many, before all of them can. */
  | { on: 'found'; text: string; found: readonly Held[]; unread: readonly string[] }
  | { on: 'finding'; text: string; done: number; of: number }
  /** What follows from the jobs of the bench. */
  | { on: 'due'; due: readonly Due[]; unread?: readonly string[] }
  | { on: 'size'; columns: number; rows: number }
  /** RFC 3339 with offset; said now and then, never more than once a minute. */
  | { on: 'time'; now: string }
  /** Time to try again what could not be saved. */
  | { on: 'again' }
  /** A quiet line: why git did not commit, that a paste was too long. */
  | { on: 'quiet'; say: string };

// ---------------------------------------------------------------- what goes out

/** What the loop carries out, in order. Each `record`, `open` and `list` is answered by exactly one happening. */
export type Effect =
  /** Judge, write, and answer `recorded`. */
  | { do: 'record'; file: string; wish: Wish }
  /** Read the file and answer `file`. */
  | { do: 'open'; file: string }
  /** Write a new job, open it, and answer `file`. */
  | { do: 'start'; file: string; job: string; machine: string | null }
  /** Read the jobs of the folder and answer `bench`. */
  | { do: 'list'; folder: string }
  /** Make this page beside the job, hand it to the desktop where `open`, and say where it lies. */
  | { do: 'print'; file: string; paper: PaperName; piece: string | null; open: boolean }
  /** Hand this photograph to the desktop. */
  | { do: 'show'; file: string; picture: string }
  /** Look for earlier jobs on the machine of this job, and answer `earlier`. */
  | { do: 'earlier'; file: string }
  /** Find these words in all jobs, and answer `found`. */
  | { do: 'find'; text: string }
  /** Read all jobs, and answer `due`. */
  | { do: 'due' }
  | { do: 'ring' }
  /** The piece has come to the end of this place, and that is on disk. */
  | { do: 'milestone'; file: string; piece: string; place: Milestone }
  | { do: 'quit' };

export interface Updated {
  state: State;
  effects: Effect[];
}

// ---------------------------------------------------------------- what is shown

export interface State {
  columns: number;
  rows: number;
  /** False: no escape sequences for colour or weight at all. */
  colour: boolean;
  /** True: 7-bit characters only. */
  ascii: boolean;
  palette: Palette;
  /** Places of which the practice has said what to try there; null: it says nothing. */
  guide: readonly string[] | null;
  /** Presses that the user has given to keys. */
  presses: OwnPresses;
  /** RFC 3339 with offset. */
  now: string;
  /** The folder the program was opened on, and its jobs once they are read; null when it was opened on one file. */
  bench: {
    folder: string;
    jobs: readonly BenchRow[] | null;
    more?: number;
    /** What was typed of a job that is not started yet. */
    begun?: string;
  } | null;
  /** The job that is open. */
  open: { file: string; job: Job } | null;
  /** What earlier jobs on its machine know; null: not looked for yet, or nothing. */
  earlier: { file: string; before: readonly Before[]; older: number } | null;
  /** Torque wrenches of the bench. */
  wrenches: readonly Wrench[];
  /** What an hour is worth on this bench; null where nobody says so. */
  hour: number | null;
  /** In which somebody works on this bench; null: nobody says. */
  hours: Hours;
  /** Lists to start tracing from. */
  starts: readonly Start[];
  view: View;
  /** What the loop has not answered yet; until then presses wait in `ahead`. */
  waiting: Waiting | null;
  /** Pressed and pasted while waiting, in order. */
  ahead: readonly Input[];
  /** Said quietly until the next press. */
  quiet: string | null;
  /** What was pressed last is no key here: what comes right behind it was typed blind, and does nothing. */
  blind: boolean;
  /** The last press came closer behind the one before it than anybody reads. */
  soon: boolean;
  /** The last press. */
  last: Press | null;
  /** Large, to be read from two metres, instead of the map. */
  far: boolean;
  /** Ids of the entries made in this sitting. */
  mine: readonly string[];
  /** What one key took back of a hole: its entries, in order, while nothing was marked since. */
  unmarked: { hole: string; piece: string; ids: readonly string[] } | null;
  /** Texts that were left half written, by what they were for. */
  drafts: Readonly<Record<string, string>>;
  /** Cautions read in this sitting, by piece, round and way. */
  read: readonly string[];
}

/** Marks that belong together, one after the other. */
export interface Run {
  /** Still to be recorded. */
  rest: readonly Wish[];
  /** So many entries were made in this sitting before it. */
  from: number;
  /** It takes marks back, and one key gives them back. */
  takes: boolean;
  /** Said when the last one is recorded. */
  says: string;
}

export type Input = Extract<Happening, { on: 'press' | 'paste' }>;
export type Waiting =
  /** `again`: tried once more by itself, while the screen says that it is not saved. */
  | { for: 'recorded'; wish: Wish; again?: true }
  /** `starts`: it is a new job, and what was typed of it is kept until it is there. */
  | { for: 'file'; file: string; piece?: string | null; starts?: true }
  | { for: 'bench' };

/**
 * Which screen is open. Those over another one hold it as `under`. `top`: by how many lines it is moved, where not all
 * of it fits.
 */
export type View = Screens & {
  top?: number;
  /** Of a list: its rows as they stood when it was come to. While one is in it they keep their places. */
  order?: readonly string[];
};

type Screens =
  /** Before the first answer. */
  | { screen: 'wait' }
  /** `older`: jobs that are done for a year are shown too. */
  | { screen: 'bench'; here: string | null; older?: true }
  /** Words looked for in all jobs of the bench; `found` belongs to the text `of`. */
  | {
      screen: 'find';
      field: TextField;
      of: string;
      found: readonly Held[] | null;
      unread: readonly string[];
      /** While files are read: how many, of how many. */
      reading: { done: number; of: number } | null;
      here: string | null;
      under: View;
    }
  /** What follows from the jobs of the bench; null: not worked out yet. */
  | {
      screen: 'due';
      due: readonly Due[] | null;
      unread?: readonly string[];
      here: string | null;
      under: View;
    }
  /** What earlier jobs on this machine know, of a piece or of all. */
  | { screen: 'last'; piece: string | null; here: string | null; under: View }
  /** A file that cannot be opened as a job. */
  | { screen: 'faults'; file: string; read: Extract<FileState, { ok: false }> }
  /**
   * A mark that could not be saved: said until it is saved or given up. `leaving`: it was asked whether to leave without
   * it.
   */
  | { screen: 'unsaved'; wish: Wish; why: Unsaved; leaving?: true; under: View }
  /** Where the job stands, in words. */
  | { screen: 'note' }
  | { screen: 'job'; here: string | null }
  /** `room`: what was known to belong in each hole when the piece was come to: by this the holes are placed meanwhile. */
  | { screen: 'piece'; piece: string; step: PieceStep; room?: HoleRoom }
  /** What is to be seen before a step; `goes` on with the piece, or back. `ticked`: all was seen that only eyes can see. */
  | {
      screen: 'gate';
      moment: Moment;
      piece: string | null;
      here: string | null;
      ticked: boolean;
      /** On with the piece that goes on, back to where it was opened, or on with the one that comes off. */
      goes: 'on' | 'back' | { off: PieceStep };
      under: View;
    }
  /** What must be had. */
  | { screen: 'parts'; here: string | null; under: View }
  /** One task or test. */
  | { screen: 'task'; task: string; under: View }
  /** What is to be tested. */
  | { screen: 'tests'; here: string | null; under: View }
  /** A test failed: the next round. */
  | { screen: 'round'; test: string; under: View }
  /** What can be done in so many minutes. */
  | { screen: 'within'; minutes: number; under: View }
  /** Which page is to be made; `piece`: the one that was marked. */
  | { screen: 'paper'; piece: string | null; here: string | null; under: View }
  /** Photographs of a piece: as it was. `here`: the id of the marked one. */
  | { screen: 'photos'; piece: string; here: string | null; under: View }
  /** Where the holes lie, being drawn. */
  | { screen: 'draw'; piece: string; drawing: Drawing; under: View }
  /** All that is known of a piece or a task. `first`: rows that were asked about from another screen; empty: all of them alike. */
  | { screen: 'known'; of: Of; here: string | null; first: readonly string[]; under: View }
  /** A line that was typed, and what it is to become. */
  | ({ screen: 'add'; text: string; under: View } & AddTo)
  /** What the fault may be, and what to look at next. */
  | { screen: 'trace'; here: string | null; under: View }
  /** What is within reach while this piece is off. */
  | { screen: 'within-reach'; piece: string; here: string | null; under: View }
  /** A question to decide: renew it now, or leave it. */
  | { screen: 'weigh'; task: string; under: View }
  /** Lists of suspects and looks to start from. */
  | { screen: 'starts'; here: string | null; under: View }
  | { screen: 'field'; asks: Asks; field: TextField; under: View }
  | { screen: 'keys'; under: View };

/** Of each hole what is said beside it, as long and as short. */
export type HoleRoom = Readonly<Record<string, readonly [label: string, short: string]>>;

export interface Unsaved {
  code: string;
  say: string;
  fix: string;
}

export type PieceView = Extract<View, { screen: 'piece' }>;

/** Where in a piece: one of these at a time. `here` is the hole that is lit, `typed` the digits of a hole typed so far. */
export type PieceStep =
  /** The piece as it stands. */
  | { step: 'look'; here: string | null; typed: string }
  /** What is to be read once before it comes off or goes on. */
  | { step: 'read'; way: 'removal' | 'fitting'; then: PieceStep }
  /** `hand` is what the person says it is, as typed: `m`, `m+clip`, `.35`. */
  | { step: 'off'; here: string | null; typed: string; hand: string }
  /** The row as it came out; `say` is what is wrong with it; `again`: it was told that words are missing or too many; `none`: that it has no bolts, once more. */
  | { step: 'off-row'; field: TextField; say: string | null; again?: true; none?: true }
  /** All that can come out is out: counted, before anybody pries. */
  | { step: 'off-count' }
  | { step: 'settle'; here: string }
  /** `fresh`: the hand was filled after the last mark, so it is what is taken back first. */
  | { step: 'on'; here: string | null; typed: string; hand: string; fresh: boolean }
  | { step: 'tight'; here: string | null; typed: string }
  /** What is wrong with this hole: a choice. */
  | { step: 'trouble'; hole: string; choice: number; back: PieceStep }
  /** A hole that was marked wrongly: which of its marks goes, or how that is taken back in turn. */
  | { step: 'unmark'; hole: string; mark: string; run: Run | null; back: PieceStep }
  /** A trouble that was just noted, and what to do now. */
  | { step: 'advice'; hole: string; back: PieceStep }
  /** Refused, and why; `back` is where the person was. */
  | { step: 'stop'; wish: Wish; refused: Refusal; back: PieceStep }
  /** What was typed of the tray, or of the heights of the heads, and what it says of the holes. */
  | { step: 'answer'; about: AnswerKind; text: string; back: PieceStep }
  /** A mark of an earlier sitting is about to be taken back. */
  | { step: 'sure'; id: string; back: PieceStep };
