/** All keys of all screens, for who wants to read or change them. */
import { withOwn } from '../base/own-presses.ts';
import { keyName, type OwnPresses, type Press } from '../kit/press.ts';
import { KEYS } from './screens.ts';

interface KeyRow {
  /** Its name, by which settings speak of it. */
  key: string;
  presses: readonly Press[];
  /** As they stand on a keyboard. */
  shown: string;
  help: string;
}

export function keyTable(own: OwnPresses): KeyRow[] {
  return withOwn(KEYS, own).map(({ id, presses, shown, help }) => ({
    key: id,
    presses,
    shown: own[id] === undefined && shown ? shown : presses.map(keyName).join(', '),
    help,
  }));
}
