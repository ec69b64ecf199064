/** Draws a state: one text a row, so that a key costs the rows that changed and no more. */
import { Box, Text, useCursor } from 'ink';
import { memo } from 'react';
import type { State } from '../base/state.ts';
import { paint } from '../kit/paint.ts';
import { picture } from '../show/picture.ts';

const Row = memo(function Row({ text }: { text: string }) {
  // A row without text would have no height.
  return <Text wrap="truncate-end">{text === '' ? ' ' : text}</Text>;
});

export function App({ state }: { state: State }) {
  const { lines, cursor } = picture(state);
  const { setCursorPosition } = useCursor();
  // The terminal's own cursor stands in a field: input methods write where it is.
  setCursorPosition(cursor ?? undefined);
  return (
    <Box flexDirection="column" width={state.columns} height={state.rows} overflow="hidden">
      {lines.map((line, row) => (
        <Row key={row} text={paint(line, state)} />
      ))}
    </Box>
  );
}
