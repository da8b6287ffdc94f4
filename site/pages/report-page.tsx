import type { JSX } from 'preact';
import type { Entry } from '../../src/model/entry.ts';
import { reportPicturePath } from '../../src/publish/page-paths.ts';
import { bibliographyEntry, collectionEntry, isPublished } from '../../src/reports/citation.ts';
import { passagesOf, type ReportDocument } from '../../src/reports/document.ts';
import { sourceBookOf } from '../../src/reports/source-book.ts';
import type { PageContext } from '../context.ts';
import { colon, say, words } from '../say.ts';
import { DocumentPart } from './document-part.tsx';
import { Layout } from './layout.tsx';
import { EntryLink } from './parts.tsx';

/** A provenance file or an appendix as a page: the same document that is printed. */
export function ReportPage({
  page,
  object,
  document,
}: {
  readonly page: PageContext;
  readonly object: Entry<'object'>;
  readonly document: ReportDocument;
}): JSX.Element {
  const title = `${document.subtitle}${colon()}${document.title}`;
  return (
    <Layout
      page={page}
      title={title}
      standing={
        <>
          {say('{0} of {1}.', document.subtitle, <EntryLink page={page} id={object.id} />)}
          {page.file.catalogue.audience === 'public'
            ? ''
            : words(' The commands “kerfmark file” and “kerfmark appendix” write it as PDF and DOCX.')}
        </>
      }
    >
      <h1>{document.title}</h1>
      <p class="lead">{document.subtitle}</p>
      {document.draft === null ? null : <p class="draft-mark">{document.draft}</p>}
      <DocumentPart page={page} document={document} picture={(key) => reportPicturePath(object.id, key)} />
      <Cited page={page} document={document} />
    </Layout>
  );
}

/** Sources that the document rests on: archives first, then published works. */
function Cited({
  page,
  document,
}: {
  readonly page: PageContext;
  readonly document: ReportDocument;
}): JSX.Element | null {
  const book = sourceBookOf(page.file);
  const ids = [...new Set(passagesOf(document).flatMap((one) => one.rests))].filter((id) => book.cited(id));
  if (ids.length === 0) return null;
  return (
    <section>
      <h2>{say('Sources')}</h2>
      <ul>
        {ids.map((id) => {
          const source = book.cited(id);
          return (
            <li>
              <EntryLink page={page} id={id} />
              {source && !isPublished(source) ? `. ${collectionEntry(page.file.sayer, source)}` : ''}
              {source && isPublished(source) ? (
                <>
                  {'. '}
                  {bibliographyEntry(page.file.sayer, source).map((one) =>
                    typeof one === 'string' ? one : <cite>{one.italic}</cite>,
                  )}
                </>
              ) : null}
            </li>
          );
        })}
      </ul>
    </section>
  );
}
