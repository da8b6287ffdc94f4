import { titleOf } from '../model/catalogue.ts';
import type { Entry } from '../model/entry.ts';
import { sayStatement } from '../statements/say-statement.ts';
import type { CaseFile } from './case-file.ts';
import { eventsInOrder } from './event-order.ts';
import { type EventAtReference, testReferences } from './reference-tests.ts';
import type { TrialEntry, TrialFile, TrialReference, TrialStatement } from './run-trial.ts';

/** What a reader's trial needs of a case file, as plain data; nothing that the audience may not see is in the file. */
export function trialFileOf(file: CaseFile): TrialFile {
  const { statements, catalogue, settings, sayer } = file;
  const placed = new Set<number>();
  const ordered: readonly (readonly [TrialEntry['type'], Entry])[] = [
    ...eventsInOrder(file).map((entry) => ['event', entry] as const),
    ...catalogue.ofType('holding').map((entry) => ['holding', entry] as const),
    ...catalogue.ofType('evidence').map((entry) => ['trace', entry] as const),
  ];
  const entries = ordered.flatMap(([type, entry]): readonly TrialEntry[] => {
    const moments = statements.moments.ofEntry(entry.id);
    const [first] = moments;
    if (!first) return [];
    const mine = file
      .statementsAbout(entry.id)
      .map((one) => file.placeOf(one))
      .filter((i) => i >= 0 && !placed.has(i));
    for (const one of mine) placed.add(one);
    return [
      {
        id: entry.id,
        title: titleOf(entry, settings.languages),
        type,
        start: first.index,
        end: (moments.at(-1) ?? first).index,
        statements: mine,
      },
    ];
  });
  return {
    format: 'kerfmark-trial/1',
    printedGrade: settings.printedGrade,
    moments: statements.moments.all.length,
    axioms: statements.moments.axioms,
    statements: statements.used.map((one): TrialStatement => {
      const source = one.source === null ? undefined : catalogue.get(one.source);
      return {
        id: one.id,
        grade: one.grade,
        text: sayer.say(sayStatement(one.says)),
        source: source ? titleOf(source, settings.languages) : null,
        precision: one.precision,
        about: one.about,
        links: one.links,
        ...(one.choice ? { choice: one.choice } : {}),
        ...(one.order ? { order: one.order } : {}),
      };
    }),
    entries,
    references: referencesOf(file),
  };
}

/** Events of which it is settled at every grade that the date speaks of them, or that they came before it. */
function settled(events: readonly EventAtReference[]): readonly EventAtReference[] {
  return events.filter(({ answers }) =>
    answers.every(({ order, decides }) => decides === null && order !== 'outside' && order !== 'no place'),
  );
}

function referencesOf(file: CaseFile): readonly TrialReference[] {
  return testReferences(file).flatMap(({ reference: { title, from, to, row }, events, holdings }) => {
    if (!from) return [];
    const name = file.sayer.say(title);
    const period = row.kind === 'period' ? to : null;
    const order = {
      title: name,
      from,
      to,
      asks: 'order' as const,
      entries: settled(events).map((one) => one.event.id),
    };
    const held = {
      title: name,
      from,
      to: period,
      asks: 'held' as const,
      entries: holdings
        .filter(
          ({ answers }) => !answers.some((one) => one === 'no place' || one === 'undetermined' || one === 'outside'),
        )
        .map((one) => one.holding.id),
    };
    return [order, held].filter((one) => one.entries.length > 0);
  });
}
