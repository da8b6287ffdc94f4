import { sayLegend } from '../custody/write-line.ts';
import { sayCertain, sayStretch } from '../findings/custody-words.ts';
import { howAcquired } from '../findings/passed-on.ts';
import { houseStyle, lineOfChain } from '../findings/provenance-line.ts';
import { searchCoverage, type Years } from '../findings/search-coverage.ts';
import { type Block, list, paragraph, passage, section } from './document.ts';
import { bearing, type Matter } from './matter.ts';
import { namePanels } from './parts-known.ts';
import { nameOf, saySearch } from './say-entry.ts';

/** Who had the pieces, one after the other: a table and the provenance line for each chain. */
export function custody({ file, chains }: Matter, figure: Block | null): readonly Block[] {
  const { words, term, say } = file.sayer;
  const blocks = chains.flatMap((chain): readonly Block[] => {
    const [line = '', ...notes] = lineOfChain(file, chain).split('\n\n');
    const head = namePanels(file.sayer, chain.panels) || nameOf(file, chain.object.id);
    const rows = [...chain.holdings, ...chain.meanwhile].map((one, i) => {
      const { keys, id } = one.holding;
      const acquired = howAcquired(file.catalogue, one.holding);
      const shared = (keys['shared-with'] ?? []).map((party) => nameOf(file, party));
      return [
        passage(`${i < chain.holdings.length ? '' : words('Meanwhile: ')}${nameOf(file, id)}`, [
          id,
          ...sourcesOf(file, id),
        ]),
        passage(`${term(keys.capacity)}${shared.length > 0 ? words(', shared with {0}', shared.join(', ')) : ''}`),
        passage(say(sayCertain(one))),
        passage(say(sayStretch(one.possibly))),
        passage(acquired ? term(acquired) : ''),
      ];
    });
    return [
      { kind: 'heading', level: 3, words: head },
      {
        kind: 'table',
        caption: words('Holdings of {0}, on probable statements or better', head),
        head: [words('Holding'), words('Capacity'), words('Held'), words('Possibly held'), words('How acquired')],
        widths: [4, 2.4, 2.6, 2.2, 2],
        rows,
      },
      // The line has notes of its own, with the sources; they are not told a second time.
      paragraph(line),
      ...list(
        notes
          .join('\n')
          .split('\n')
          .filter(Boolean)
          .map((note) => passage(note)),
      ),
    ];
  });
  const legend = words(
    '{0} By the convention of the AAM Guide to Provenance Research (2001).',
    sayLegend(file.sayer, houseStyle(file)),
  );
  return section(
    words('Custody'),
    blocks.length === 0 ? [] : [...(figure ? [figure] : []), ...blocks, paragraph(legend)],
    words('No holding is recorded.'),
  );
}

function sourcesOf(file: Matter['file'], id: string): readonly string[] {
  return file.statementsAbout(id).flatMap((one) => (one.notUsed === null ? (one.source ?? []) : []));
}

/** Looks in archives that found nothing, and those to which there was no access. */
export function nilResults(matter: Matter): readonly Block[] {
  const { words } = matter.file.sayer;
  const { file } = matter;
  const nil = bearing(matter, 'search').filter(
    (one) => one.keys.outcome === 'not found in what was searched' || one.keys.outcome === 'no access',
  );
  const blocks =
    nil.length === 0
      ? []
      : [
          ...list(nil.map((one) => saySearch(file, one))),
          paragraph(words('Not found in what was searched is not the same as not there.')),
        ];
  return section(words('Nil results'), blocks, words('No search without a result is recorded.'));
}

/** Years of each holding that nobody has looked through. */
export function coverage({ file, chains }: Matter): readonly Block[] {
  const { say, words } = file.sayer;
  const ids = new Set(chains.flatMap((one) => [...one.holdings, ...one.meanwhile].map(({ holding }) => holding.id)));
  const rows = searchCoverage(file)
    .filter((one) => ids.has(one.holding.id))
    .map(({ holding, possibly, looks, uncovered }) => [
      passage(nameOf(file, holding.id), [holding.id, ...looks.map((one) => one.search.id)]),
      passage(say(sayStretch(possibly))),
      passage(
        looks
          .filter((one) => one.search.keys.outcome !== 'no access')
          .map(
            (one) => `${one.search.keys.repository}, ${one.years ? sayYears(one.years) : words('years not recorded')}`,
          )
          .join(file.sayer.semicolon) || words('none'),
      ),
      passage(
        uncovered === null
          ? words('cannot be told')
          : uncovered.length === 0
            ? words('none')
            : uncovered.map(sayYears).join(', '),
      ),
    ]);
  if (rows.length === 0) return [];
  return [
    {
      kind: 'table',
      caption: words('Holders and years against archives consulted'),
      head: [words('Holding'), words('Possibly held'), words('Looked through'), words('Years nobody looked through')],
      widths: [3, 2, 4, 2.4],
      rows,
    },
  ];
}

function sayYears({ first, last }: Years): string {
  return first === last ? String(first) : `${first}–${last}`;
}

/** Candidate origins with what the entries say for and against each; nothing is added up. */
export function readings(matter: Matter): readonly Block[] {
  const { words, term } = matter.file.sayer;
  const { file } = matter;
  const blocks = bearing(matter, 'reading').flatMap((reading): readonly Block[] => [
    { kind: 'heading', level: 3, words: nameOf(file, reading.id) },
    paragraph(reading.keys.proposition, [reading.id]),
    ...list(
      (reading.keys.weighs ?? []).map((one) =>
        passage(words('{0}: {1}; {2}.', nameOf(file, one.entry), term(one.is), one.why), [one.entry]),
      ),
    ),
  ]);
  return section(words('Readings of the origin'), blocks);
}
