import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { IntlMessageFormat } from 'intl-messageformat';
import ts from 'typescript';
import { describe, expect, it } from 'vitest';
import { SCRIPT_MESSAGES } from '../../site/script-messages.ts';
import { measured, phrase, type Said } from '../../src/base/said.ts';
import { terminalLanguage } from '../../src/cli/languages.ts';
import { dayOf } from '../../src/dates/day.ts';
import type { Precision } from '../../src/dates/expression.ts';
import { sayCertain, sayGap, sayStretch } from '../../src/findings/custody-words.ts';
import { sayBounds, sayDay } from '../../src/language/date-words.ts';
import { languageFor } from '../../src/language/language.ts';
import { sayerIn } from '../../src/language/sayer.ts';
import { ENTRY_SCHEMAS } from '../../src/model/entry.ts';
import { keyNames } from '../../src/model/walk-fields.ts';
import { REGISTERS } from '../../src/publish/page-paths.ts';
import { MARK_WORDS } from '../../src/publish/plan-marks.ts';
import { kerfmark } from '../cli/kerfmark.ts';
import { sharedSite } from '../shared-sites.ts';
import { english, french, inEnglish, LANGUAGES } from '../spoken.ts';
import { ROOT } from '../workspace.ts';

/** Functions whose first text is a message. */
const SAYING = /(?:^|\.)(?:say|words|phrase|told)$/;

/** Every message that is said, and every text that stands in the source: some messages are handed on before they are said. */
function textsOfSource(): { readonly said: ReadonlySet<string>; readonly all: ReadonlySet<string> } {
  const [said, all] = [new Set<string>(), new Set<string>()];
  const names = ['site', 'src'].flatMap((folder) =>
    readdirSync(path.join(ROOT, folder), { recursive: true, encoding: 'utf8' }).map((name) => `${folder}/${name}`),
  );
  // The sentences of letters of the first format are frozen, in their own words and French.
  for (const name of names.filter((one) => /\.tsx?$/.test(one) && !one.includes('letters/format-1'))) {
    const source = ts.createSourceFile(
      name,
      readFileSync(path.join(ROOT, name), 'utf8'),
      ts.ScriptTarget.Latest,
      true,
      ts.ScriptKind.TSX,
    );
    const visit = (node: ts.Node): void => {
      if (ts.isStringLiteralLike(node)) all.add(node.text);
      if (ts.isCallExpression(node) && SAYING.test(node.expression.getText(source))) {
        const [message] = node.arguments;
        if (message && ts.isStringLiteralLike(message)) said.add(message.text);
      }
      ts.forEachChild(node, visit);
    };
    visit(source);
  }
  return { said, all };
}

/** The parts that a message names: those that are put in, and those that only choose its words. */
function partsOf(message: string): { readonly put: ReadonlySet<string>; readonly choosing: ReadonlySet<string> } {
  const [put, choosing] = [new Set<string>(), new Set<string>()];
  type Element = ReturnType<IntlMessageFormat['getAst']>[number];
  const visit = (elements: readonly Element[]): void => {
    for (const one of elements) {
      if (one.type === 1) put.add(one.value);
      if ('options' in one) {
        choosing.add(one.value);
        for (const { value } of Object.values(one.options)) visit(value);
      }
    }
  };
  visit(new IntlMessageFormat(message, 'en', undefined, { ignoreTag: true }).getAst());
  return { put, choosing };
}

describe.each(LANGUAGES.filter((one) => one.tag !== 'en').map((one) => [one.tag, one] as const))(
  'the interface in %s',
  (_, spoken) => {
    const { said, all } = textsOfSource();

    it('has every message that is said, and none that nothing says', () => {
      expect(said.size).toBeGreaterThan(1500);
      expect([...said].filter((one) => !(one in spoken.messages))).toEqual([]);
      expect(Object.keys(spoken.messages).filter((one) => !all.has(one))).toEqual([]);
      for (const message of Object.values(SCRIPT_MESSAGES).flat())
        expect(message in spoken.messages, message).toBe(true);
    });

    it('puts in the parts of every message, and chooses words by nothing else than what is given', () => {
      for (const [message, own] of Object.entries(spoken.messages)) {
        const [was, is] = [partsOf(message), partsOf(own)];
        const given = [...was.put, ...was.choosing];
        for (const part of given) expect(is.put.has(part) || is.choosing.has(part), message).toBe(true);
        // A language may choose its words by a part that English needs for nothing, and put in that part instead.
        for (const part of is.put) expect(given.includes(part) || is.choosing.size > 0, message).toBe(true);
        expect(own.trim(), message).not.toBe('');
      }
    });

    it('has the longer texts, with the same places for what is computed', () => {
      const placesOf = (text: string): readonly string[] => text.match(/\[\[\w+\]\]|\{#\w+\}/g) ?? [];
      expect(Object.keys(spoken.prose).sort()).toEqual(Object.keys(english.language.prose).sort());
      for (const [name, text] of Object.entries(english.language.prose))
        expect(placesOf(spoken.prose[name] ?? ''), name).toEqual(placesOf(text));
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
      for (const word of [...REGISTERS.map((one) => one.title), ...Object.values(MARK_WORDS)])
        expect(word in spoken.terms || word in spoken.messages, word).toBe(true);
    });
  },
);

describe('dates in French', () => {
  const bound = (year: number, month: number, day: number, precision: Precision, about = false) => ({
    day: dayOf(year, month, day),
    precision,
    about,
  });
  const [first, last] = [dayOf(1936, 1, 1), dayOf(1938, 12, 31)];
  const whole = { first: dayOf(1951, 4, 2), last: dayOf(2024, 3, 1) };
  const CASES: readonly (readonly [string, string, Said])[] = [
    ['12 May 1929', '12 mai 1929', sayDay(dayOf(1929, 5, 12), 'day')],
    ['1 August 1932', '1er août 1932', sayDay(dayOf(1932, 8, 1), 'day')],
    ['until 12 September 1929', 'jusqu’au 12 septembre 1929', sayBounds(null, bound(1929, 9, 12, 'day'))],
    ['until 1931', 'jusqu’en 1931', sayBounds(null, bound(1931, 1, 1, 'year'))],
    ['until about 1931', 'jusque vers 1931', sayBounds(null, bound(1931, 1, 1, 'year', true))],
    ['until May 1931', 'jusqu’en mai 1931', sayBounds(null, bound(1931, 5, 1, 'month'))],
    ['from May 1921 on', 'à partir de mai 1921', sayBounds(bound(1921, 5, 1, 'month'), null)],
    ['from 7 May 1921 on', 'à partir du 7 mai 1921', sayBounds(bound(1921, 5, 7, 'day'), null)],
    ['about 1330–1350', 'vers 1330–1350', sayBounds(bound(1330, 1, 1, 'year', true), bound(1350, 1, 1, 'year', true))],
    [
      'May 1929 – October 1933',
      'mai 1929 – octobre 1933',
      sayBounds(bound(1929, 5, 1, 'month'), bound(1933, 10, 6, 'day')),
    ],
    ['no limit known', 'sans limite connue', sayBounds(null, null)],
    ['1936 to 1938', '1936 à 1938', sayStretch({ first, last })],
    ['up to 25 months', 'jusqu’à 25 mois', sayGap({ least: 0, most: 760, precision: 'month' })],
    [
      'throughout 2 April 1951 to 1 March 2024',
      'en continu, du 2 avril 1951 au 1er mars 2024',
      sayCertain({ throughout: whole, recorded: null }),
    ],
    ['300 BCE', '300 av. J.-C.', sayDay(dayOf(-299, 1, 1), 'year')],
    ['1 year', '1 an', phrase('{0, plural, one {# year} other {# years}}', 1)],
    ['12.50', '12,50', measured(12.5, 2)],
  ];

  // Forms of the French of dates and numbers: Lexique des règles typographiques en usage à l'Imprimerie nationale (2002), from memory.
  it.each(CASES)('%s is %s', (inWords, enFrancais, said) => {
    expect(inEnglish(said)).toBe(inWords);
    expect(french.say(said)).toBe(enFrancais);
  });
});

it('a file speaks the first of its languages that is spoken; English else; two speak side by side', () => {
  const tagFor = (...tags: readonly string[]): string => languageFor(LANGUAGES, tags).tag;
  expect(tagFor('el', 'fr', 'en')).toBe('fr');
  expect(tagFor('fr-CH')).toBe('fr');
  expect(tagFor('el')).toBe('en');
  expect(french.words('Answer: {0}', 3)).toBe('Réponse\u00a0: 3');
  expect(english.words('Answer: {0}', 3)).toBe('Answer: 3');
  expect(french.pieces('Before: {0}', ['x'])).toEqual(['Avant\u00a0: x']);
  expect(french.term('fill')).toBe('comblement');
  expect(sayerIn(french.language)).toBe(french);
});

it('a terminal speaks the language of its locale; English where that is not spoken', () => {
  const tagOf = (environment: Readonly<Record<string, string>>): string => terminalLanguage(LANGUAGES, environment).tag;
  expect(tagOf({ LANG: 'fr_CA.UTF-8' })).toBe('fr');
  expect(tagOf({ LC_ALL: 'fr_FR.UTF-8', LANG: 'en_GB.UTF-8' })).toBe('fr');
  expect(tagOf({ LC_ALL: 'C', LANG: 'fr_FR.UTF-8' })).toBe('en');
  expect(tagOf({ LC_ALL: '', LC_MESSAGES: 'fr', LANG: 'en' })).toBe('fr');
  expect(tagOf({ LANG: 'el_GR.UTF-8' })).toBe('en');
  expect(tagOf({})).toBe('en');
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
    'comme leurs sources',
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
    'Détentions : Panneaux',
  ])
    expect(file).toContain(words);
  for (const words of ['What is not known', 'Holdings of', 'Nothing is inferred', 'Weigh before'])
    expect(file).not.toContain(words);
  expect((await kerfmark(['build', '--language', 'french!'], ROOT)).err).toContain('is no language');
});

it('documents in French; what a kept answer rests on is compared whatever the language', async () => {
  const folder = mkdtempSync(path.join(tmpdir(), 'kerfmark-french-'));
  try {
    const made = await kerfmark(
      ['appendix', 'OB-lerakos', '--language', 'fr', '--format', 'md,html', '--out', folder],
      ROOT,
    );
    expect(made).toMatchObject({ code: 0, err: '' });
    const text = readFileSync(path.join(folder, 'OB-lerakos-appendix.md'), 'utf8');
    expect(text).toContain('## Assertions sur lesquelles reposent les dates, telles qu’elles étaient');
    expect(text).toContain('peser avant de lever');
    expect(readFileSync(path.join(folder, 'OB-lerakos-appendix.html'), 'utf8')).toContain('<html lang="fr">');
    const { out } = await kerfmark(['answer', 'IN-2021-3', '--language', 'fr'], ROOT);
    expect(out).toContain('## Ce qui est connu, dans l’ordre des dates');
    const english = await kerfmark(['answer', 'IN-2021-3', '--changes'], ROOT);
    const french = await kerfmark(['answer', 'IN-2021-3', '--changes', '--language', 'fr'], ROOT);
    expect(french.out).toBe(english.out);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});
