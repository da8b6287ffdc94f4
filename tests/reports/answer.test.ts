import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import type { Access } from '../../src/base/access.ts';
import type { Language } from '../../src/language/language.ts';
import { citedIn } from '../../src/letters/check-letters.ts';
import { changesToday, namedIn } from '../../src/letters/letter-today.ts';
import { formatLetterValues, letterValuesOf, readLetterValues } from '../../src/letters/letter-values.ts';
import type { Entry } from '../../src/model/entry.ts';
import { compute } from '../../src/pipeline.ts';
import { answerTo, draftWords } from '../../src/reports/answer.ts';
import { passagesOf } from '../../src/reports/document.ts';
import { behindOf } from '../../src/reports/source-book.ts';
import { withoutAsker } from '../../src/typeset/asker.ts';
import { documentMarkdown } from '../../src/typeset/markdown.ts';
import { english, everyMessage, inEnglish } from '../spoken.ts';
import { computeFiles, entries, filesOf, ROOT, workspaceOf } from '../workspace.ts';

/** The answer to an inquiry as a reader would see it composed, and its text. */
function answered(files: Record<string, string>, id: string, viewer: Access = 'restricted') {
  const computed = computeFiles(files, viewer);
  const inquiry = computed.file.catalogue.ofType('inquiry').find((one) => one.id === id);
  if (!inquiry) throw new Error(`no ${id}`);
  const { document, facts } = answerTo(inquiry, computed.file.catalogue, computed.fileFor);
  return { document, facts, text: documentMarkdown(document, behindOf(facts)), computed };
}

const demo = filesOf(ROOT);

const SMALL = {
  'OB-a': 'type: object\ntitle: A panel\nobject-type: wall painting',
  'EV-a':
    'type: event\nkind: removal\ntitle: Taken down\nobjects: [OB-a]\nstated: [{ date: "1926", sense: by, grade: probable }]',
  'SO-secret': 'type: source\nkind: letter\ntitle: CANARY-source\naccess: restricted',
  'CL-secret':
    'type: claim\ntitle: CANARY-claim\naccess: restricted\nabout: EV-a\nsays: { date: "1920", sense: not-before }\nsource: SO-secret\ngrade: probable',
  'IN-1':
    'type: inquiry\ntitle: An inquiry\naccess: internal\nreceived: "2024-05-14"\nfrom: CANARY asker\nauthority: CANARY authority\nobjects: [OB-a]\nstate: in research\nquestions: [{ text: When was it taken down?, answer: By 1926, grade: probable, rests-on: [EV-a, CL-secret] }]',
};

describe('the answer to an inquiry', () => {
  it('has all parts of the composed answer in their order (design, custody.md: inquiry)', () => {
    const heads = answered(demo, 'IN-2024-1').document.blocks.flatMap((one) =>
      one.kind === 'heading' && one.level === 2 ? [one.words] : [],
    );
    expect(heads).toEqual([
      'What was asked, and the short answer',
      'The object',
      'Present custody',
      'How it was acquired, and with what enquiries',
      'What is known, in order of date',
      'What is not known',
      'What was searched',
      'Statements that disagree',
      'Title, as asserted',
      'What others have answered',
      'Reference dates',
      'Exhibitions and publications',
      'What is withheld',
      'Next steps',
      'Who answered',
    ]);
  });

  it('every passage that states a fact of the file carries entries that are there', () => {
    const { document, facts } = answered(demo, 'IN-2024-1');
    const free =
      /^(?:IN-|This answer is made|14 May|1 September|the diocese|letter of|Three panels|not recorded|No enquiry|Not found in|letters of|the present|Letters from|R\. Oduya|M\. Kestrel|not yet|Dates of laws here|Not applied)/;
    const passages = passagesOf(document);
    expect(passages.length).toBeGreaterThan(60);
    expect(passages.filter((one) => one.rests.length === 0 && !free.test(one.words)).map((one) => one.words)).toEqual(
      [],
    );
    expect(passages.flatMap((one) => one.rests).filter((id) => !facts.catalogue.resolve(id))).toEqual([]);
    expect(passages.flatMap((one) => one.cites).filter((id) => !facts.statement(id))).toEqual([]);
  });

  it('is a draft until somebody has approved it', () => {
    expect(answered(demo, 'IN-2024-1').document.draft).toBe(draftWords(english));
    expect(answered(demo, 'IN-2024-1').text).toContain(`> **${draftWords(english)}**`);
    expect(answered(demo, 'IN-2021-3').document.draft).toBe(null);
  });

  it('is made from what the one who asks may see: nothing restricted enters it, not even through a date', () => {
    const { text } = answered(entries(SMALL), 'IN-1');
    expect(text).not.toContain('CANARY-source');
    expect(text).not.toContain('CANARY-claim');
    expect(text).toContain('Taken down: until 1926 (probable)');
    const open = { ...SMALL, 'IN-1': `${SMALL['IN-1']}\nanswered-from: restricted` };
    expect(answered(entries(open), 'IN-1').text).toContain('Taken down: 1920–1926 (probable)');
    // A reader below never sees more than he may, whatever the answer was made from.
    expect(answered(entries(open), 'IN-1', 'internal').text).toContain('Taken down: until 1926 (probable)');
  });

  it('who asked is for restricted readers only', () => {
    expect(answered(entries(SMALL), 'IN-1').text).toContain('CANARY asker');
    const { text } = answered(entries(SMALL), 'IN-1', 'internal');
    expect(text).not.toContain('CANARY asker');
    expect(text).not.toContain('CANARY authority');
    expect(text.match(/shown to restricted readers only/g)).toHaveLength(2);
    const open = { ...SMALL, 'IN-1': SMALL['IN-1'].replace(', CL-secret', '') };
    expect(withoutAsker(answered(entries(open), 'IN-1').text)).toBe(answered(entries(open), 'IN-1', 'internal').text);
  });

  it('is the same text twice, and words of entries never become Markdown', () => {
    expect(answered(demo, 'IN-2024-1').text).toBe(answered(demo, 'IN-2024-1').text);
    const hostile = {
      ...SMALL,
      'OB-a': 'type: object\ntitle: "# [x](javascript:alert(1)) <b>*a*</b>"\nobject-type: 1. a',
    };
    const { text } = answered(entries(hostile), 'IN-1');
    expect(text).toContain('\\# \\[x\\](javascript:alert(1)) \\<b\\>\\*a\\*\\</b\\>');
  });
});

describe('what was sent', () => {
  const composed = answered(entries(SMALL), 'IN-1');
  const { text } = composed;
  const sum = (words: string): string => createHash('sha256').update(words).digest('hex');
  const { cites, rests } = namedIn(composed.document);
  const values = formatLetterValues(letterValuesOf(composed.facts, cites, rests, '0.0.0'));
  /** The file with the letter in it; `kept`: with the values that it rests on. */
  const sentWith = (kept: boolean, others: Readonly<Record<string, string>> = {}): Record<string, string> => ({
    ...entries({
      ...SMALL,
      ...others,
      'IN-1': `${SMALL['IN-1']}\napproved-by: the director\nsent-file: { file: entries/sent/IN-1.md, sha256: ${sum(text)}${kept ? `, values-sha256: ${sum(values)}` : ''} }`,
    }),
    'entries/sent/IN-1.md': text,
    ...(kept ? { 'entries/sent/IN-1.json': values } : {}),
  });
  const sent = sentWith(true);
  const codes = (files: Record<string, string>, severity = 'error'): readonly string[] =>
    computeFiles(files)
      .problems.filter((one) => one.severity === severity)
      .map((one) => one.code);
  const edited = (change: (event: string) => string): Record<string, string> =>
    sentWith(true, { 'EV-a': change(SMALL['EV-a'] ?? '') });
  const changesNow = (files: Record<string, string>) => {
    const now = answered(files, 'IN-1');
    return changesToday(now.computed.sent.get('entries/sent/IN-1.md') ?? null, now.facts, now.document)?.changes.map(
      (one) => ({
        of: inEnglish(one.of),
        was: one.was === null ? null : inEnglish(one.was),
        is: one.is === null ? null : inEnglish(one.is),
      }),
    );
  };

  it('is checked: there, unchanged, every statement it cites still there, saying the same and as sure', () => {
    expect(cites).toEqual(['EV-a#1']);
    expect(codes(sent)).toEqual([]);
    expect(codes({ ...sent, 'entries/sent/IN-1.md': `${text} ` })).toEqual(['sent-file-changed']);
    expect(codes({ ...sent, 'entries/sent/IN-1.json': `${values} ` })).toEqual(['sent-file-changed']);
    const { 'entries/sent/IN-1.md': _, ...gone } = sent;
    expect(codes(gone)).toEqual(['sent-file-missing']);
    const { 'entries/sent/IN-1.json': __, ...withoutValues } = sent;
    expect(codes(withoutValues)).toEqual(['sent-file-missing']);
    const regraded = edited((event) => event.replace('grade: probable', 'grade: possible'));
    expect(codes(regraded)).toEqual([]);
    expect(codes(regraded, 'doubt')).toContain('cited-changed');
    expect(codes(edited((event) => event.replace('1926', '1928')))).toEqual(['cited-changed']);
    expect(codes(edited((event) => event.replace(/stated:.*/, '')))).toEqual(['cited-gone']);
  });

  it('a changed day is told with both values; a new title, or a sentence reworded or translated, is no change', () => {
    const redated = computeFiles(edited((event) => event.replace('1926', '1928'))).problems.find(
      (one) => one.code === 'cited-changed',
    );
    expect(redated && inEnglish(redated.message)).toMatch(/as “.*1926.* \(probable\)”, and now it says “.*1928/);
    const renamed = edited((event) => event.replace('title: Taken down', 'title: Removed from the wall'));
    expect(codes(renamed)).toEqual([]);
    expect(changesNow(renamed)).toEqual([]);
    // Every message reworded, as another version or another language would have it.
    const reworded: Language = { ...english.language, messages: everyMessage((message) => `Otherwise: ${message}`) };
    const computed = compute(workspaceOf(sent), 'restricted', { languages: [reworded], spoken: reworded });
    expect(computed.file.sayer.words('Chronology')).toBe('Otherwise: Chronology');
    expect(computed.problems.filter((one) => one.severity === 'error')).toEqual([]);
    const { document, facts } = answerTo(
      computed.file.catalogue.get('IN-1') as Entry<'inquiry'>,
      computed.file.catalogue,
      computed.fileFor,
    );
    expect(documentMarkdown(document, behindOf(facts))).toContain('Otherwise:');
    expect(changesToday(computed.sent.get('entries/sent/IN-1.md') ?? null, facts, document)?.changes).toEqual([]);
  });

  it('what it rests on is told where it is otherwise: statements, dates, entries, what keys hold', () => {
    expect(changesNow(sent)).toEqual([]);
    const later = sentWith(true, {
      'EV-a': `${SMALL['EV-a']}`.replace(
        'grade: probable }',
        'grade: probable }, { date: "1923", sense: not-before, grade: probable }',
      ),
      'SE-a':
        'type: search\ntitle: A look\nrepository: An archive\nfor: permits\noutcome: not found in what was searched\nabout: [EV-a]',
    });
    expect(changesNow(later)).toEqual([
      { of: 'Statement EV-a#2', was: null, is: '“Taken down”: not before 1923 (probable)' },
      { of: '“Taken down” [EV-a], when', was: 'until 1926', is: '1923–1926' },
      { of: '“A look” [SE-a]', was: null, is: 'named' },
    ]);
  });

  it('one that keeps only sentences is not compared, and never called changed', () => {
    const old = sentWith(false);
    expect(codes(old)).toEqual([]);
    expect(codes(old, 'note')).toEqual(['sent-not-comparable']);
    expect(codes(sentWith(false, { 'EV-a': (SMALL['EV-a'] ?? '').replace('1926', '1928') }))).toEqual([]);
    expect(codes(sentWith(false, { 'EV-a': (SMALL['EV-a'] ?? '').replace(/stated:.*/, '') }))).toEqual(['cited-gone']);
    expect(changesNow(old)).toBeUndefined();
  });

  it('values that are none, or hold something else, are not compared', () => {
    for (const broken of ['', '{}', 'null', values.replace('kerfmark-letter/1', 'kerfmark-letter/9')]) {
      const files = {
        ...sent,
        'entries/sent/IN-1.json': broken,
        'entries/IN-1.md': (sent['entries/IN-1.md'] ?? '').replace(sum(values), sum(broken)),
      };
      expect(codes(files), broken.slice(0, 30)).toEqual([]);
      expect(codes(files, 'note'), broken.slice(0, 30)).toEqual(['sent-not-comparable']);
    }
  });

  it('the demonstration file keeps one as sent, with the values of every statement that it cites', () => {
    const kept = answered(demo, 'IN-2021-3').computed.sent.get('entries/sent/IN-2021-3.md');
    const read = readLetterValues(kept?.values?.text ?? '');
    expect(read?.statements.map((one) => one.id)).toEqual([...citedIn(kept?.text ?? '').keys()].sort());
    expect(read?.statements.length).toBeGreaterThan(50);
  });
});
