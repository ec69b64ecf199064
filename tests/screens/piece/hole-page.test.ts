import { describe, expect, it } from 'vitest';
import { Bench, COVER } from '../../job/bench.ts';
import { Desk } from '../desk.ts';

const page = (hole: string) => {
  const text = COVER.replace(
    'torque: 10',
    `into: cast aluminium\n    thick: 10\n    holes: {${hole}}\n    torque: 10`,
  );
  return new Desk(new Bench(text)).open('cover').press('1').frame.replace(/\s+/g, ' ');
};

describe('the page of a hole', () => {
  it('says which lengths hold and do not bottom, and which are made', () => {
    expect(page('1: {thread: 0..17}')).toContain(
      '19.5 to 26.5 mm hold and do not bottom; made in 20, (22), 25.',
    );
    expect(page('1: {thread: 0..17, wet: true}')).toContain(
      'From 19.5 mm on it holds; nothing to bottom in, look what lies behind.',
    );
  });

  it('is silent about lengths where nothing was measured', () => {
    expect(page('2: {turns: 15}')).not.toMatch(/hold|made in/);
  });

  it('says whether its thread and its bolt stand the torque, and why that is not known', () => {
    expect(page('1: {turns: 4}')).toContain(
      '10 N·m is near what the thread holds: 4 mm in cast aluminium',
    );
    expect(page('1: {turns: 2}')).toContain('STOP. 10 N·m would strip the thread');
    expect(page('2: {turns: 4}')).toContain(
      'Does it stand the torque? Not known how much thread bites',
    );
  });
});
