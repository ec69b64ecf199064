/**
 * From the nodes of the YAML library to plain data with places, and on the way the losses that YAML itself is
 * silent about. Anchors, aliases and tags are named as faults and never followed.
 */
import { isAlias, isMap, isScalar, isSeq, type Node, type Pair, type Scalar } from 'yaml';
import { quote } from '../diary/entry.ts';
import type { Report } from '../faults/faults.ts';
import type { MapSpot, Spot, TextSpot } from './spot.ts';

/** A job file needs seven levels. */
export const DEEPEST = 40;

/** The contents of a document; null when it has none. */
export function walk(contents: unknown, text: string, report: Report): Spot | null {
  if (contents === null || contents === undefined) return null;
  return new Walk(text, report).value(contents, 0, 0);
}

class Walk {
  readonly #text: string;
  readonly #report: Report;

  constructor(text: string, report: Report) {
    this.#text = text;
    this.#report = report;
  }

  /** A node, or nothing at `near`. */
  value(node: unknown, near: number, depth: number): Spot {
    if (node === null || node === undefined) return { is: 'nothing', at: near };
    const at = (node as Node).range?.[0] ?? near;
    if (isAlias(node)) {
      this.#report('anchor', at, { value: `*${node.source}` });
      return { is: 'nothing', at };
    }
    this.#props(node as Node, at);
    if (isScalar(node)) return this.#scalar(node, at, near);
    if (depth > DEEPEST) {
      this.#report('too-deep', at);
      return { is: 'nothing', at };
    }
    if (isSeq(node)) {
      return { is: 'list', at, items: node.items.map((item) => this.value(item, at, depth + 1)) };
    }
    return isMap(node) ? this.#map(node, at, depth) : { is: 'nothing', at };
  }

  #props(node: Node, at: number): void {
    const { anchor, tag } = node as Scalar;
    if (anchor) {
      const place = this.#text.lastIndexOf(`&${anchor}`, at);
      this.#report('anchor', place < 0 ? at : place, { value: `&${anchor}` });
    }
    if (tag) {
      // Properties stand directly before the node, blanks and line breaks between.
      const lead = this.#text.slice(Math.max(0, at - 200), at);
      const written = /(?:^|[\s,[{:])(!\S*)\s*(?:&\S+\s+)?$/.exec(lead);
      const place = written ? at - written[0].length + written[0].indexOf('!') : at;
      const value = `${written?.[1] ?? '!'} ${isScalar(node) ? String(node.value) : ''}`;
      this.#report('tag', place, { value: value.trim() });
    }
  }

  #scalar(node: Scalar, at: number, near: number): Spot {
    const { type, value } = node;
    const end = node.range?.[1] ?? at;
    const text = String(value ?? '');
    if (type === 'PLAIN' && text === '') {
      // Behind the key, which ends at `near`; the library puts the empty place behind the comment.
      const colon = this.#text[near] === ':' ? 1 : 0;
      this.#cut(near + colon, /^ #(?=[0-9])/);
      return { is: 'nothing', at };
    }
    const style: TextSpot['style'] =
      type === 'PLAIN'
        ? 'plain'
        : type === 'BLOCK_LITERAL'
          ? 'literal'
          : type === 'BLOCK_FOLDED'
            ? 'folded'
            : 'quoted';
    if (style === 'plain') {
      if (/^(?:~|null)$/i.test(text)) {
        this.#report('tilde', at, { value: text });
        return { is: 'nothing', at };
      }
      this.#switch(text, at);
      this.#cut(end, /^ #(?=[^\s#])/);
    }
    return { is: 'text', at, end, text, style };
  }

  #switch(text: string, at: number): void {
    if (/^(?:on|off|yes|no)$/i.test(text)) this.#report('bare-switch', at, { value: text });
  }

  /**
   * A comment that looks like the rest of a text: one blank before `#`, none behind it (`part #12`). With two
   * blanks before it, or one behind it, it is what people write as a comment. An empty place counts only where a
   * figure follows (`note: #12`), so that `diary: #log` is quiet.
   */
  #cut(end: number, suspect: RegExp): void {
    const rest = this.#text.slice(end, end + 80);
    if (!suspect.test(rest)) return;
    this.#report('cut-text', end + 1, { rest: rest.split(/[\r\n]/)[0]?.trim() ?? '' });
  }

  #map(node: { items: Pair[]; flow?: boolean | undefined }, at: number, depth: number): MapSpot {
    const map: MapSpot = { is: 'map', at, flow: node.flow === true, pairs: new Map() };
    let before: { key: string; value: Spot } | null = null;
    for (const { key, value } of node.items) {
      const name = this.#key(key, at);
      if (name === null) {
        before = null;
        continue;
      }
      const near = (key as Node).range?.[1] ?? at;
      if (
        map.flow &&
        value === null &&
        before?.value.is === 'text' &&
        before.value.style === 'plain'
      ) {
        const like = `${before.key}: ${quote(`${before.value.text}, ${name.text}`)}`;
        this.#report('split-text', name.at, { rest: name.text, like });
        continue;
      }
      if (name.style === 'plain') this.#switch(name.text, name.at);
      const spot = this.value(value, near, depth + 1);
      before = { key: name.text, value: spot };
      const first = map.pairs.get(name.text);
      if (first) this.#report('twice', name.at, { key: name.text }, { line: first.at });
      else map.pairs.set(name.text, { key: name.text, at: name.at, value: spot });
    }
    return map;
  }

  #key(key: unknown, near: number): { text: string; at: number; style: 'plain' | 'quoted' } | null {
    const at = (key as Node | null)?.range?.[0] ?? near;
    if (isScalar(key)) {
      this.#props(key, at);
      const text = String(key.value ?? '');
      const style = key.type === 'PLAIN' ? 'plain' : 'quoted';
      if (text !== '' && text !== '__proto__' && !/[\r\n]/.test(text)) return { text, at, style };
      this.#report('odd-key', at, { what: text === '' ? 'nothing' : text });
      return null;
    }
    const what = isSeq(key) ? 'a list' : isMap(key) ? 'a mapping' : 'nothing';
    if (isAlias(key)) this.#report('anchor', at, { value: `*${key.source}` });
    else this.#report('odd-key', at, { what });
    return null;
  }
}
