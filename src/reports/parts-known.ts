import { hullOfExpression } from '../dates/expression.ts';
import { isDateProblem, readDate } from '../dates/read-date.ts';
import { sayStretch } from '../findings/custody-words.ts';
import { eventsInOrder, eventsOn } from '../findings/event-order.ts';
import { searchesFor } from '../findings/gap-searches.ts';
import { comesFrom, howAcquired } from '../findings/passed-on.ts';
import type { Sayer } from '../language/sayer.ts';
import { inLanguage, titleOf } from '../model/catalogue.ts';
import { type Entry, isOfType } from '../model/entry.ts';
import { samePiece } from '../model/pieces.ts';
import { type Block, list, type Passage, passage, section, type Term } from './document.ts';
import type { Matter } from './matter.ts';
import { particularsOf } from './parts-acts.ts';
import { nameOf, sayCapacity, sayEventDates, saySearch, statementsOf } from './say-entry.ts';

/** Events of the pieces asked about, in their computed order. */
export function eventsAsked({ file, objects, asked }: Matter): readonly Entry<'event'>[] {
  const all = objects.length === 1 ? eventsOn(file, objects[0]?.id ?? '') : eventsInOrder(file);
  return all.filter((event) => (event.keys.objects ?? []).some((id) => asked.some((other) => samePiece(id, other))));
}

/** "Panels A and B", or nothing for an object in one piece. */
export function namePanels({ words, list }: Sayer, panels: readonly string[]): string {
  return panels.length === 0
    ? ''
    : words('{0, plural, one {Panel {1}} other {Panels {1}}}', panels.length, list(panels));
}

/** "Panels A and B: " before what is said of them. */
export function panelsBefore(sayer: Sayer, panels: readonly string[]): string {
  const name = namePanels(sayer, panels);
  return name === '' ? '' : sayer.words('{0}: ', name);
}

/** The object by the categories of Object ID (ICOM, Object ID checklist), those that the file has. */
export function identification({ file, objects }: Matter): readonly Block[] {
  const { words } = file.sayer;
  const blocks = objects.flatMap((object): readonly Block[] => {
    const { keys } = object;
    const languages = file.settings.languages;
    const pictures = file.catalogue.onObject('figure', object.id);
    const rows: readonly (readonly [string, string | undefined])[] = [
      [words('Type of object'), keys['object-type']],
      [words('Materials and techniques'), keys.materials],
      [
        words('Measurements'),
        (keys.measurements ?? [])
          .map((one) => `${one.what ? `${one.what}, ` : ''}${one['as-written']}`)
          .join(file.sayer.semicolon) || undefined,
      ],
      [words('Inscriptions and markings'), keys.inscriptions],
      [words('Distinguishing features'), keys['distinguishing-features']],
      [words('Title'), titleOf(object, languages)],
      [words('Subject'), keys.subject],
      [words('Date or period'), keys.period],
      [words('Maker'), keys.maker],
      [words('Description'), keys.description === undefined ? undefined : inLanguage(keys.description, languages)],
      [words('Credit line'), keys['credit-line']],
      [
        words('Formerly identified as'),
        (keys['former-identifications'] ?? [])
          .map((one) => [one.text, one.by, one.until ? words('until {0}', one.until) : ''].filter(Boolean).join(', '))
          .join(file.sayer.semicolon) || undefined,
      ],
      [words('Lands concerned'), (keys.jurisdictions ?? []).join(', ') || undefined],
      [words('Made into'), (keys['made-into'] ?? []).map((id) => nameOf(file, id)).join(', ') || undefined],
      [words('Accession numbers'), (keys['accession-numbers'] ?? []).join(', ') || undefined],
      [words('Photographs in the file'), pictures.length === 0 ? undefined : String(pictures.length)],
    ];
    const terms = rows.flatMap(([name, value]): readonly Term[] =>
      value === undefined ? [] : [{ name, passage: passage(value, [object.id]) }],
    );
    return [{ kind: 'terms', terms }];
  });
  return section(words('The object'), blocks, words('The object is not shown to the audience of this answer.'));
}

/** Who has it now, and where, as far as that may be said. */
export function presentCustody({ file, chains, objects }: Matter): readonly Block[] {
  const { words, say } = file.sayer;
  const said = chains.flatMap((chain): readonly Passage[] => {
    const last = chain.holdings.at(-1);
    // Who certainly had ended having it is not the present holder.
    if (!last || Number.isFinite(last.possibly.last)) return [];
    const { keys, id } = last.holding;
    const holder = keys['not-disclosed']
      ? words('a holder who is known and not disclosed')
      : keys.holder
        ? nameOf(file, keys.holder)
        : words('no holder is recorded');
    const home = keys.place === undefined ? undefined : file.catalogue.get(keys.place);
    const isStore = home && isOfType(home, 'place') && home.keys['present-store'];
    const place = home && !isStore ? nameOf(file, home.id) : null;
    const where = place !== null && place !== holder ? words(', at {0}', place) : '';
    return [
      passage(
        words(
          '{0}{1}{2}, {3}{4}.',
          panelsBefore(file.sayer, chain.panels),
          holder,
          where,
          sayCapacity(file.sayer, keys.capacity),
          Number.isFinite(last.possibly.first) ? words('; recorded {0}', say(sayStretch(last.possibly))) : '',
        ),
        [id],
        statementsOf(file, id),
      ),
    ];
  });
  const named = objects.flatMap((object) =>
    object.keys.holder && file.catalogue.get(object.keys.holder)
      ? [
          passage(words('{0}: {1}.', titleOf(object, file.settings.languages), nameOf(file, object.keys.holder)), [
            object.id,
          ]),
        ]
      : [],
  );
  return section(
    words('Present custody'),
    list(said.length > 0 ? said : named),
    words('No present custody is recorded.'),
  );
}

/** How and when the present holder came by it, and which enquiries were made before that. */
export function acquisition({ file, chains }: Matter): readonly Block[] {
  const { say, term, words } = file.sayer;
  const said = chains.flatMap((chain): readonly Passage[] => {
    const last = chain.holdings.at(-1);
    if (!last) return [];
    const { holding, begunBy, possibly } = last;
    const from = chain.holdings.at(-2)?.holding;
    const isDated = Number.isFinite(possibly.first) || Number.isFinite(begunBy);
    const begun = isDated ? words('begun {0}', say(sayStretch({ first: possibly.first, last: begunBy }))) : '';
    const searched = searchesFor(file, [holding], { first: possibly.first, last: begunBy }).filter((one) =>
      isBefore(file.settings.dates, one, begunBy),
    );
    const acquired = howAcquired(file.catalogue, holding);
    const how = acquired ? term(acquired) : '';
    const giver =
      from && comesFrom(file.catalogue, holding) === from.id ? nameOf(file, from.keys.holder ?? from.id) : '';
    const fromWhom = giver === '' ? '' : words('from {0}', giver);
    const told = [[how, fromWhom].filter(Boolean).join(', '), begun].filter(Boolean).join(file.sayer.semicolon);
    const line = passage(
      words('{0}{1}.', panelsBefore(file.sayer, chain.panels), told),
      [holding.id, ...(from ? [from.id] : [])],
      statementsOf(file, holding.id),
    );
    if (told === '' && searched.length === 0) return [];
    return [
      ...(told === '' ? [] : [line]),
      searched.length === 0
        ? passage(words('No enquiry before the acquisition is recorded.'))
        : passage(words('Enquiries before the acquisition:')),
      ...searched.map((one) => saySearch(file, one)),
    ];
  });
  return section(
    words('How it was acquired, and with what enquiries'),
    list(said),
    words('No acquisition is recorded.'),
  );
}

function isBefore(dates: Parameters<typeof readDate>[2], search: Entry<'search'>, day: number): boolean {
  const read = search.keys.when === undefined ? null : readDate(search.keys.when, 'gregorian', dates);
  return read !== null && !isDateProblem(read) && hullOfExpression(read).last <= day;
}

/** What is known, in order of date, each step with its sources. */
export function known(matter: Matter): readonly Block[] {
  const { words, term } = matter.file.sayer;
  const { file } = matter;
  const said = eventsAsked(matter).map((event) => {
    const { words: dates, grade, cites } = sayEventDates(file, event);
    const sources = cites.flatMap((id) => file.statement(id)?.source ?? []);
    const { told: how, rests } = particularsOf(file, event);
    return passage(
      words(
        '{0}: {1} ({2}){3}.',
        titleOf(event, file.settings.languages),
        dates,
        term(grade),
        how.length > 0 ? `${file.sayer.semicolon}${how.join(file.sayer.semicolon)}` : '',
      ),
      [event.id, ...sources, ...rests],
      cites,
    );
  });
  return section(words('What is known, in order of date'), list(said), words('No event is recorded.'));
}
