import type { JSX } from 'preact';
import { renderToString } from 'preact-render-to-string';
import type { Inline } from '../src/reports/inline.ts';
import type { SetBlock, SetDocument, SetPassage } from '../src/typeset/annotate.ts';
import type { Picture } from '../src/typeset/print-data.ts';

/** A document as one HTML file that needs nothing else: style and drawings inside, notes at the end, no script. */
export function standaloneDocument(
  document: SetDocument,
  pictures: readonly Picture[],
  { style, built }: { readonly style: string; readonly built: string },
): string {
  const notes: (readonly Inline[])[] = [];
  const drawings = new Map(pictures.map((one) => [one.key, one.svg]));
  const say = (one: SetPassage): JSX.Element => {
    if (one.note !== null) notes.push(one.note);
    const n = one.note === null ? 0 : notes.length;
    return <SaidPart said={one} n={n} />;
  };
  // The blocks are set before the notes are read, so that every note has its number.
  const body = document.blocks.map((block) => <BlockPart block={block} say={say} drawings={drawings} />);
  const html = renderToString(
    <html lang={document.language}>
      <head>
        <meta charset="utf-8" />
        <meta name="viewport" content="width=device-width, initial-scale=1" />
        <meta
          http-equiv="Content-Security-Policy"
          content="default-src 'none'; style-src 'unsafe-inline'; img-src data:"
        />
        <title>{document.subtitle === '' ? document.title : `${document.title}: ${document.subtitle}`}</title>
        <style dangerouslySetInnerHTML={{ __html: style }} />
      </head>
      <body>
        {document.draft === null ? null : <p class="draft">{document.draft}</p>}
        <main>
          <h1>{document.title}</h1>
          {document.subtitle === '' ? null : <p class="subtitle">{document.subtitle}</p>}
          <p class="facts">
            {document.foot}, {built}
          </p>
          <Later parts={() => body} />
          <Bibliography document={document} />
          <Later parts={() => [<Notes notes={notes} pageWords={document.pageWords} />]} />
        </main>
      </body>
    </html>,
  );
  return `<!doctype html>\n${html}\n`;
}

/** Made when its place in the document is reached. */
function Later({ parts }: { parts(): readonly JSX.Element[] }): JSX.Element {
  return <>{parts()}</>;
}

function Notes({
  notes,
  pageWords,
}: {
  readonly notes: readonly (readonly Inline[])[];
  readonly pageWords: SetDocument['pageWords'];
}): JSX.Element | null {
  if (notes.length === 0) return null;
  return (
    <section class="notes">
      <h2>{pageWords.notes}</h2>
      <ol>
        {notes.map((note, i) => (
          <li id={`note-${i + 1}`}>
            <Runs runs={note} />{' '}
            <a href={`#mark-${i + 1}`} aria-label={`${pageWords.back} ${i + 1}`}>
              ↑
            </a>
          </li>
        ))}
      </ol>
    </section>
  );
}

function Runs({ runs }: { readonly runs: readonly Inline[] }): JSX.Element {
  return <>{runs.map((one) => (typeof one === 'string' ? one : <cite>{one.italic}</cite>))}</>;
}

function SaidPart({ said, n }: { readonly said: SetPassage; readonly n: number }): JSX.Element {
  return (
    <>
      {said.words}
      {n === 0 ? null : (
        <sup>
          <a id={`mark-${n}`} href={`#note-${n}`}>
            {n}
          </a>
        </sup>
      )}
    </>
  );
}

function BlockPart({
  block,
  say,
  drawings,
}: {
  readonly block: SetBlock;
  say(one: SetPassage): JSX.Element;
  readonly drawings: ReadonlyMap<string, string>;
}): JSX.Element | null {
  switch (block.kind) {
    case 'heading':
      return block.level === 2 ? <h2>{block.words}</h2> : <h3>{block.words}</h3>;
    case 'paragraph':
      return <p>{say(block.said)}</p>;
    case 'list':
      return (
        <ul>
          {block.items.map((one) => (
            <li>{say(one)}</li>
          ))}
        </ul>
      );
    case 'terms':
      return (
        <dl>
          {block.terms.map(({ name, said }) => (
            <>
              <dt>{name}</dt>
              <dd>{say(said)}</dd>
            </>
          ))}
        </dl>
      );
    case 'table':
      return (
        <table>
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
              <tr>{row.map((one, i) => (i === 0 ? <th scope="row">{say(one)}</th> : <td>{say(one)}</td>))}</tr>
            ))}
          </tbody>
        </table>
      );
    case 'figure': {
      const svg = drawings.get(block.picture);
      if (svg === undefined) return null;
      const source = `data:image/svg+xml;base64,${Buffer.from(svg).toString('base64')}`;
      return (
        <figure>
          <img
            src={source}
            alt={block.alt}
            style={block.widthMm === null ? 'width: 100%' : `width: ${block.widthMm}mm`}
          />
          <figcaption>{say(block.caption)}</figcaption>
        </figure>
      );
    }
  }
}

function Bibliography({ document }: { readonly document: SetDocument }): JSX.Element | null {
  const { archives, literature } = document.bibliography;
  if (!document.isLong) return null;
  return (
    <>
      {archives.length === 0 ? null : <h2>{document.pageWords.archives}</h2>}
      {archives.map(({ name, items }) => (
        <>
          <h3>{name}</h3>
          <ul>
            {items.map((one) => (
              <li>
                <Runs runs={one} />
              </li>
            ))}
          </ul>
        </>
      ))}
      {literature.length === 0 ? null : (
        <>
          <h2>{document.pageWords.literature}</h2>
          <ul class="literature">
            {literature.map((one) => (
              <li>
                <Runs runs={one} />
              </li>
            ))}
          </ul>
        </>
      )}
    </>
  );
}
