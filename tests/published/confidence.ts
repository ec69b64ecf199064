/** How sure a published row is; `computed here` never checks the formula it came from, so no such row is among them. */
export type Confidence = 'two sources agree' | 'one source' | 'from memory';
