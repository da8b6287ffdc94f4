import type { Grade } from '../base/grade.ts';
import { groupBy } from '../base/group-by.ts';
import { oneLine } from '../base/one-line.ts';
import type { CaseFile } from '../findings/case-file.ts';
import { sayGap, sayPassed, sayStretch, sayWithin } from '../findings/custody-words.ts';
import { disputeOf, sayDispute } from '../findings/dispute.ts';
import { type ChosenReference, citedFor, declinedReferences } from '../findings/reference-dates.ts';
import { type EventAtReference, type ReferenceAnswer, testReferences } from '../findings/reference-tests.ts';
import { sayApplied, sayOrder, tellAnswers } from '../findings/reference-words.ts';
import { sayDays } from '../language/date-words.ts';
import type { Sayer } from '../language/sayer.ts';
import { inLanguage, titleOf } from '../model/catalogue.ts';
import { isOfType } from '../model/entry.ts';
import cautions from '../reference/cautions.json' with { type: 'json' };
import { sayStatement } from '../statements/say-statement.ts';
import { type Block, list, type Passage, paragraph, passage, section } from './document.ts';
import { bearing, type Matter } from './matter.ts';
import { eventsAsked, panelsBefore } from './parts-known.ts';
import { nameOf, sayDate, sayEntry, sayEventDates, sayTitle, statementsOf } from './say-entry.ts';

/** What no record known to this museum says: unknown holders, gaps, open questions. */
export function unknown(matter: Matter): readonly Block[] {
  const { words, say } = matter.file.sayer;
  const { file, chains, asked } = matter;
  const gaps = chains.flatMap((chain): readonly Passage[] => [
    ...chain.holdings
      .filter(({ holding }) => holding.keys.holder === undefined && !holding.keys['not-disclosed'])
      .map(({ holding, possibly }) =>
        passage(
          words(
            '{0}{1} says who had it: “{2}”, possibly {3}.',
            panelsBefore(file.sayer, chain.panels),
            words('no record known to this museum'),
            nameOf(file, holding.id),
            say(sayStretch(possibly)),
          ),
          [holding.id],
          statementsOf(file, holding.id),
        ),
      ),
    ...chain.gaps.map((gap) =>
      passage(
        words(
          '{0}between “{1}” and “{2}”: {3}; {4}, {5}.',
          panelsBefore(file.sayer, chain.panels),
          nameOf(file, gap.before.id),
          nameOf(file, gap.after.id),
          say(sayPassed(gap)),
          say(sayGap(gap)),
          say(sayWithin(gap.within)),
        ),
        [gap.before.id, gap.after.id],
        [...statementsOf(file, gap.before.id), ...statementsOf(file, gap.after.id)],
      ),
    ),
  ]);
  const questions = bearing(matter, 'question')
    .filter(
      (one) =>
        one.keys.state !== 'answered' && (one.keys.about ?? []).some((id) => bearsOn(id, { file, chains, asked })),
    )
    .map((one) => passage(`${titleOf(one, file.settings.languages)}`, [one.id]));
  return section(words('What is not known'), list([...gaps, ...questions]), words('The statements leave no gap open.'));
}

/** True where an id is one of the pieces asked about, a holding of theirs, or an event of theirs. */
function bearsOn(id: string, { file, chains, asked }: Pick<Matter, 'file' | 'chains' | 'asked'>): boolean {
  const entry = file.catalogue.resolve(id)?.entry;
  if (!entry) return false;
  if (asked.some((one) => one.split('/')[0] === entry.id)) return true;
  const objects = (entry.keys as { objects?: readonly string[] }).objects ?? [];
  return (
    chains.some((chain) => [...chain.holdings, ...chain.meanwhile].some(({ holding }) => holding.id === entry.id)) ||
    objects.some((one) => asked.some((other) => one.split('/')[0] === other.split('/')[0]))
  );
}

/** What was searched, with what was not found. */
export function searches(matter: Matter): readonly Block[] {
  const { words } = matter.file.sayer;
  const { file } = matter;
  const rows = bearing(matter, 'search')
    .filter((one) => (one.keys.about ?? []).some((id) => bearsOn(id, matter)))
    .map((one) => sayEntry(file, one.id));
  const blocks: readonly Block[] =
    rows.length === 0
      ? []
      : [...list(rows), paragraph(words('Not found in what was searched is not the same as not there.'))];
  return section(words('What was searched'), blocks, words('No search is recorded.'));
}

/** Statements that cannot all be right, and why some are not used. */
export function conflicts(matter: Matter): readonly Block[] {
  const { words, term } = matter.file.sayer;
  const { file } = matter;
  const events = new Set(eventsAsked(matter).map((one) => one.id));
  const clusters = groupBy(
    file.contradictions.filter((one) => one.moments.some((moment) => events.has(moment.entry))),
    (one) => one.cluster,
  );
  const disagreeing = [...clusters.values()].map((contradictions): Passage => {
    const statements = [...new Set(contradictions.flatMap((one) => one.statements))];
    const reasons = [...new Set(statements.flatMap((one) => (one.why ? [oneLine(one.why)] : [])))];
    return passage(
      words(
        'Statements that cannot all be right ({0}). {1}. Nothing is preferred by the computing: dates are printed from the better grades alone, on which nothing disagrees.{2}',
        file.sayer.list([...new Set(contradictions.map((one) => term(one.grade)))]),
        sayDispute(file, disputeOf(file, contradictions)),
        reasons.length === 0
          ? ''
          : words(' The reasons given for the grades: {0}.', reasons.join(file.sayer.semicolon)),
      ),
      [...new Set(statements.map((one) => one.entry))],
      statements.map((one) => one.id),
    );
  });
  const notUsed = file.statements.all
    .filter((one) => one.notUsed !== null && events.has(subjectOf(matter, one.entry)))
    .map((one) =>
      passage(
        words('{0}: not used in the computation, because {1}.', sayStatement(one.says), one.notUsed),
        [one.entry],
        [one.id],
      ),
    );
  return section(
    words('Statements that disagree'),
    list([...disagreeing, ...notUsed]),
    words('No statements disagree.'),
  );
}

/** The event that an entry speaks of: itself, or what a claim is about. */
function subjectOf({ file }: Matter, id: string): string {
  const about = (file.catalogue.get(id)?.keys as { about?: unknown } | undefined)?.about;
  return typeof about === 'string' ? (file.catalogue.resolve(about)?.entry.id ?? id) : id;
}

/** Title as it is asserted, by whom and on what ground; nothing is decided. */
export function titles({ file, chains }: Matter): readonly Block[] {
  const { words } = file.sayer;
  const all = [...new Set(chains.flatMap((chain) => chain.titles))].map((one) => sayTitle(file, one));
  const disputes = new Map(
    chains
      .flatMap((chain) => chain.disputes)
      .map((one) => ['request' in one ? one.request.id : one.title.id, one] as const),
  );
  const told = [...disputes].map(([id, one]) =>
    passage(
      'request' in one
        ? words('Title disputed: the return is asked for (“{0}”).', nameOf(file, id))
        : words(
            'Title disputed: “{0}” is contested by {1}.',
            nameOf(file, id),
            file.sayer.list(one.contestedBy.map((who) => (file.catalogue.get(who) ? nameOf(file, who) : who))),
          ),
      [id],
    ),
  );
  return section(words('Title, as asserted'), list([...all, ...told]), words('No assertion of title is recorded.'));
}

/** What communities and readers have answered, and requests that may be told. */
export function voices({ file, asked }: Matter): readonly Block[] {
  const { words } = file.sayer;
  const isAsked = (ids: readonly string[]): boolean =>
    ids.some((id) => asked.some((one) => one.split('/')[0] === id.split('/')[0]));
  const { languages } = file.settings;
  const requests = file.catalogue
    .ofType('request-for-return')
    .filter((one) => one.keys['public-text'] !== undefined && isAsked(one.keys.objects))
    .map((one) => {
      const grounds = one.keys.grounds ? words(' Grounds as given: {0}', one.keys.grounds) : '';
      return passage(`${inLanguage(one.keys['public-text'] ?? '', languages)}${grounds}`, [one.id]);
    });
  const responses = file.catalogue
    .ofType('response')
    .filter((one) => isAsked(one.keys.about) && one.keys.text !== undefined)
    .map((one) => {
      const who = file.catalogue.get(one.keys.from) ? nameOf(file, one.keys.from) : one.keys.from;
      const when = one.keys.on ? `, ${sayDate(file, one.keys.on)}` : '';
      const reply = one.keys.reply ? words(' The museum’s reply: “{0}”', inLanguage(one.keys.reply, languages)) : '';
      return passage(words('{0}{1}: “{2}”{3}', who, when, inLanguage(one.keys.text ?? '', languages), reply), [one.id]);
    });
  return section(words('What others have answered'), list([...requests, ...responses]));
}

/** How the events asked about lie to the reference dates that were chosen. */
export function orderToReferences(matter: Matter): readonly Block[] {
  const { words, term } = matter.file.sayer;
  const { file } = matter;
  const asked = new Set(eventsAsked(matter).map((one) => one.id));
  const said = testReferences(file).flatMap(({ reference, events }) => {
    const ofAsked = events.filter(({ event }) => asked.has(event.id));
    const alike = groupBy(ofAsked, (one) => sayOrders(file, one));
    return [...alike].map(([orders, list]) =>
      passage(
        words(
          '“{0}” ({1}; source: {2}): {3}: {4}.',
          reference.title,
          [dateOf(file, reference), term(reference.row.kind), reference.row.territory || reference.row.jurisdiction]
            .filter(Boolean)
            .join(file.sayer.semicolon),
          citedFor(reference),
          list.map(({ event }) => words('“{0}”', titleOf(event, file.settings.languages))).join(', '),
          orders,
        ),
        [...list.map(({ event }) => event.id), ...(reference.entry ? [reference.entry] : [])],
        list.flatMap(({ answers }) => answers.flatMap((one) => one.because.map((s) => s.id))),
      ),
    );
  });
  const declined = declinedReferences(file.catalogue).map(({ title, why }) =>
    passage(words('Not applied: {0}: {1}.', title, why)),
  );
  const caution = cautions.find((one) => one.subject === 'legal')?.text;
  const foot = caution
    ? term(caution)
    : words('The order of dates only; it does not say that an act was lawful or unlawful.');
  return section(
    words('Reference dates'),
    [...list([...said, ...declined]), paragraph(foot)],
    words('No reference date was chosen.'),
  );
}

/** The day that is tested: that of its adoption, or from when it was in force where it was adopted before. */
function dateOf({ sayer }: CaseFile, { from, adoption, row }: ChosenReference): string {
  const isLater = !adoption && row.inForceFrom !== '' && row.made !== '' && row.made !== row.inForceFrom;
  return isLater && from ? sayer.words('in force {0}', sayDays(from, 'day')) : row.dateAsGiven;
}

/** "Before it on probable statements or weaker; undetermined on established". */
function sayOrders({ catalogue, sayer, settings }: CaseFile, { answers, applied }: EventAtReference): string {
  const { words, say, semicolon } = sayer;
  const told = tellAnswers(answers.map((one) => ({ ...one, because: [], decidedBy: [] })));
  const order = ({ order: one, decides }: ReferenceAnswer): string =>
    decides === null ? say(sayOrder(one)) : words('{0} (to be found out: {1})', sayOrder(one), decides);
  const orders =
    told.length === 1 && told[0]
      ? [words('{0} at every grade', order(told[0].answer))]
      : told.map(({ grades, answer }) => words('{0} {1}', order(answer), sayGrades(sayer, grades)));
  return [...orders, ...(applied ? [say(sayApplied({ catalogue, settings }, applied))] : [])].join(semicolon);
}

/** "on established statements", "on probable statements or weaker". */
function sayGrades(sayer: Sayer, grades: readonly Grade[]): string {
  const { words, term, list } = sayer;
  if (grades.length > 1 && grades.at(-1) === 'conjectural')
    return words('on {0} statements or weaker', term(grades[0] as Grade));
  return words('on {0} statements', list(grades.map(term)));
}

/** True where an entry on the pieces asked about leads to the source, or a claim about one does. */
function speaksOf({ file, chains, asked }: Matter, source: string): boolean {
  return file.catalogue.linksTo(source).some(({ from }) => {
    const entry = file.catalogue.get(from);
    const about = entry && isOfType(entry, 'claim') ? entry.keys.about.replace(/\.(?:begins|ends)$/, '') : from;
    return bearsOn(about, { file, chains, asked });
  });
}

/** Where it was shown or printed. */
export function publications(matter: Matter): readonly Block[] {
  const { words } = matter.file.sayer;
  const { file } = matter;
  const shown = eventsAsked(matter).filter((one) => ['exhibition', 'publication'].includes(one.keys.kind));
  const said = shown.map((event) =>
    passage(
      words(
        '{0}: {1}{2}.',
        titleOf(event, file.settings.languages),
        sayEventDates(file, event).words,
        event.keys.catalogue ? `${file.sayer.semicolon}${nameOf(file, event.keys.catalogue)}` : '',
      ),
      [event.id, ...(event.keys.catalogue ? [event.keys.catalogue] : [])],
    ),
  );
  const printed = bearing(matter, 'source')
    .filter((one) => ['book', 'article', 'catalogue'].includes(one.keys.kind) && speaksOf(matter, one.id))
    .map((one) => passage(`${titleOf(one, file.settings.languages)}.`, [one.id]));
  return section(words('Exhibitions and publications'), list([...said, ...printed]));
}
