import type { JSX } from 'preact';
import { entryPath } from '../../src/publish/page-paths.ts';
import type { Block, Passage, ReportDocument } from '../../src/reports/document.ts';
import type { PageContext } from '../context.ts';
import { Scroll } from './parts.tsx';

/** A report as part of a page: every passage with small links to the entries that it rests on. */
export function DocumentPart({
  page,
  document,
  picture,
}: {
  readonly page: PageContext;
  readonly document: ReportDocument;
  /** Address of a picture in the site. */
  picture?(key: string): string;
}): JSX.Element {
  return (
    <div class="report" lang={document.language}>
      {document.blocks.map((block) => (
        <BlockPart page={page} block={block} picture={picture} />
      ))}
    </div>
  );
}

function BlockPart({
  page,
  block,
  picture,
}: {
  readonly page: PageContext;
  readonly block: Block;
  readonly picture: ((key: string) => string) | undefined;
}): JSX.Element {
  switch (block.kind) {
    case 'heading':
      return block.level === 2 ? <h2>{block.words}</h2> : <h3>{block.words}</h3>;
    case 'paragraph':
      return (
        <p>
          <Said page={page} passage={block.passage} />
        </p>
      );
    case 'list':
      return (
        <ul>
          {block.passages.map((one) => (
            <li>
              <Said page={page} passage={one} />
            </li>
          ))}
        </ul>
      );
    case 'terms':
      return (
        <dl class="facts">
          {block.terms.map(({ name, passage }, i) => (
            <>
              <dt>{name}</dt>
              <dd>
                <Said page={page} passage={passage} next={block.terms[i + 1]?.passage} />
              </dd>
            </>
          ))}
        </dl>
      );
    case 'table':
      return (
        <Scroll label={block.caption}>
          <table class={block.head.length > 3 ? 'stacking' : undefined}>
            <caption>{block.caption}</caption>
            <thead>
              <tr>
                {block.head.map((words) => (
                  <th scope="col">{words}</th>
                ))}
              </tr>
            </thead>
            <tbody>
              {block.rows.map((row) => (
                <tr>
                  {row.map((one, column) => (
                    <td>
                      {one.words === '' || block.head.length <= 3 ? null : (
                        <span class="cell-label">{block.head[column]} </span>
                      )}
                      <Said page={page} passage={one} />
                    </td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        </Scroll>
      );
    case 'figure':
      return (
        <figure>
          {picture ? (
            <img
              class={block.widthMm === null ? 'report-picture' : 'report-picture plate-picture'}
              src={page.href(picture(block.picture))}
              alt={block.alt}
            />
          ) : (
            <p class="aside">{block.alt}</p>
          )}
          <figcaption>
            <Said page={page} passage={block.caption} />
          </figcaption>
        </figure>
      );
  }
}

/** The words, then the ids that they rest on; an id that this reader may not see is left out. */
function Said({
  page,
  passage,
  next,
}: {
  readonly page: PageContext;
  readonly passage: Passage;
  /** What stands after it in a list of terms; ids that it repeats are told there. */
  readonly next?: Passage | undefined;
}): JSX.Element {
  const isRepeated = next !== undefined && next.rests.join(' ') === passage.rests.join(' ');
  const shown = (isRepeated ? [] : passage.rests).filter((id) => page.file.catalogue.resolve(id));
  return (
    <>
      {passage.words}
      {shown.map((id) => (
        <>
          {' '}
          <a class="ref" href={page.href(entryPath(id))}>
            {id}
          </a>
        </>
      ))}
    </>
  );
}
