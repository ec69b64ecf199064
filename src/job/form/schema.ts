/** The JSON Schema of a job file as people read it, so that editors complete and check. */
import { jsonSchema } from './schema.made.ts';

/** Columns of a line. */
const WIDTH = 100;

/** The schema as people read it: what fits on a line stands on one. */
export function printSchema(): string {
  return printed(jsonSchema(), '');
}

function printed(value: unknown, indent: string): string {
  const short = JSON.stringify(value);
  if (typeof value !== 'object' || value === null || indent.length + short.length <= WIDTH)
    return short;
  const inner = `${indent}  `;
  const lines = Array.isArray(value)
    ? value.map((item) => printed(item, inner))
    : Object.entries(value).map(([key, v]) => `${JSON.stringify(key)}: ${printed(v, inner)}`);
  const [open, close] = Array.isArray(value) ? ['[', ']'] : ['{', '}'];
  return `${open}\n${lines.map((line) => inner + line).join(',\n')}\n${indent}${close}`;
}
