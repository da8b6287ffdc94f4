import { isDateProblem, readDate } from '../dates/read-date.ts';
import { hullOfExpression } from '../dates/wording.ts';
import { sayStretch } from '../findings/custody-words.ts';
import { samePiece } from '../findings/doubts-of-order.ts';
import { eventsInOrder } from '../findings/event-order.ts';
import { searchesFor } from '../findings/gap-searches.ts';
import { inLanguage, titleOf } from '../model/catalogue.ts';
import { type Entry, isOfType } from '../model/entry.ts';
import { type Block, list, type Passage, passage, section, type Term } from './document.ts';
import type { Matter } from './matter.ts';
import { nameOf, sayCapacity, sayEventDates, saySearch, statementsOf } from './say-entry.ts';

/** Events of the pieces asked about, in their computed order. */
export function eventsAsked({ file, asked }: Matter): readonly Entry<'event'>[] {
  return eventsInOrder(file).filter((event) =>
    (event.keys.objects ?? []).some((id) => asked.some((other) => samePiece(id, other))),
  );
}

/** "Panels A and B", or nothing for an object in one piece. */
export function panelsOf(panels: readonly string[]): string {
  if (panels.length === 0) return '';
  return `${panels.length > 1 ? 'Panels' : 'Panel'} ${panels.join(' and ')}: `;
}

/** The object by the categories of Object ID (ICOM, Object ID checklist), each as the file has it. */
export function identification({ file, objects }: Matter): readonly Block[] {
  const blocks = objects.flatMap((object): readonly Block[] => {
    const { keys } = object;
    const languages = file.settings.languages;
    const pictures = file.catalogue.ofType('figure').filter((one) => one.keys.object === object.id);
    const rows: readonly (readonly [string, string | undefined])[] = [
      ['Type of object', keys['object-type']],
      ['Materials and techniques', keys.materials],
      [
        'Measurements',
        (keys.measurements ?? []).map((one) => `${one.what ? `${one.what}, ` : ''}${one['as-written']}`).join('; ') ||
          undefined,
      ],
      ['Inscriptions and markings', keys.inscriptions],
      ['Distinguishing features', keys['distinguishing-features']],
      ['Title', titleOf(object, languages)],
      ['Subject', keys.subject],
      ['Date or period', keys.period],
      ['Maker', keys.maker],
      ['Description', keys.description === undefined ? undefined : inLanguage(keys.description, languages)],
      ['Credit line', keys['credit-line']],
      [
        'Formerly identified as',
        (keys['former-identifications'] ?? [])
          .map((one) => [one.text, one.by, one.until ? `until ${one.until}` : ''].filter(Boolean).join(', '))
          .join('; ') || undefined,
      ],
      ['Accession numbers', (keys['accession-numbers'] ?? []).join(', ') || undefined],
      ['Photographs in the file', pictures.length === 0 ? undefined : String(pictures.length)],
    ];
    const terms = rows.map(
      ([name, words]): Term => ({
        name,
        passage: words === undefined ? passage('not recorded') : passage(words, [object.id]),
      }),
    );
    return [{ kind: 'terms', terms }];
  });
  return section('The object', blocks, 'The object is not shown to the audience of this answer.');
}

/** Who has it now, and where, as far as that may be said. */
export function presentCustody({ file, chains, objects }: Matter): readonly Block[] {
  const said = chains.flatMap((chain): readonly Passage[] => {
    const last = chain.holdings.at(-1);
    // Who certainly had ended having it is not the present holder.
    if (!last || Number.isFinite(last.possibly.last)) return [];
    const { keys, id } = last.holding;
    const holder = keys['not-disclosed']
      ? 'a holder who is known and not disclosed'
      : keys.holder
        ? nameOf(file, keys.holder)
        : 'no holder is recorded';
    const home = keys.place === undefined ? undefined : file.catalogue.get(keys.place);
    const isStore = home && isOfType(home, 'place') && home.keys['present-store'];
    const place = home && !isStore ? nameOf(file, home.id) : null;
    const where = place !== null && place !== holder ? `, at ${place}` : '';
    return [
      passage(
        `${panelsOf(chain.panels)}${holder}${where}, ${sayCapacity(keys.capacity)}; recorded ${sayStretch(last.possibly)}.`,
        [id],
        statementsOf(file, id),
      ),
    ];
  });
  const named = objects.flatMap((object) =>
    object.keys.holder && file.catalogue.get(object.keys.holder)
      ? [passage(`${titleOf(object, file.settings.languages)}: ${nameOf(file, object.keys.holder)}.`, [object.id])]
      : [],
  );
  return section('Present custody', list(said.length > 0 ? said : named), 'No present custody is recorded.');
}

/** How and when the present holder came by it, and which enquiries were made before that. */
export function acquisition({ file, chains }: Matter): readonly Block[] {
  const said = chains.flatMap((chain): readonly Passage[] => {
    const last = chain.holdings.at(-1);
    if (!last) return [];
    const { holding, begunBy, possibly } = last;
    const from = chain.holdings.at(-2)?.holding;
    const passed = from && holding.keys.from === from.id ? `, from ${nameOf(file, from.keys.holder ?? from.id)}` : '';
    const begun = sayStretch({ first: possibly.first, last: begunBy });
    const searched = searchesFor(file, [holding], { first: possibly.first, last: begunBy }).filter((one) =>
      isBefore(file.settings.dates, one, begunBy),
    );
    const how = holding.keys['acquired-by'] ?? 'how is not recorded';
    return [
      passage(
        `${panelsOf(chain.panels)}${how}${passed}; begun ${begun}.`,
        [holding.id, ...(from ? [from.id] : [])],
        statementsOf(file, holding.id),
      ),
      searched.length === 0
        ? passage('No enquiry made before that, which may be shown here, is recorded.')
        : passage('Enquiries made before that:'),
      ...searched.map((one) => saySearch(file, one)),
    ];
  });
  return section('How it was acquired, and with what enquiries', list(said), 'No acquisition is recorded.');
}

function isBefore(dates: Parameters<typeof readDate>[2], search: Entry<'search'>, day: number): boolean {
  const read = search.keys.when === undefined ? null : readDate(search.keys.when, 'gregorian', dates);
  return read !== null && !isDateProblem(read) && hullOfExpression(read).last <= day;
}

/** What is known, in order of date, each step with its sources. */
export function known(matter: Matter): readonly Block[] {
  const { file } = matter;
  const said = eventsAsked(matter).map((event) => {
    const { words, grade, cites } = sayEventDates(file, event);
    const sources = cites.flatMap((id) => file.statement(id)?.source ?? []);
    const { technique, circumstance } = event.keys;
    const how = [
      technique && technique !== 'unknown' ? `technique: ${technique}` : '',
      circumstance ? `circumstance: ${circumstance.is}; ${circumstance.why}` : '',
    ].filter(Boolean);
    return passage(
      `${titleOf(event, file.settings.languages)}: ${words} (${grade})${how.length > 0 ? `; ${how.join('; ')}` : ''}.`,
      [event.id, ...sources],
      cites,
    );
  });
  return section('What is known, in order of date', list(said), 'No event is recorded.');
}
