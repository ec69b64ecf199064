import { describe, expect, it } from 'vitest';
import { PAPERS } from '../../src/paper/ask.ts';
import { mapFile } from '../../src/paper/map-picture.ts';
import { m } from '../../src/paper/markup.ts';
import { allPapers, htmlOf } from './all-papers.ts';
import { HOSTILE, hostileJob, pieceIn } from './jobs.ts';

/** Tags that putback itself writes; none of them runs, loads or asks anything but an img, and that from a data: address. */
const OURS = new Set(
  'html head meta title style body h1 h2 h3 p ul ol li table thead tbody tr th td dl dt dd section div span b br bdi svg g path circle rect text figure figcaption img'.split(
    ' ',
  ),
);

interface Element {
  tag: string;
  attributes: Map<string, string>;
}

/** Elements as a browser sees them: a quoted value ends at its quote alone. */
function elementsOf(html: string): Element[] {
  return [...html.matchAll(/<([a-zA-Z][^\s/>]*)((?:\s+[^\s=>/]+(?:="[^"]*")?)*)\s*\/?>/g)].map(
    (f) => ({
      tag: f[1] ?? '',
      attributes: new Map(
        [...(f[2] ?? '').matchAll(/([^\s=>/"]+)="([^"]*)"/g)].map((a) => [a[1] ?? '', a[2] ?? '']),
      ),
    }),
  );
}

/** Nothing but what putback writes itself, no handler and no address. */
function expectOurs(html: string): void {
  const elements = elementsOf(html);
  expect(elements.length).toBe([...html.matchAll(/<[a-zA-Z]/g)].length);
  expect(elements.map((e) => e.tag).filter((tag) => !OURS.has(tag))).toEqual([]);
  const names = elements.flatMap((e) => [...e.attributes.keys()]);
  expect(names.filter((n) => /^on|^href$|^srcset$|^action$/i.test(n))).toEqual([]);
  for (const { attributes } of elements) expect(attributes.get('src') ?? 'data:').toMatch(/^data:/);
}

describe('texts of a file in a page', () => {
  const job = hostileJob();
  const papers = allPapers(job, 'cover', 'a4', HOSTILE.join(' '));

  it.each(PAPERS)('%s: stay texts', (name) => {
    const html = htmlOf(papers[name]);
    expectOurs(html);
    // They are there all the same, as what they are.
    expect(html).toContain('&lt;script&gt;alert(1)&lt;/script&gt;');
    // The style is closed once, by putback.
    expect(html.match(/<\/style>/g)).toHaveLength(1);
  });

  it.each(PAPERS)(
    '%s: neither control characters nor turned directions, and every script',
    (name) => {
      const html = htmlOf(papers[name]);
      expect(html).not.toMatch(
        /[\u202a-\u202e\u2066-\u2069\u0000-\u0008\u000b-\u001f\u007f-\u009f]/,
      );
      expect(html).toContain('שמאל לימין');
      expect(html).toContain('می\u200cشود');
    },
  );

  it.each(PAPERS)('%s: forbids scripts and requests', (name) => {
    const html = htmlOf(papers[name]);
    expect(html).toContain(
      `http-equiv="Content-Security-Policy" content="default-src &#39;none&#39;`,
    );
    expect(html).not.toMatch(/<(?:script|link|iframe|object|embed|form|base)\b/i);
  });

  it('a picture is well-formed XML with nothing of theirs in it', () => {
    const svg = mapFile(pieceIn(job, 'cover')) ?? '';
    expectOurs(svg);
  });
});

describe('a template', () => {
  it('escapes what is set into it, and nothing that came out of one', () => {
    expect(m`<p>${'<b>"&\''}</p>`.text).toBe('<p>&lt;b&gt;&quot;&amp;&#39;</p>');
    expect(m`<p>${m`<b>${'<'}</b>`}</p>`.text).toBe('<p><b>&lt;</b></p>');
    expect(m`${['<', m`<br>`, null, false]}`.text).toBe('&lt;<br>');
  });

  it('prints lengths without powers of ten', () => {
    expect(m`${1e-9} ${0.1 + 0.2} ${-3.000001} ${Number.NaN}`.text).toBe('0 0.3 -3 0');
  });
});
