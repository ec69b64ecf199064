/** Suspects and checks as the fields of a file, there and back. */
import type { CheckSpec, Fields, Named, SuspectSpec } from '../../model/types.ts';
import { readLikely } from './read-trace.ts';

/** Only the fields that say something. */
export function filled(
  fields: Readonly<Record<string, string | readonly string[] | null | undefined>>,
): Fields {
  const said = Object.entries(fields).filter(
    (pair): pair is [string, string | string[]] => pair[1] != null && pair[1].length > 0,
  );
  return Object.fromEntries(said);
}

export function suspectFields({ key, likely, ...rest }: SuspectSpec): Named {
  const { what, piece, part, takes, note } = rest;
  const often = likely === null ? null : `${likely}`;
  return { key, fields: filled({ what, likely: often, piece, part, takes, note }) };
}

export function checkFields({ key, ...rest }: CheckSpec): Named {
  const { check, limit, bad, along, takes, under, needs, caution, note } = rest;
  const fields = { check, limit, bad, along, takes, under, needs, caution, note };
  return { key, fields: filled(fields) };
}

/** The fields as the reader will find them. */
export function asSuspect({ key, fields }: Named): SuspectSpec {
  const text = (name: string) => texts(fields[name])[0] ?? null;
  const likely = readLikely(text('likely') ?? '');
  const [what, piece, part] = [text('what') ?? '', text('piece'), text('part')];
  return { key, what, likely, piece, part, takes: text('takes'), note: text('note') };
}

export function asCheck({ key, fields }: Named): CheckSpec {
  const text = (name: string) => texts(fields[name])[0] ?? null;
  const many = (name: string) => texts(fields[name]);
  return {
    ...{ key, check: text('check') ?? '', limit: text('limit'), takes: text('takes') },
    ...{ bad: many('bad'), along: many('along'), under: many('under'), needs: many('needs') },
    ...{ caution: many('caution'), note: text('note') },
  };
}

const texts = (value: Fields[string] | undefined): string[] =>
  value === undefined ? [] : typeof value === 'string' ? [value] : [...value];
