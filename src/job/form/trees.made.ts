/** In the built program their text stands here instead, made when it is built. */
import { makeTrees, type Trees } from './trees.ts';

let made: Trees | null = null;

export function trees(): Trees {
  made ??= makeTrees();
  return made;
}
