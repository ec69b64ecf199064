/** What wears, by the names of the trade, and what to look for. Common practice, no source: the maker's limits go first. */
export interface Wear {
  /** It is called so. */
  names: RegExp;
  /** The same in a text, with the word before it. */
  words: RegExp;
  look: string;
}

const row = (names: string, look: string): Wear => ({
  names: new RegExp(`\\b(?:${names})s?\\b`, 'i'),
  words: new RegExp(`\\b(?:[a-z-]+ )?(?:${names})s?\\b`, 'gi'),
  look,
});

export const WEAR: readonly Wear[] = [
  row('oil ?seal|lip seal|shaft seal|seal', 'Lip hard or torn, a groove on the shaft, wet below.'),
  row('o-ring|o ring', 'Flat on one side, hard, cracked when bent.'),
  row('gasket', 'Torn, hard, part of it left on the face.'),
  row('bearing', 'Turned by hand: rough, loud, play up and down.'),
  row('bush(?:es)?|bushing', 'Play sideways, oval, scored.'),
  row('chain tensioner|tensioner|guide|slipper', 'Grooved, cracked, at the end of its travel.'),
  row('timing belt|drive belt|belt', 'Cracked, frayed, glazed, soaked with oil.'),
  row('chain', 'Stiff links, stretched past its mark.'),
  row('brush(?:es)?', 'Shorter than the maker says, chipped, stuck in the holder.'),
  row('filter', 'Due by its hours, or full.'),
  row('hose', 'Soft, cracked where it bends, swollen at the clamp.'),
  row('diaphragm', 'Held against the light: pinholes, stiff.'),
  row('sprocket', 'Teeth hooked to one side.'),
  row(
    'pad|brake shoe|brake lining',
    "Thinner than the maker's least, soaked, cracked: both sides alike.",
  ),
  row('boot|gaiter|bellows', 'Split where it folds, loose at its clamp.'),
  row('piston ring', 'Its gap in the bore over the limit, stuck in its groove.'),
  row('contact point|breaker point', 'Burnt, pitted, worn on one side.'),
  row('spring', 'Shorter than a new one, broken at its end.'),
];
