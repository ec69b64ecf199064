/** What a path leads to. */
import { statSync } from 'node:fs';
import { resolve } from 'node:path';
import type { World } from '../world.ts';

export function pathKind(path: string, world: World): 'file' | 'folder' | null {
  try {
    return statSync(resolve(world.folder, path)).isDirectory() ? 'folder' : 'file';
  } catch {
    return null;
  }
}
