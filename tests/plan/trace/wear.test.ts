import { expect, it } from 'vitest';
import { WEAR } from '../../../src/plan/trace/wear.ts';

/** What is said to be looked at; empty for what does not wear. */
const look = (name: string) => WEAR.find(({ names }) => names.test(name))?.look ?? '';

it.each<[string, RegExp]>([
  ['Oil seal', /^Lip hard/],
  ['Lip seals', /^Lip hard/],
  ['O-ring', /^Flat on one side/],
  ['Cover gasket', /^Torn/],
  ['Shaft bearing', /rough, loud/],
  ['Big-end bearings', /rough, loud/],
  ['Swingarm bush', /oval/],
  ['Bushes', /oval/],
  ['Chain tensioner', /end of its travel/],
  ['Drive belt', /frayed/],
  ['Drive chain', /Stiff links/],
  ['Brushes', /stuck in the holder/],
  ['Oil filter', /^Due/],
  ['Fuel hose', /swollen/],
  ['Diaphragm', /pinholes/],
  ['Rear sprocket', /hooked/],
  ['Brake pads', /both sides alike/],
  ['Brake shoes', /both sides alike/],
  ['Fork gaiter', /^Split/],
  ['Piston rings', /gap/],
  ['Contact points', /pitted/],
  ['Return spring', /^Shorter/],
  ['Cover', /^$/],
  ['Sealant on the case half', /^$/],
  ['Brushed plate', /^$/],
  ['Bushel', /^$/],
])('%s: what to look for', (name, says) => {
  expect(look(name)).toMatch(says);
});
