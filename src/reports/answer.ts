import { type Access, lowerAccess } from '../base/access.ts';
import type { CaseFile } from '../findings/case-file.ts';
import { answeredFor } from '../findings/inquiry-doubts.ts';
import { missingForAnswer } from '../findings/missing-for-answer.ts';
import type { Sayer } from '../language/sayer.ts';
import { type Catalogue, titleOf } from '../model/catalogue.ts';
import type { Entry } from '../model/entry.ts';
import { type Block, list, paragraph, passage, type ReportDocument, section, type Term } from './document.ts';
import { footOf, type Matter, matterOf } from './matter.ts';
import { acquisition, identification, known, presentCustody } from './parts-known.ts';
import { conflicts, orderToReferences, publications, searches, titles, unknown, voices } from './parts-open.ts';
import { nameOf, sayDate, sayEntry } from './say-entry.ts';

/** What the parts of an answer are made from. */
interface AnswerMatter extends Matter {
  readonly inquiry: Entry<'inquiry'>;
  /** Where those are named who asked and who answer. */
  readonly people: Catalogue;
}

/** Words on every page of an answer that nobody has approved, or that cannot be given. */
export function draftWords(sayer: Sayer): string {
  const { words } = sayer;
  return words('Draft, not the museum’s answer');
}

/**
 * Composes the answer to an inquiry out of the file: what is known, what is not, what was searched, and what is withheld.
 *
 * @param inquiry as the reader may see it: who asked, and under what authority, is left out for all but `restricted` readers
 * @param file the file for the audience of `answeredFor`; nothing above it can enter the answer
 * @param people the catalogue of the reader, for the names of those who asked and answer
 */
function composeAnswer(inquiry: Entry<'inquiry'>, file: CaseFile, people: Catalogue): ReportDocument {
  const { words, language } = file.sayer;
  const matter: AnswerMatter = { ...matterOf(file, inquiry.keys.objects), inquiry, people };
  return {
    id: inquiry.id,
    title: titleOf(inquiry, file.settings.languages),
    subtitle: words('Answer to an inquiry'),
    isLong: false,
    language: language.tag,
    draft:
      inquiry.keys['approved-by'] && missingForAnswer(inquiry, file.catalogue).length === 0
        ? null
        : draftWords(file.sayer),
    foot: footOf(file, inquiry.id),
    blocks: [
      head(matter),
      ...(file.catalogue.holdsMore ? [paragraph(shownOnly(file.sayer))] : []),
      ...questions(matter),
      ...identification(matter),
      ...presentCustody(matter),
      ...acquisition(matter),
      ...known(matter),
      ...unknown(matter),
      ...searches(matter),
      ...conflicts(matter),
      ...titles(matter),
      ...voices(matter),
      ...orderToReferences(matter),
      ...publications(matter),
      ...withheld(matter),
      ...nextSteps(matter),
      ...signatures(matter),
    ],
  };
}

/**
 * The answer as it would be composed today, and the file that its facts come from: never more than the reader may see.
 *
 * @param fileFor the workspace computed for an audience
 */
export function answerTo(
  inquiry: Entry<'inquiry'>,
  people: Catalogue,
  fileFor: (audience: Access) => CaseFile,
): { readonly document: ReportDocument; readonly facts: CaseFile } {
  const facts = fileFor(lowerAccess(answeredFor(inquiry), people.audience));
  return { document: composeAnswer(inquiry, facts, people), facts };
}

/** Said where entries are kept back, without telling which. */
function shownOnly(sayer: Sayer): string {
  const { words } = sayer;
  return words(
    'This answer is made from the entries that may be shown to the one who asks. Others are kept back; dates and gaps rest on the shown entries only, and what is not shown is not called unknown.',
  );
}

function head({ inquiry, file, people, asked }: AnswerMatter): Block {
  const { words } = file.sayer;
  const { keys } = inquiry;
  const hidden = (inquiry.withheld ?? []).includes('from') ? words('shown to restricted readers only') : undefined;
  const rows: readonly (readonly [string, string | undefined])[] = [
    [words('Reference'), inquiry.id],
    [words('Received'), sayDate(file, keys.received)],
    [words('Answer due'), keys.due === undefined ? undefined : sayDate(file, keys.due)],
    [words('Asked by'), keys.from === undefined ? hidden : personName(people, keys.from)],
    [words('Under what authority'), keys.authority ?? hidden],
    [words('About'), asked.map((id) => nameOf(file, id)).join(file.sayer.semicolon)],
  ];
  return {
    kind: 'terms',
    terms: rows.flatMap(([name, value]): readonly Term[] =>
      value === undefined ? [] : [{ name, passage: passage(value) }],
    ),
  };
}

/** A party by its title; words as they stand. */
function personName(people: Catalogue, idOrWords: string): string {
  const entry = people.get(idOrWords);
  return entry ? titleOf(entry) : idOrWords;
}

function questions({ inquiry, file }: AnswerMatter): readonly Block[] {
  const { term, words } = file.sayer;
  const asked = inquiry.keys.questions ?? [];
  const blocks = asked.flatMap((one, i): readonly Block[] => {
    const question = typeof one === 'string' ? { text: one } : one;
    const rests = ('rests-on' in question ? (question['rests-on'] ?? []) : []).filter((id) =>
      file.catalogue.resolve(id),
    );
    const answer = 'answer' in question ? question.answer : undefined;
    const grade = 'grade' in question && question.grade ? ` (${term(question.grade)})` : '';
    return [
      { kind: 'heading', level: 3, words: `${i + 1}. ${question.text}` },
      answer === undefined
        ? paragraph(words('Not yet answered.'))
        : paragraph(`${answer.replace(/\.\s*$/, '')}${grade}.`, rests),
      ...list(rests.map((id) => sayEntry(file, id))),
    ];
  });
  return section(words('What was asked, and the short answer'), blocks, words('No question is written down.'));
}

function withheld({ file, inquiry }: AnswerMatter): readonly Block[] {
  const { words } = file.sayer;
  const said = (inquiry.keys.withheld ?? []).map((one) => passage(words('{0}: {1}.', one.class, one.ground)));
  return section(words('What is withheld'), list(said), words('Nothing is stated to be withheld from this answer.'));
}

function nextSteps({ file }: AnswerMatter): readonly Block[] {
  const { words } = file.sayer;
  const open = file.catalogue.ofType('question').filter((one) => one.keys.state !== 'answered');
  const steps = open.flatMap((one) =>
    one.keys['would-settle-it'] ? [passage(`${titleOf(one)} ${sentence(one.keys['would-settle-it'])}`, [one.id])] : [],
  );
  const { contact, 'how-to-respond': how } = file.catalogue.workspace?.keys ?? {};
  const whom = contact ? [paragraph(words('{0}Write to {1}.', how ? `${how} ` : '', contact))] : [];
  return section(words('Next steps'), [...list(steps), ...whom]);
}

function sentence(words: string): string {
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}`.replace(/[^.?!]$/, '$&.');
}

function signatures({ inquiry, file, people }: AnswerMatter): readonly Block[] {
  const { words } = file.sayer;
  const { keys } = inquiry;
  const rows: readonly (readonly [string, string | undefined])[] = [
    [words('Answered by'), keys['answered-by']],
    [words('Reviewed by'), keys['reviewed-by']],
    [words('Approved by'), keys['approved-by']],
  ];
  const terms = rows.map(([name, who]): Term => {
    const when = name === words('Approved by') && keys['approved-on'] ? `, ${sayDate(file, keys['approved-on'])}` : '';
    return { name, passage: passage(who ? `${personName(people, who)}${when}` : words('not yet')) };
  });
  return section(words('Who answered'), [{ kind: 'terms', terms }], '');
}
