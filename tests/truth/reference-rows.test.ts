import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { chosenReferences, referenceTable } from '../../src/findings/reference-dates.ts';
import { kindsTested, testReferences } from '../../src/findings/reference-tests.ts';
import { citationOf } from '../../src/model/row-citation.ts';
import cautions from '../../src/reference/cautions.json' with { type: 'json' };
import materials from '../../src/reference/dated-materials.json' with { type: 'json' };
import densities from '../../src/reference/densities.json' with { type: 'json' };
import terms from '../../src/reference/trade-terms.json' with { type: 'json' };
import looks from '../../src/reference/uv-looks.json' with { type: 'json' };
import { kerfmark } from '../cli/kerfmark.ts';
import { demoCopy, snapshot, testFolder } from '../folders.ts';
import { sharedSite } from '../shared-sites.ts';
import { inEnglish } from '../spoken.ts';
import { computeFiles } from '../workspace.ts';

/** Working notes of who made a table: how it was looked up, and where in the web. */
const NOTE =
  /\bfrom memory\b|\blooked-up\b|\b(?:scribd|docplayer|docslib|vlex|wikipedia|wikisource|transllegisl|openedition|webexhibits|normattiva)\b|archive\.org|\.(?:com|net|gr|jp)\b|\b(?:open|web) (?:page|encyclopedia|copy|library)/i;

const home = testFolder();

describe('rows of the reference tables', () => {
  it('are all there: laws, treaties, decisions and periods; materials; densities; terms; looks; cautions', () => {
    const rows = referenceTable();
    expect(rows).toHaveLength(371);
    expect(rows.filter((row) => row.kind === 'decision')).toHaveLength(10);
    expect([materials, densities, terms, looks, cautions].map((one) => one.length)).toEqual([119, 41, 43, 44, 14]);
    expect(new Set(rows.map((row) => row.id)).size).toBe(371);
  });

  it('each has a citation or is not verified; what is cited is no working note and nothing from memory', () => {
    const all = [...referenceTable(), ...materials, ...densities, ...terms, ...looks, ...cautions];
    const cited = all.map((row) => inEnglish(citationOf(row)));
    expect(cited.filter((one) => one === '' || NOTE.test(one))).toEqual([]);
    expect(cited.filter((one) => one !== 'not verified').length).toBeGreaterThan(60);
    all.forEach((row, i) => {
      if (row.standing === 'memory' || row.howSure === 'doubtful') expect(cited[i]).toBe('not verified');
    });
    expect(
      inEnglish(citationOf({ source: 'EwaGlos 2015; a term from memory', standing: 'looked-up', howSure: 'high' })),
    ).toBe('EwaGlos 2015');
  });

  it('working notes reach no page, no document, no export', async () => {
    const folder = demoCopy(home);
    for (const line of [
      ['file', 'OB-lerakos', '--format', 'md', '--out', 'out/documents'],
      ['appendix', 'OB-lerakos', '--format', 'md', '--out', 'out/documents'],
      ['export', '--out', 'out/export'],
    ])
      expect((await kerfmark([...line, '--audience', 'public'], folder)).code).toBe(0);
    const printed = await kerfmark(['references', '--offered'], folder);
    const texts = [
      ...Object.entries(snapshot(await sharedSite('internal'))),
      ...Object.entries(snapshot(path.join(folder, 'out'))),
      ['references', printed.out] as const,
    ].filter(([name]) => /\.(?:html|md|json|csv)$|^references$/.test(name) && name !== 'answer/IN-2021-3.html');
    expect(texts.length).toBeGreaterThan(250);
    // What entries say in their own words and keys, and the letter that was sent, stay as they are.
    const OWN =
      /from memory of the firm's last owner|tells it from memory|"standing": "partly looked-up"|,partly looked-up,doubtful/g;
    const plain = (text: string): string =>
      text
        .replace(/https?:\/\/[^\s"<]+/g, '')
        // The words of the page's script, by the schema words that they stand for.
        .replace(/<script[^>]*id="trial-language"[^>]*>.*?<\/script>/s, '')
        .replace(/<[^>]+>/g, ' ')
        .replace(/&#39;/g, "'")
        .replace(OWN, '');
    const found = texts.flatMap(([name, text]) => {
      const note = NOTE.exec(plain(text));
      return note ? [`${name}: ${plain(text).slice(note.index - 60, note.index + 60)}`] : [];
    });
    expect(found).toEqual([]);
  });

  it('a decision is commentary: it can be chosen, and is tested on no act and no holding', () => {
    expect(kindsTested('none')).toEqual([]);
    const { file } = computeFiles({
      'entries/workspace.md':
        '---\nid: workspace\ntype: workspace\ntitle: A file\ninstitution: A museum\nreference-dates: [france-1988-decision]\n---\n',
      'entries/EV-a.md':
        '---\nid: EV-a\ntype: event\nkind: removal\ntitle: Taken down\nstated: [{ date: "1950", grade: established }]\n---\n',
      'entries/HO-a.md': '---\nid: HO-a\ntype: holding\ntitle: A holding\ncapacity: possessor\n---\n',
    });
    expect(chosenReferences(file.catalogue).map((one) => one.id)).toEqual(['france-1988-decision']);
    expect(testReferences(file).map((one) => [one.events.length, one.holdings.length])).toEqual([[0, 0]]);
  });
});
