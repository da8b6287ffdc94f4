import type { JSX } from 'preact';
import { ANSWER_DOUBTS } from '../../src/findings/inquiry-doubts.ts';
import { changesToday, type LetterToday } from '../../src/letters/letter-today.ts';
import { titleOf } from '../../src/model/catalogue.ts';
import type { Entry } from '../../src/model/entry.ts';
import { argumentHtml } from '../../src/publish/argument-html.ts';
import { readArgument } from '../../src/reading/argument.ts';
import { answerTo, draftWords } from '../../src/reports/answer.ts';
import { sayDate } from '../../src/reports/say-entry.ts';
import { withoutAsker } from '../../src/typeset/asker.ts';
import type { PageContext } from '../context.ts';
import { footnoteWords, said, say, term, words } from '../say.ts';
import { DocumentPart } from './document-part.tsx';
import { Layout } from './layout.tsx';
import { EntryLink } from './parts.tsx';

/** The answer to an inquiry: as sent, with what has changed since; else as the file would answer today. */
export function AnswerPage({
  page,
  inquiry,
}: {
  readonly page: PageContext;
  readonly inquiry: Entry<'inquiry'>;
}): JSX.Element {
  const { document, facts } = answerTo(inquiry, page.file.catalogue, page.fileFor);
  const title = words('Answer: {0}', titleOf(inquiry, page.file.settings.languages));
  const named = inquiry.keys['sent-file'];
  const kept = named ? page.sent.get(named.file) : undefined;
  // Another audience than the one it was composed for would read more, or see changes that are none.
  const whole = facts.catalogue.audience === (inquiry.keys['answered-from'] ?? 'public') ? kept?.text : undefined;
  const isPublic = page.file.catalogue.audience === 'public';
  const mayKnow = page.file.catalogue.audience === 'restricted' || inquiry.keys['may-be-named'];
  const sent = typeof whole !== 'string' || isPublic ? null : mayKnow ? whole : withoutAsker(whole);
  const isApproved = inquiry.keys['approved-by'] !== undefined;
  const isDoubted = page.problems.some((one) => one.entry === inquiry.id && ANSWER_DOUBTS.includes(one.code));
  const draft =
    sent !== null && isApproved ? null : (document.draft ?? (isDoubted ? draftWords(page.file.sayer) : null));
  return (
    <Layout
      page={page}
      title={title}
      standing={
        <>
          {say(
            'Answer to {0}, made from the entries that the audience {1} may see.',
            <EntryLink page={page} id={inquiry.id} />,
            <em>{term(facts.catalogue.audience)}</em>,
          )}
        </>
      }
    >
      {draft === null ? null : <p class="draft-mark">{draft}</p>}
      <h1>{title}</h1>
      {named && sent !== null ? (
        <Sent page={page} inquiry={inquiry} text={sent} today={changesToday(kept ?? null, facts, document)} />
      ) : (
        <>
          {named ? (
            <p class="caution">
              {say(
                'An answer was sent{0}. What stands here is what this file would answer today, not what was sent.',
                inquiry.keys['sent-on'] ? words(' on {0}', sayDate(page.file, inquiry.keys['sent-on'])) : '',
              )}
            </p>
          ) : null}
          <DocumentPart page={page} document={document} />
        </>
      )}
    </Layout>
  );
}

function Sent({
  page,
  inquiry,
  text,
  today,
}: {
  readonly page: PageContext;
  readonly inquiry: Entry<'inquiry'>;
  readonly text: string;
  readonly today: LetterToday | null;
}): JSX.Element {
  const { tree } = readArgument({ file: 'sent', text });
  const limit = limitOf(today);
  const body = { ...tree, children: tree.children.filter((node) => node.type !== 'heading' || node.depth > 1) };
  return (
    <>
      <p class="facts-line">
        {say(
          'Sent{0}; kept as sent in {1}, SHA-256 {2}',
          inquiry.keys['sent-on'] ? words(' on {0}', sayDate(page.file, inquiry.keys['sent-on'])) : '',
          <code>{inquiry.keys['sent-file']?.file}</code>,
          <code>{inquiry.keys['sent-file']?.sha256}</code>,
        )}
      </p>
      <section>
        <h2>{say('What it rests on and is otherwise today')}</h2>
        {limit === null ? null : <p>{limit}</p>}
        {(today?.changes ?? []).map((one) => (
          <>
            <h3>{said(one.of)}</h3>
            {one.was === null ? null : (
              <p class="change">
                <span class="change-word">{say('Then:')}</span> <del>{said(one.was)}</del>
              </p>
            )}
            {one.is === null ? null : (
              <p class="change">
                <span class="change-word">{say('Today:')}</span> <ins>{said(one.is)}</ins>
              </p>
            )}
          </>
        ))}
      </section>
      <section>
        <h2>{say('As it was sent')}</h2>
        <div
          class="report"
          dangerouslySetInnerHTML={{ __html: argumentHtml(body, inquiry.id, () => null, 1, footnoteWords()) }}
        />
      </section>
    </>
  );
}

/** What the list of changes does not tell: that there are none, and what could not be compared. */
function limitOf(today: LetterToday | null): string | null {
  if (today === null)
    return words('It keeps only sentences, so what it rests on cannot be compared with the file of today.');
  const { changes, statementsOnly } = today;
  if (changes.length === 0)
    return statementsOnly
      ? words('No statement that it cites; nothing else of it was kept to compare.')
      : words('Nothing.');
  return statementsOnly ? words('It keeps only the statements that it cites; nothing else of it was compared.') : null;
}
