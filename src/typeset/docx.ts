import {
  AlignmentType,
  BorderStyle,
  Document,
  type FileChild,
  Footer,
  FootnoteReferenceRun,
  Header,
  HeadingLevel,
  ImageRun,
  LevelFormat,
  LineRuleType,
  Packer,
  PageNumber,
  Paragraph,
  type ParagraphChild,
  SimpleField,
  Table,
  TableCell,
  TableOfContents,
  TableRow,
  TextRun,
  WidthType,
} from 'docx';
import type { Inline } from '../reports/inline.ts';
import type { SetBlock, SetDocument, SetPassage } from './annotate.ts';

/** A picture for a word processor: the drawing, and the same in pixels for readers that know no SVG. */
export interface DocxPicture {
  readonly svg: string;
  readonly png: Uint8Array;
  readonly widthPx: number;
  readonly heightPx: number;
}

/** Width of the text on the page, in mm and in twentieths of a point. */
const TEXT_MM = 155;
const TEXT_TWIPS = Math.round((TEXT_MM / 25.4) * 1440);

const SERIF = 'Source Serif 4';
const SANS = 'Source Sans 3';

/** Sets a document for a word processor: real notes, styles, captions with numbers, alternative text, heads that repeat. */
export async function makeDocx(
  document: SetDocument,
  pictures: ReadonlyMap<string, DocxPicture>,
  author: string,
): Promise<Uint8Array> {
  const setter = new Setter(pictures, document.pageWords);
  const body = [
    ...opening(document),
    ...document.blocks.flatMap((block) => setter.block(block)),
    ...setter.bibliography(document),
  ];
  const file = new Document({
    creator: author,
    title: document.subtitle === '' ? document.title : `${document.title}: ${document.subtitle}`,
    description: document.foot,
    styles: stylesOf(document.language),
    numbering: {
      config: [
        {
          reference: 'dash',
          levels: [
            {
              level: 0,
              format: LevelFormat.BULLET,
              text: '–',
              alignment: AlignmentType.LEFT,
              style: { paragraph: { indent: { left: 340, hanging: 240 } } },
            },
          ],
        },
      ],
    },
    footnotes: Object.fromEntries(
      setter.notes.map((note, i) => [i + 1, { children: [new Paragraph({ children: runsOf(note) })] }]),
    ),
    features: { updateFields: document.isLong },
    sections: [
      {
        properties: {
          page: { size: { width: 11906, height: 16838 }, margin: { top: 1590, bottom: 1530, left: 1550, right: 1550 } },
        },
        headers: {
          default: new Header({
            children: [small([document.draft === null ? '' : `${document.draft}. `, document.title])],
          }),
        },
        footers: {
          default: new Footer({
            children: [
              new Paragraph({
                style: 'Small',
                children: [
                  new TextRun(`${document.foot}, `),
                  new TextRun({ children: [PageNumber.CURRENT, ' / ', PageNumber.TOTAL_PAGES] }),
                ],
              }),
            ],
          }),
        },
        children: body,
      },
    ],
  });
  return new Uint8Array(await Packer.toBuffer(file));
}

function opening(document: SetDocument): readonly FileChild[] {
  return [
    new Paragraph({ heading: HeadingLevel.TITLE, children: [new TextRun(document.title)] }),
    ...(document.subtitle === ''
      ? []
      : [new Paragraph({ style: 'Subtitle', children: [new TextRun(document.subtitle)] })]),
    ...(document.draft === null ? [] : [new Paragraph({ style: 'Draft', children: [new TextRun(document.draft)] })]),
    ...(document.isLong
      ? [
          new Paragraph({ style: 'Small', children: [new TextRun(document.pageWords.contents)] }),
          new TableOfContents(document.pageWords.contents, { hyperlink: true, headingStyleRange: '1-2' }),
        ]
      : []),
  ];
}

/** Sets blocks one after the other, and keeps the notes and the numbers of captions. */
class Setter {
  readonly notes: (readonly Inline[])[] = [];
  readonly #pictures: ReadonlyMap<string, DocxPicture>;
  readonly #words: SetDocument['pageWords'];
  #numbers = { table: 0, figure: 0 };

  constructor(pictures: ReadonlyMap<string, DocxPicture>, words: SetDocument['pageWords']) {
    this.#pictures = pictures;
    this.#words = words;
  }

  block(block: SetBlock): readonly FileChild[] {
    switch (block.kind) {
      case 'heading':
        return [
          new Paragraph({
            heading: block.level === 2 ? HeadingLevel.HEADING_1 : HeadingLevel.HEADING_2,
            keepNext: true,
            children: [new TextRun(block.words)],
          }),
        ];
      case 'paragraph':
        return [new Paragraph({ children: this.said(block.said) })];
      case 'list':
        return block.items.map(
          (one) => new Paragraph({ numbering: { reference: 'dash', level: 0 }, children: this.said(one) }),
        );
      case 'terms':
        return block.terms.map(
          ({ name, said }) =>
            new Paragraph({
              style: 'Term',
              children: [new TextRun({ text: `${name}  `, bold: true, font: SANS }), ...this.said(said)],
            }),
        );
      case 'table':
        return [
          this.caption('table', { words: block.caption, note: null }, true),
          this.table(block),
          new Paragraph(''),
        ];
      case 'figure':
        return this.figure(block);
    }
  }

  bibliography({ isLong, bibliography: { archives, literature } }: SetDocument): readonly FileChild[] {
    if (!isLong) return [];
    const head = (words: string, level: (typeof HeadingLevel)[keyof typeof HeadingLevel]): Paragraph =>
      new Paragraph({ heading: level, keepNext: true, children: [new TextRun(words)] });
    const items = (list: readonly (readonly Inline[])[]): readonly Paragraph[] =>
      list.map((one) => new Paragraph({ style: 'Term', children: runsOf(one) }));
    return [
      ...(archives.length === 0 ? [] : [head(this.#words.archives, HeadingLevel.HEADING_1)]),
      ...archives.flatMap(({ name, items: list }) => [head(name, HeadingLevel.HEADING_2), ...items(list)]),
      ...(literature.length === 0 ? [] : [head(this.#words.literature, HeadingLevel.HEADING_1), ...items(literature)]),
    ];
  }

  private said({ words, note }: SetPassage): ParagraphChild[] {
    const children: ParagraphChild[] = [new TextRun(words)];
    if (note !== null) {
      this.notes.push(note);
      children.push(new FootnoteReferenceRun(this.notes.length));
    }
    return children;
  }

  private caption(kind: 'table' | 'figure', said: SetPassage, keepNext: boolean): Paragraph {
    this.#numbers[kind] += 1;
    const word = kind === 'table' ? this.#words.table : this.#words.figure;
    return new Paragraph({
      style: 'Caption',
      keepNext,
      children: [
        new TextRun(`${word} `),
        new SimpleField(`SEQ ${word} \\* ARABIC`, String(this.#numbers[kind])),
        new TextRun('. '),
        ...this.said(said),
      ],
    });
  }

  private table({ head, widths, rows }: Extract<SetBlock, { kind: 'table' }>): Table {
    const sum = widths.reduce((a, b) => a + b, 0);
    const columns = widths.map((one) => Math.floor((one / sum) * TEXT_TWIPS));
    const cell = (children: ParagraphChild[], i: number): TableCell =>
      new TableCell({
        width: { size: columns[i] ?? 0, type: WidthType.DXA },
        margins: { top: 30, bottom: 30, left: 50, right: 50 },
        children: [new Paragraph({ style: 'Cell', children })],
      });
    const line = { style: BorderStyle.SINGLE, size: 4, color: 'B9B1A3' };
    const none = { style: BorderStyle.NONE, size: 0, color: 'auto' };
    const edge = { style: BorderStyle.SINGLE, size: 8, color: '1F1C18' };
    return new Table({
      columnWidths: columns,
      width: { size: TEXT_TWIPS, type: WidthType.DXA },
      borders: { top: edge, bottom: edge, left: none, right: none, insideHorizontal: line, insideVertical: none },
      rows: [
        new TableRow({
          tableHeader: true,
          cantSplit: true,
          children: head.map((words, i) => cell([new TextRun({ text: words, bold: true })], i)),
        }),
        ...rows.map((row) => new TableRow({ cantSplit: true, children: row.map((one, i) => cell(this.said(one), i)) })),
      ],
    });
  }

  private figure({ picture, alt, widthMm, caption }: Extract<SetBlock, { kind: 'figure' }>): readonly FileChild[] {
    const found = this.#pictures.get(picture);
    if (!found) return [];
    const width = Math.round(((widthMm ?? TEXT_MM) / 25.4) * 96);
    const height = Math.round((width * found.heightPx) / found.widthPx);
    return [
      new Paragraph({
        keepNext: true,
        children: [
          new ImageRun({
            type: 'svg',
            data: new TextEncoder().encode(found.svg),
            fallback: { type: 'png', data: found.png },
            transformation: { width, height },
            altText: { name: picture, title: picture, description: alt },
          }),
        ],
      }),
      this.caption('figure', caption, false),
    ];
  }
}

function runsOf(runs: readonly Inline[]): ParagraphChild[] {
  return runs.map((one) =>
    typeof one === 'string' ? new TextRun(one) : new TextRun({ text: one.italic, italics: true }),
  );
}

function small(words: readonly string[]): Paragraph {
  return new Paragraph({ style: 'Small', children: words.filter(Boolean).map((one) => new TextRun(one)) });
}

const LANGUAGES: Readonly<Record<string, string>> = {
  en: 'en-GB',
  fr: 'fr-FR',
  el: 'el-GR',
  de: 'de-DE',
  it: 'it-IT',
  es: 'es-ES',
};

function stylesOf(language: string): NonNullable<ConstructorParameters<typeof Document>[0]['styles']> {
  const base = { font: SERIF, size: 21, language: { value: LANGUAGES[language] ?? language } };
  const heading = (size: number, before: number) => ({
    run: { font: SERIF, size, bold: true, color: '1F1C18' },
    paragraph: { spacing: { before, after: 120 }, keepNext: true },
  });
  const paragraph = (id: string, run: object, spacing: object) => ({
    id,
    name: id,
    basedOn: 'Normal',
    run,
    paragraph: { spacing },
  });
  return {
    default: {
      document: { run: base, paragraph: { spacing: { after: 110, line: 280, lineRule: LineRuleType.AUTO } } },
      title: heading(42, 600),
      heading1: heading(29, 420),
      heading2: heading(24, 280),
      footnoteText: {
        run: { font: SERIF, size: 17 },
        paragraph: { spacing: { after: 20, line: 220, lineRule: LineRuleType.AUTO } },
      },
    },
    paragraphStyles: [
      paragraph('Subtitle', { size: 26, color: '5D564D' }, { after: 300 }),
      paragraph('Draft', { font: SANS, bold: true, color: '8A3B24' }, { after: 200 }),
      paragraph('Small', { font: SANS, size: 17, color: '5D564D' }, { after: 40 }),
      paragraph('Caption', { font: SANS, size: 18, color: '5D564D' }, { before: 160, after: 80 }),
      paragraph('Cell', { font: SANS, size: 17 }, { after: 0, line: 220, lineRule: LineRuleType.AUTO }),
      paragraph('Term', {}, { after: 60 }),
    ],
  };
}
