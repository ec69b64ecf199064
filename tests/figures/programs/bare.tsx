/** A bare program with Ink: a full frame of rows, a mark that a key moves, nothing behind it. */
import { Box, render, Text, useInput } from 'ink';
import { memo, useState } from 'react';

const ROWS = process.stdout.rows;
const WIDE = process.stdout.columns;
const Row = memo(({ text }: { text: string }) => <Text wrap="truncate-end">{text}</Text>);

function Bare() {
  const [at, setAt] = useState(0);
  useInput((input) => {
    if (input === 'q') process.exit();
    setAt((n) => (n + 1) % ROWS);
  });
  return (
    <Box flexDirection="column" height={ROWS} overflow="hidden">
      {Array.from({ length: ROWS }, (_, row) => (
        <Row key={row} text={`${row === at ? '>' : ' '} ${String(row).padEnd(WIDE - 4, '.')}`} />
      ))}
    </Box>
  );
}
render(<Bare />, { alternateScreen: true, incrementalRendering: true, maxFps: 250 });
