import { spawn } from 'node:child_process';
import { cpSync, mkdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { measured, phrase } from '../../src/base/said.ts';
import { loadLanguages } from '../../src/cli/languages.ts';
import { dayOf } from '../../src/dates/day.ts';
import { sayBounds, sayDay } from '../../src/language/date-words.ts';
import { sayerIn } from '../../src/language/sayer.ts';
import { smallWorkspace, testFolder } from '../folders.ts';
import { ROOT } from '../workspace.ts';

/**
 * A small language for tests, nothing but a folder: other word order, three forms of the plural, year before month before
 * day, all by the rules of Lithuanian in the Unicode CLDR. Its words are made up but for the grammar.
 */
const FOLDER: Readonly<Record<string, unknown>> = {
  'language.json': { tag: 'lt', locale: 'lt', dayOfMonth: '{0}', notice: 'Beveik viskas angliškai.' },
  'messages.json': {
    '{0}: dated {1}': '{1} – tada {0}',
    '“{0}”': '„{0}“',
    'until {0}': '{1, select, day {iki {0}} other {ligi {0}}}',
    Chronology: 'Laiko eilė',
    '{0, plural, one {One entry} other {# entries}}':
      '{0, plural, one {# įrašas} few {# įrašai} many {# įrašo} other {# įrašų}}',
  },
  'terminal.json': {
    '{0, plural, =0 {no errors} one {# error} other {# errors}}, {1, plural, =0 {no doubts} one {# doubt} other {# doubts}}, {2, plural, =0 {no notes} one {# note} other {# notes}}.':
      '{0, plural, one {# klaida} few {# klaidos} other {# klaidų}} | {1, plural, one {# abejonė} few {# abejonės} other {# abejonių}}',
  },
  'terms.json': { removal: 'nuėmimas' },
  'method.md': '## Laipsniai {#grades}\n\n[[grades]]\n',
  'marks.md': 'Ženklai.\n',
};

const home = testFolder();
/** The program as it is published, with one folder more. */
const installed = path.join(home, 'installed');

beforeAll(() => {
  mkdirSync(installed);
  for (const part of ['dist', 'site/styles', 'src/language', 'package.json'])
    cpSync(path.join(ROOT, part), path.join(installed, part), { recursive: true });
  symlinkSync(path.join(ROOT, 'node_modules'), path.join(installed, 'node_modules'));
  mkdirSync(path.join(installed, 'src/language/lt'));
  for (const [name, content] of Object.entries(FOLDER))
    writeFileSync(
      path.join(installed, 'src/language/lt', name),
      typeof content === 'string' ? content : JSON.stringify(content),
    );
});

function run(
  line: readonly string[],
  cwd: string,
  locale: string,
): Promise<{ readonly code: number | null; readonly out: string }> {
  return new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [path.join(installed, 'dist/main.js'), ...line], {
      cwd,
      env: { ...process.env, LC_ALL: locale, SOURCE_DATE_EPOCH: '1717200000' },
    });
    let out = '';
    for (const stream of [child.stdout, child.stderr])
      stream.on('data', (text) => {
        out += text;
      });
    child.once('error', reject);
    child.once('close', (code) => resolve({ code, out }));
  });
}

describe('a language that is a folder and nothing else', () => {
  it('has its own order of words, forms of the plural, dates, numbers and lists', () => {
    const languages = loadLanguages(path.join(installed, 'src/language'));
    expect(languages.map((one) => one.tag)).toEqual(['en', 'fr', 'lt']);
    const { say } = sayerIn(languages[2] as (typeof languages)[number]);
    const day = sayDay(dayOf(1926, 5, 12), 'day');
    expect(say(day)).toBe('1926 m. gegužės 12 d.');
    expect(say(phrase('{0}: dated {1}', phrase('“{0}”', 'A'), day))).toBe('1926 m. gegužės 12 d. – tada „A“');
    const until = (precision: 'day' | 'year') => sayBounds(null, { day: dayOf(1926, 5, 12), precision, about: false });
    expect([until('day'), until('year')].map(say)).toEqual(['iki 1926 m. gegužės 12 d.', 'ligi 1926']);
    const entries = (count: number) => phrase('{0, plural, one {One entry} other {# entries}}', count);
    expect([1, 2, 10, 21].map((count) => say(entries(count)))).toEqual([
      '1 įrašas',
      '2 įrašai',
      '10 įrašų',
      '21 įrašas',
    ]);
    expect(say(measured(2.5, 1))).toBe('2,5');
    // What the folder does not hold is said in English.
    expect(say(phrase('no limit known'))).toBe('no limit known');
  });

  it('is spoken by the published program: on the terminal, and on the pages of a site', async () => {
    const folder = smallWorkspace(home);
    expect((await run(['check'], folder, 'lt_LT.UTF-8')).out).toMatch(/0 klaidų \| \d+ abejon/);
    expect((await run(['check'], folder, 'C')).out).toContain('no errors');
    const built = await run(['build', '--language', 'lt', '--out', 'out'], folder, 'C');
    expect(built).toMatchObject({ code: 0 });
    const page = (name: string): string => readFileSync(path.join(folder, 'out', name), 'utf8');
    expect(page('index.html')).toContain('<html lang="lt">');
    expect(page('chronology.html')).toContain('<h1>Laiko eilė</h1>');
    expect(page('chronology.html')).toContain('Beveik viskas angliškai.');
    expect(page('method.html')).toContain('<h2 id="grades">Laipsniai</h2>');
    expect(page('register/events.html')).toMatch(/įraš/);
  });
});
