/** A part of the card: what one wants to say, and how it is written. */
export interface CardPart {
  readonly title: string;
  readonly rows: readonly (readonly [want: string, write: string])[];
}

/** An entry as it looks, on the card. */
export const CARD_ENTRY = `---
id: EV-removal
type: event
kind: removal
title: Taken off the wall
stated:
  - { date: "1926", sense: by, source: SO-ledger, grade: probable, why: "written after arrival" }
relations:
  - { after: EV-seen, grade: established, why: "seen whole on the wall" }
---

Why we think so, with links to [other entries](EV-seen).`;

/** Everything that is looked up again and again while writing, for one page. */
export const QUICK_CARD: readonly CardPart[] = [
  {
    title: 'Dates, always in straight quotation marks',
    rows: [
      ['1926; April 1926; 12 April 1926', '"1926"   "1926-04"   "1926-04-12"'],
      ['about 1926', '"1926~"'],
      ['1926, doubtful', '"1926?"'],
      ['on some day between 1925 and 1931', '"[1925..1931]"'],
      ['in 1925 or in 1931', '"[1925,1931]"'],
      ['it lasted from 1921 to 1938', '"1921/1938"'],
      ['the 1920s; the 14th century', '"192X"   "13XX"'],
      ['spring 1926', '"1926-21"  (summer 22, autumn 23)'],
      ['before 1924; after 1924', '"1923", sense: by   "1925", sense: not-before'],
      ['a paper in the old calendar', 'date: "1926-04-12", calendar: julian'],
    ],
  },
  {
    title: 'How sure, set by a person, with a reason',
    rows: [
      ['established', 'a signed and dated paper, a trace that allows nothing else'],
      ['probable', 'the better reading of good evidence'],
      ['possible', 'not excluded, something speaks for it'],
      ['conjectural', 'a guess worth writing down'],
    ],
  },
  {
    title: 'What to write down as what',
    rows: [
      ['it happened', 'event (EV-), with stated: and relations:'],
      ['it is on the object', 'evidence (PE-): what is observed, what it is taken for, over / cuts / fills / left-by'],
      ['a paper', 'source (SO-); what it says: claim (CL-)'],
      ['somebody had it', 'holding (HO-): begins, ends, held, passage'],
      ['somebody says it is theirs', 'title (TI-): never computed with'],
      ['we looked and found nothing', 'search (SE-), outcome: not found in what was searched'],
      ['we do not know', 'question (QU-)'],
    ],
  },
  {
    title: 'Who may see it',
    rows: [
      ['a whole entry', 'access: public | internal | restricted'],
      ['single keys of it', 'withhold: [quote, locator]'],
      ['a holder without the name', 'public-name: A private collector'],
    ],
  },
  {
    title: 'Commands, each with --help',
    rows: [
      ['write a new entry', 'kerfmark new'],
      ['what is wrong, where, how to mend it', 'kerfmark check      kerfmark explain CODE'],
      ['the dates; why one is so', 'kerfmark dates      kerfmark why EV-removal'],
      ['the site, while you write', 'kerfmark serve'],
      ['the file on paper', 'kerfmark file OB-panels'],
      ['a site for others', 'kerfmark build --audience public --out ../site'],
    ],
  },
];

/** The card as Markdown, for the guide. */
export function cardMarkdown(): string {
  const cell = (text: string): string => text.replaceAll('|', '\\|').replace(/ {2,}/g, ', ');
  const parts = QUICK_CARD.map(
    ({ title, rows }) =>
      `## ${title}\n\n| | |\n| --- | --- |\n${rows.map(([want, write]) => `| ${cell(want)} | \`${cell(write)}\` |`).join('\n')}\n`,
  );
  return `# Quick card\n\nOne page to have beside the keyboard; \`npx kerfmark card\` prints it.\n\n\`\`\`\n${CARD_ENTRY}\n\`\`\`\n\n${parts.join('\n')}`;
}
