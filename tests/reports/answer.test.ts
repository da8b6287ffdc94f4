import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import type { Access } from '../../src/base/access.ts';
import { answerTo, draftWords } from '../../src/reports/answer.ts';
import { passagesOf } from '../../src/reports/document.ts';
import { behindOf } from '../../src/reports/source-book.ts';
import { withoutAsker } from '../../src/typeset/asker.ts';
import { changesSince } from '../../src/typeset/changes.ts';
import { documentMarkdown } from '../../src/typeset/markdown.ts';
import { computeFiles, entries, filesOf, ROOT } from '../workspace.ts';

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
      /^(?:IN-|This answer is made|14 May|the diocese|letter of|Three panels|not recorded|No enquiry|Not found in|letters of|the present|Letters from|R\. Oduya|M\. Kestrel|not yet|Dates of laws here|Not applied)/;
    const passages = passagesOf(document);
    expect(passages.length).toBeGreaterThan(60);
    expect(passages.filter((one) => one.rests.length === 0 && !free.test(one.words)).map((one) => one.words)).toEqual(
      [],
    );
    expect(passages.flatMap((one) => one.rests).filter((id) => !facts.catalogue.resolve(id))).toEqual([]);
    expect(passages.flatMap((one) => one.cites).filter((id) => !facts.statement(id))).toEqual([]);
  });

  it('is a draft until somebody has approved it', () => {
    expect(answered(demo, 'IN-2024-1').document.draft).toBe(draftWords());
    expect(answered(demo, 'IN-2024-1').text).toContain(`> **${draftWords()}**`);
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
  const { text } = answered(entries(SMALL), 'IN-1');
  const sha256 = createHash('sha256').update(text).digest('hex');
  const sent: Record<string, string> = {
    ...entries({
      ...SMALL,
      'IN-1': `${SMALL['IN-1']}\napproved-by: the director\nsent-file: { file: sent/IN-1.md, sha256: ${sha256} }`,
    }),
    'sent/IN-1.md': text,
  };

  it('is checked: there, unchanged, every statement it cites still there and saying the same', () => {
    const errors = (files: Record<string, string>): readonly string[] =>
      computeFiles(files)
        .problems.filter((one) => one.severity === 'error')
        .map((one) => one.code);
    expect(errors(sent)).toEqual([]);
    expect(errors({ ...sent, 'sent/IN-1.md': `${text} ` })).toEqual(['sent-file-changed']);
    const { 'sent/IN-1.md': _, ...gone } = sent;
    expect(errors(gone)).toEqual(['sent-file-missing']);
    const regraded = (sent['entries/EV-a.md'] ?? '').replace('grade: probable', 'grade: possible');
    expect(errors({ ...sent, 'entries/EV-a.md': regraded })).toEqual([]);
    const redated = (sent['entries/EV-a.md'] ?? '').replace('1926', '1928');
    expect(errors({ ...sent, 'entries/EV-a.md': redated })).toEqual(['cited-changed']);
    expect(errors({ ...sent, 'entries/EV-a.md': regraded.replace(/stated:.*\n/, '') })).toEqual(['cited-gone']);
  });

  it('later changes are told against it, and nothing else', () => {
    expect(changesSince(text, text)).toEqual([]);
    const later = answered(
      entries({
        ...SMALL,
        'EV-a': `${SMALL['EV-a']}`.replace(
          'grade: probable }',
          'grade: probable }, { date: "1923", sense: not-before, grade: probable }',
        ),
        'SE-a':
          'type: search\ntitle: A look\nrepository: An archive\nfor: permits\noutcome: not found in what was searched\nabout: [EV-a]',
      }),
      'IN-1',
    ).text;
    expect(changesSince(text, later)).toEqual([
      {
        heading: '1. When was it taken down?',
        was: ['Taken down: until 1926, on probable statements. [EV-a]'],
        is: ['Taken down: 1923–1926, on probable statements. [EV-a]'],
      },
      {
        heading: 'What is known, in order of date',
        was: ['Taken down: until 1926 (probable). [EV-a]'],
        is: ['Taken down: 1923–1926 (probable). [EV-a]'],
      },
      {
        heading: 'What was searched',
        was: ['No search that may be shown here is recorded.'],
        is: [
          'An archive, looking for permits: not found in what was searched. [SE-a]',
          'Not found in what was searched is not the same as not there.',
        ],
      },
    ]);
  });

  it('the demonstration file keeps one as sent, with changes since', () => {
    const { computed, text: today } = answered(demo, 'IN-2021-3');
    const kept = computed.sent.get('sent/IN-2021-3.md')?.text ?? '';
    const changes = changesSince(kept, today);
    expect(changes.map((one) => one.heading)).toContain('What was searched');
    expect(changes.flatMap((one) => one.is).some((words) => words.includes('Archive of the ephorate'))).toBe(true);
    expect(changes.flatMap((one) => one.was).some((words) => words.includes('Asked by'))).toBe(false);
  });
});
