/** The smallest program with Ink: one word. */
import { render, Text, useInput } from 'ink';

function Word() {
  useInput(() => process.exit());
  return <Text>word</Text>;
}
render(<Word />);
