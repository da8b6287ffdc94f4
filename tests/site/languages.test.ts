import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { say, speaking, term, words } from '../../site/say.ts';
import { frenchDate } from '../../src/language/french-dates.ts';
import { interfaceFor, LANGUAGES } from '../../src/language/languages.ts';
import { sentLanguage } from '../../src/language/sent-language.ts';
import { ENTRY_SCHEMAS } from '../../src/model/entry.ts';
import { keyNames } from '../../src/model/walk-fields.ts';
import { REGISTERS } from '../../src/publish/page-paths.ts';
import { MARK_WORDS } from '../../src/publish/plan-marks.ts';
import { kerfmark } from '../cli/kerfmark.ts';
import { sharedSite } from '../shared-sites.ts';
import { ROOT } from '../workspace.ts';

/** Every message that a page, a document or a computed sentence says, out of the source. */
function messagesOfSource(): ReadonlySet<string> {
  const found = new Set<string>();
  const names = ['site', 'src'].flatMap((folder) =>
    readdirSync(path.join(ROOT, folder), { recursive: true, encoding: 'utf8' }).map((name) => `${folder}/${name}`),
  );
  for (const name of names.filter((one) => /\.tsx?$/.test(one))) {
    const source = ts.createSourceFile(
      name,
      readFileSync(path.join(ROOT, name), 'utf8'),
      ts.ScriptTarget.Latest,
      true,
      ts.ScriptKind.TSX,
    );
    const visit = (node: ts.Node): void => {
      if (ts.isCallExpression(node) && /^(say|words)$/.test(node.expression.getText(source))) {
        const [message] = node.arguments;
        if (message && ts.isStringLiteralLike(message)) found.add(message.text);
      }
      ts.forEachChild(node, visit);
    };
    visit(source);
  }
  return found;
}

const placeholders = (text: string): readonly string[] => (text.match(/\{\d\}/g) ?? []).sort();

describe.each(LANGUAGES.filter((one) => one.tag !== 'en').map((one) => [one.tag, one] as const))(
  'the interface in %s',
  (_, spoken) => {
    const messages = messagesOfSource();

    it('has every message that is said, and none that nothing says', () => {
      expect(messages.size).toBeGreaterThan(1000);
      expect([...messages].filter((one) => !(one in spoken.messages))).toEqual([]);
      expect(Object.keys(spoken.messages).filter((one) => !messages.has(one))).toEqual([]);
    });

    it('keeps the parts of every message', () => {
      for (const [message, said] of Object.entries(spoken.messages)) {
        expect(placeholders(said), message).toEqual(placeholders(message));
        expect(said.trim(), message).not.toBe('');
      }
    });

    it('names every key of every type, every register and mark', () => {
      const labels = new Set(Object.values(ENTRY_SCHEMAS).flatMap((schema) => [...keyNames(schema)]));
      const hidden = [
        'id',
        'type',
        'title',
        'access',
        'withhold',
        'stated',
        'relations',
        'panels',
        'alternative',
        'may-be-named',
      ];
      const missing = [...labels].filter((key) => {
        const plain = key.replaceAll('-', ' ');
        return !hidden.includes(key) && !(plain.charAt(0).toUpperCase() + plain.slice(1) in spoken.keys);
      });
      expect(missing).toEqual([]);
      speaking(spoken, () => {
        for (const word of [...REGISTERS.map((one) => one.title), ...Object.values(MARK_WORDS)])
          expect(word in spoken.terms || word in spoken.messages, word).toBe(true);
      });
    });
  },
);

describe('dates in French', () => {
  // Forms of the French of dates and numbers: Lexique des règles typographiques en usage à l'Imprimerie nationale (2002), from memory.
  it.each([
    ['12 May 1929', '12 mai 1929'],
    ['1 August 1932', '1er août 1932'],
    ['until 12 September 1929', 'jusqu’au 12 septembre 1929'],
    ['until 1931', 'jusqu’en 1931'],
    ['until May 1931', 'jusqu’en mai 1931'],
    ['from May 1921 on', 'à partir de mai 1921'],
    ['from 7 May 1921 on', 'à partir du 7 mai 1921'],
    ['about 1330–1350', 'vers 1330–1350'],
    ['May 1929 – 6 October 1933', 'mai 1929 – 6 octobre 1933'],
    ['not bounded', 'sans borne'],
    ['1936 to 1938', '1936 à 1938'],
    ['up to 2.1 years', 'jusqu’à 2,1 ans'],
    ['throughout 2 April 1951 to 1 March 2024', 'de bout en bout, 2 avril 1951 à 1er mars 2024'],
    ['300 BCE', '300 av. J.-C.'],
  ])('%s is %s', (english, french) => {
    expect(frenchDate(english)).toBe(french);
  });
});

it('a file speaks the first of its languages that the interface has; English else; and one language after the other', () => {
  expect(interfaceFor(['el', 'fr', 'en']).tag).toBe('fr');
  expect(interfaceFor(['fr-CH']).tag).toBe('fr');
  expect(interfaceFor(['el']).tag).toBe('en');
  const french = interfaceFor(['fr']);
  expect(speaking(french, () => [words('{0} entries', 3), say('Before: {0}', 'x'), term('fill')])).toEqual([
    '3 notices',
    ['Avant\u00a0: ', 'x', ''],
    'comblement',
  ]);
  expect(words('{0} entries', 3)).toBe('3 entries');
  expect(() =>
    speaking(french, () => {
      throw new Error('a page that fails');
    }),
  ).toThrow();
  expect(words('Chronology')).toBe('Chronology');
});

it('a site in French: its frame, its dates, the words of its entries, what is computed of them; what is English is said', async () => {
  const folder = await sharedSite('french');
  const page = (name: string): string => readFileSync(path.join(folder, name), 'utf8').replaceAll('\u00a0', ' ');
  for (const name of readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((one) => one.endsWith('.html')))
    expect(page(name).slice(0, 60), name).toContain('<html lang="fr">');
  const entry = page('entry/EV-removal.html');
  for (const words of [
    'Chronologie',
    'Ce qui en dépend',
    'mai 1929 – octobre 1933',
    'dépose',
    'messages du contrôle',
    '« Taken off the refectory wall » après « Described in place by the ephor, 1929 »',
    'au moins 3 jours et au plus 6 mois',
    'parce que l’affirmation est rejetée',
    'Vous en savez plus',
  ])
    expect(entry).toContain(words);
  const frame = entry.replace(/<main[\s\S]*<\/main>/, '');
  for (const words of ['Chronology', 'Registers', 'Built for', 'How to cite', 'Grades:'])
    expect(frame).not.toContain(words);
  expect(page('why/EV-removal.html')).toContain('Rien ne finit avant d’avoir commencé');
  expect(page('custody.html')).toContain('Un point-virgule dit qu’un détenteur l’a eu directement du précédent');
  expect(page('custody.html')).toMatch(/peut-être acheté par|acheté par|don à/);
  expect(page('contradictions.html')).toContain('au plus tôt : 23 avril 1933');
  const file = page('report/OB-lerakos-file.html').replace(/<[^>]+>/g, ' ');
  for (const words of [
    'Dossier de provenance',
    'Ce qui est connu, dans l’ordre des dates',
    'Ce qu’on ne sait pas',
    'Détentions de Panneaux',
  ])
    expect(file).toContain(words);
  for (const words of ['What is not known', 'Holdings of', 'Nothing is inferred', 'Weigh before'])
    expect(file).not.toContain(words);
  expect((await kerfmark(['build', '--language', 'french!'], ROOT)).err).toContain('is no language');
});

it('documents in French, each kept answer compared in the language in which it was sent', async () => {
  const folder = mkdtempSync(path.join(tmpdir(), 'kerfmark-french-'));
  try {
    const made = await kerfmark(
      ['appendix', 'OB-lerakos', '--language', 'fr', '--format', 'md,html', '--out', folder],
      ROOT,
    );
    expect(made).toMatchObject({ code: 0, err: '' });
    const text = readFileSync(path.join(folder, 'OB-lerakos-appendix.md'), 'utf8');
    expect(text).toContain('## Assertions sur lesquelles reposent les dates, telles qu’elles étaient');
    expect(text).toContain('Peser avant de lever');
    expect(sentLanguage(text)).toBe('fr');
    expect(readFileSync(path.join(folder, 'OB-lerakos-appendix.html'), 'utf8')).toContain('<html lang="fr">');
    // The file speaks French; what was sent in English is compared in English.
    const { out } = await kerfmark(['answer', 'IN-2021-3', '--language', 'fr'], ROOT);
    expect(out).toContain('## Ce qui est connu, dans l’ordre des dates');
    const english = await kerfmark(['answer', 'IN-2021-3', '--changes'], ROOT);
    const french = await kerfmark(['answer', 'IN-2021-3', '--changes', '--language', 'fr'], ROOT);
    expect(french.out).toBe(english.out);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});
