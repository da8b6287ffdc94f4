import type { JSX } from 'preact';
import { speakingFor } from '../../src/language/languages.ts';
import { sentLanguage } from '../../src/language/sent-language.ts';
import { titleOf } from '../../src/model/catalogue.ts';
import type { Entry } from '../../src/model/entry.ts';
import { argumentHtml } from '../../src/publish/argument-html.ts';
import { readArgument } from '../../src/reading/argument.ts';
import { answerTo } from '../../src/reports/answer.ts';
import { sayDate } from '../../src/reports/say-entry.ts';
import { behindOf } from '../../src/reports/source-book.ts';
import { withoutAsker } from '../../src/typeset/asker.ts';
import { type Change, changesSince } from '../../src/typeset/changes.ts';
import { documentMarkdown } from '../../src/typeset/markdown.ts';
import type { PageContext } from '../context.ts';
import { say, term, words } from '../say.ts';
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
      {document.draft === null ? null : <p class="draft-mark">{document.draft}</p>}
      <h1>{title}</h1>
      {named && sent !== null ? (
        <Sent page={page} inquiry={inquiry} text={sent} changes={changesIn(page, inquiry, sent)} />
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

/** What would be said otherwise today, composed in the language of what was sent. */
function changesIn(page: PageContext, inquiry: Entry<'inquiry'>, sent: string): readonly Change[] {
  const tag = sentLanguage(sent);
  return speakingFor(tag === null ? page.file.settings.languages : [tag], () => {
    const { document, facts } = answerTo(inquiry, page.file.catalogue, (audience) => page.fileFor(audience, tag));
    return changesSince(sent, documentMarkdown(document, behindOf(facts)));
  });
}

function Sent({
  page,
  inquiry,
  text,
  changes,
}: {
  readonly page: PageContext;
  readonly inquiry: Entry<'inquiry'>;
  readonly text: string;
  readonly changes: readonly Change[];
}): JSX.Element {
  const { tree } = readArgument({ file: 'sent', text });
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
        <h2>{say('What would be said otherwise today')}</h2>
        {changes.length === 0 ? <p>{say('Nothing.')}</p> : null}
        {changes.map(({ heading, was, is }) => (
          <>
            <h3>{heading}</h3>
            {was.map((words) => (
              <p class="change">
                <span class="change-word">{say('Said then:')}</span> <del>{words}</del>
              </p>
            ))}
            {is.map((words) => (
              <p class="change">
                <span class="change-word">{say('Today:')}</span> <ins>{words}</ins>
              </p>
            ))}
          </>
        ))}
      </section>
      <section>
        <h2>{say('As it was sent')}</h2>
        <div class="report" dangerouslySetInnerHTML={{ __html: argumentHtml(body, inquiry.id, () => null, 1) }} />
      </section>
    </>
  );
}
