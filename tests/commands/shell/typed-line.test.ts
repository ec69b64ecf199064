import { describe, expect, it } from 'vitest';
import { readTypedLine } from '../../../src/commands/shell/typed-line.ts';

const words = (line: string, shell: 'bash' | 'zsh' | 'fish' = 'zsh') =>
  readTypedLine(line, shell).words;

describe('a line as far as it is typed', () => {
  it.each([
    ['putback ', ['']],
    ['putback sta', ['sta']],
    ['putback  out  a.yaml ', ['out', 'a.yaml', '']],
    ["putback out 'my cov", ['out', 'my cov']],
    ['putback out "my \\"c\\" cover.yaml" al', ['out', 'my "c" cover.yaml', 'al']],
    ['putback out my\\ cover.yaml', ['out', 'my cover.yaml']],
    ['putback out my\\', ['out', 'my']],
    ["putback out it\\'s.yaml ''", ['out', "it's.yaml", '']],
    ['putback out 2>/dev/null a.yaml', ['out', 'a.yaml']],
    ['putback out a.yaml>x ', ['out', 'a.yaml', '']],
  ])('%j', (line, read) => {
    expect(words(line)).toEqual(read);
  });

  it('a quote within quotes of fish is escaped, elsewhere not', () => {
    expect(words("putback out 'it\\'s", 'fish')).toEqual(['out', "it's"]);
    expect(words("putback out 'it\\'s", 'zsh')).toEqual(['out', 'it\\s']);
  });

  it('bash puts in only what stands behind its last break', () => {
    const kept = (line: string) => readTypedLine(line, 'bash').kept;
    expect(kept('putback out a:b')).toBe('a:');
    expect(kept('putback out a\\:b')).toBe('');
    expect(kept('putback out "a:b')).toBe('');
    expect(kept('putback in x --kind=M')).toBe('--kind=');
    expect(readTypedLine('putback out a:b', 'fish').kept).toBe('');
  });

  it('knows where an output goes to', () => {
    expect(readTypedLine('putback diary a.yaml > di', 'zsh')).toEqual({
      words: ['diary', 'a.yaml', 'di'],
      kept: '',
      redirected: true,
    });
  });
});
