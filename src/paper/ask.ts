/** What a paper is made from, and what it is: the same for all of them. */
import type { Wrench } from '../bolt/torque/wrench.ts';
import type { Job, PieceNow } from '../model/types.ts';
import type { SizeName } from './page.ts';

export const PAPERS = ['card', 'blank', 'labels', 'tag', 'sheet', 'report', 'steps'] as const;
export type PaperName = (typeof PAPERS)[number];

/** What is left out of a sheet for others unless it is asked for. */
export const PRIVATE = ['names', 'places', 'prices'] as const;
export type Private = (typeof PRIVATE)[number];

export interface Ask {
  job: Job;
  /** RFC 3339. */
  now: string;
  size: SizeName;
  piece: PieceNow | null;
  /** Wrenches of the bench. */
  wrenches: readonly Wrench[];
}

export interface Paper {
  /** A whole page. */
  html: string;
  /** Sheets that a drawing is laid out on; null where the browser parts a running text. */
  sheets: number | null;
  /** The holes lie as far apart as on the machine; null where there are none. */
  life: boolean | null;
  /** What the page cannot do, and why: said where it was asked for. */
  notes: readonly string[];
}

/** Why there is no such page. */
export interface NoPaper {
  code: string;
  /** It was asked for wrongly; else there is nothing that could stand on it. */
  wrong?: true;
  say: string;
}

export const isPaper = (made: Paper | NoPaper): made is Paper => 'html' in made;
