import type { Options } from './command.ts';

/** Options that every command has. */
export const COMMON: Options = {
  json: { value: null, say: 'answer as one JSON value' },
  at: { value: 'TIME', say: 'the time to note, RFC 3339 with its offset' },
  id: { value: 'ID', say: 'the id of the next entry, 8 characters' },
  help: { value: null, say: 'what this command takes', letter: 'h' },
};

/** Options of the commands that mark. */
export const SAYS: Options = { says: { value: 'TEXT', say: 'a word beside the mark' } };
export const BECAUSE: Options = {
  because: { value: 'TEXT', say: 'overrule a refusal; the reason goes into the diary' },
};
/** Of the commands that may bring a piece into the file. */
export const NEW: Options = {
  new: { value: null, say: 'a piece not in the file yet, though one has a name like it' },
};

/** How the screens are to look, where they are opened. */
export const SCREEN_LOOKS = {
  lines: { value: null, say: 'read out as lines; keys from a pipe too' },
  ascii: { value: null, say: 'in 7-bit characters' },
} as const satisfies Options;
