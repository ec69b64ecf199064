/** What a YAML file says, as plain data that knows where each thing stands. Offsets count UTF-16 units. */

export interface TextSpot {
  is: 'text';
  at: number;
  end: number;
  text: string;
  /** How it is written; a plain or folded text of several lines was run together. */
  style: 'plain' | 'quoted' | 'literal' | 'folded';
}
export interface ListSpot {
  is: 'list';
  at: number;
  items: Spot[];
}
export interface MapSpot {
  is: 'map';
  at: number;
  flow: boolean;
  pairs: Map<string, PairSpot>;
}
export interface PairSpot {
  key: string;
  /** Where the key stands. */
  at: number;
  value: Spot;
}
/** An empty place, which is as good as absent. */
export interface NoSpot {
  is: 'nothing';
  at: number;
}
export type Spot = TextSpot | ListSpot | MapSpot | NoSpot;

export type Plain = string | null | Plain[] | { [key: string]: Plain };

/** The same without places, for the shape: objects without a prototype, null for an empty place. */
export function plainSpot(spot: Spot): Plain {
  switch (spot.is) {
    case 'text':
      return spot.text;
    case 'nothing':
      return null;
    case 'list':
      return spot.items.map(plainSpot);
    case 'map': {
      const record: { [key: string]: Plain } = Object.create(null);
      for (const { key, value } of spot.pairs.values()) record[key] = plainSpot(value);
      return record;
    }
  }
}

/** What a person would call it, in a message. */
export function whatIs(spot: Spot): string {
  switch (spot.is) {
    case 'text':
      return spot.text === '' ? 'an empty text' : `the text "${spot.text}"`;
    case 'nothing':
      return 'nothing';
    case 'list':
      return 'a list';
    case 'map':
      return 'a mapping';
  }
}

/** The value behind a key; null when the key is absent or its place empty. */
export function valueAt(spot: Spot | null | undefined, key: string): Spot | null {
  const value = spot?.is === 'map' ? spot.pairs.get(key)?.value : undefined;
  return value === undefined || value.is === 'nothing' ? null : value;
}

/** Where a path leads, and where the key of its last step stands; as far as it goes. */
export function spotAt(root: Spot, path: readonly PropertyKey[]): { spot: Spot; key: number } {
  let spot = root;
  let key = root.at;
  for (const step of path) {
    if (spot.is === 'map') {
      const pair = spot.pairs.get(String(step));
      if (!pair) break;
      spot = pair.value;
      key = pair.at;
    } else if (spot.is === 'list') {
      const item = spot.items[Number(step)];
      if (!item) break;
      spot = item;
      key = item.at;
    } else break;
  }
  return { spot, key };
}
