import { describe, expect, it } from 'vitest';
import { typedPiece } from '../../../src/plan/typed/piece.ts';

describe('a piece typed with it in the hand', () => {
  it.each([
    ['cover 3', 'cover', '? ? ?'],
    ['left cover 2', 'left-cover', '? ?'],
    ['Left cover, 2 bolts', 'left-cover', '? ?'],
    ['left cover 1 screw', 'left-cover', '?'],
    ['left cover s s m+clip .35 !', 'left-cover', 's s m+clip .35 !'],
    ['fuel pipe', 'fuel-pipe', null],
    ['Couvercle d’été', 'couvercle-d-ete', null],
    ['10', '10', null],
    ['cover 0', 'cover-0', null],
    ['cover 100', 'cover-100', null],
    ['s', 's', null],
    ['   ', '', null],
  ])('%s', (text, key, row) => {
    expect(typedPiece(text)).toEqual({ key, row });
  });
});
