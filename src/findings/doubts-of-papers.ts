import type { Diagnostic } from '../base/diagnostic.ts';
import { rankOf } from '../base/grade.ts';
import { groupBy } from '../base/group-by.ts';
import { naturalOrder } from '../base/natural-order.ts';
import { phrase, type Said } from '../base/said.ts';
import type { DayRange } from '../dates/day.ts';
import { hullOfExpression } from '../dates/expression.ts';
import { isDateProblem, readDate } from '../dates/read-date.ts';
import { sayDays } from '../language/date-words.ts';
import { type Entry, isOfType, type KeyPath } from '../model/entry.ts';
import type { DoubtInput } from './doubts.ts';
import { type ChosenReference, referenceNamed } from './reference-dates.ts';

/** Traps of papers: stock numbers that run against the dates, laws cited before they were in force, nil searches used as proof. */
export function doubtsOfPapers(input: DoubtInput): readonly Diagnostic[] {
  return [...stockNumbers(input), ...lawsBeforeForce(input), ...nilSearches(input)];
}

interface DatedNumber {
  readonly object: Entry<'object'>;
  readonly index: number;
  readonly number: string;
  readonly days: DayRange;
}

/** Numbers that one party gave in one series: a lower one entered certainly later than a higher one. */
function stockNumbers(input: DoubtInput): readonly Diagnostic[] {
  const dated = input.catalogue.ofType('object').flatMap((object) =>
    (object.keys.numbers ?? []).flatMap((one, index) => {
      const days = one.given === undefined ? heldBy(input, object, one['given-by']) : daysOf(input, one.given);
      const series = `${one['given-by'] ?? ''} ${one.kind} ${one.number.replace(/\d.*$/s, '')}`;
      return days && one['given-by'] && /\d/.test(one.number)
        ? [{ series, number: { object, index, number: one.number, days } }]
        : [];
    }),
  );
  return [...groupBy(dated, (one) => one.series).values()].flatMap((series) => {
    const sorted = series.map((one) => one.number).sort((a, b) => naturalOrder(a.number, b.number));
    return sorted.flatMap((lower, i) =>
      sorted
        .slice(i + 1)
        .filter((higher) => higher.number !== lower.number && higher.days.last < lower.days.first)
        .slice(0, 1)
        .map((higher) => outOfOrder(lower, higher)),
    );
  });
}

function outOfOrder(lower: DatedNumber, higher: DatedNumber): Diagnostic {
  return {
    ...doubt(
      lower.object,
      ['numbers', lower.index, 'number'],
      'stock-numbers-out-of-order',
      phrase(
        'number {0} is dated {1}, and the higher number {2} earlier: {3}',
        lower.number,
        sayDays(lower.days, 'day'),
        higher.number,
        sayDays(higher.days, 'day'),
      ),
      phrase('check both dates and both numbers; a number may have been used again, or the series begun anew'),
    ),
    related: [
      { place: higher.object.placeOf(['numbers', higher.index, 'number']), text: phrase('number {0}', higher.number) },
    ],
  };
}

/** When the giver of a number had begun to hold the object, at the printed grade; null where that is not bounded on both sides. */
function heldBy(input: DoubtInput, object: Entry<'object'>, giver: string | undefined): DayRange | null {
  const holding = input.catalogue
    .ofType('holding')
    .find((one) => one.keys.holder === giver && one.keys.objects.some((id) => id.split('/')[0] === object.id));
  const begins = holding ? input.statements.moments.momentOf(holding.id, 'begins') : null;
  const range = begins ? input.rangesOf(begins)[rankOf(input.settings.printedGrade)] : undefined;
  return range?.earliest && range.latest ? { first: range.earliest.day, last: range.latest.day } : null;
}

/** Papers, acts and titles that name a law under which they stand, and had ended before it was in force. */
function lawsBeforeForce(input: DoubtInput): readonly Diagnostic[] {
  const { catalogue } = input;
  const citing = [...catalogue.ofType('event'), ...catalogue.ofType('title'), ...catalogue.ofType('source')];
  return citing.flatMap((entry) =>
    (entry.keys['under-law'] ?? []).flatMap((id, i): readonly Diagnostic[] => {
      const law = referenceNamed(catalogue, id);
      const latest = latestDay(input, entry);
      if (!law?.from || latest === null || latest >= law.from.first) return [];
      return [
        doubt(
          entry,
          ['under-law', i],
          'law-before-force',
          phrase(
            '{0} cites “{1}”, which was {2} {3}',
            entry.id,
            law.title,
            law.madeOnly ? phrase('made only on') : phrase('in force only from'),
            sayFrom(law),
          ),
          phrase(
            'check the date and the law that is meant; a paper that cites a later law was written later than it says',
          ),
        ),
      ];
    }),
  );
}

function sayFrom({ from }: ChosenReference): Said {
  return from ? sayDays({ first: from.first, last: from.first }, 'day') : '';
}

/** The last day that an act, a paper or an assertion can be of; null where nothing bounds it. */
function latestDay(input: DoubtInput, entry: Entry<'event' | 'title' | 'source'>): number | null {
  if (isOfType(entry, 'event')) {
    const end = input.statements.moments.momentOf(entry.id, 'end');
    return (end ? input.rangesOf(end)[rankOf(input.settings.printedGrade)]?.latest?.day : null) ?? null;
  }
  const written = isOfType(entry, 'title')
    ? entry.keys.begins
    : (entry.keys as { 'date-on-it'?: string })['date-on-it'];
  return written === undefined ? null : (daysOf(input, written)?.last ?? null);
}

/** A look in an archive that found nothing, used for or against a reading. */
function nilSearches({ catalogue }: DoubtInput): readonly Diagnostic[] {
  return catalogue.ofType('reading').flatMap((reading) =>
    (reading.keys.weighs ?? []).flatMap((one, i): readonly Diagnostic[] => {
      const search = catalogue.get(one.entry);
      if (!search || !isOfType(search, 'search') || (one.is !== 'requires' && one.is !== 'contradicts')) return [];
      if (search.keys.outcome !== 'not found in what was searched' && search.keys.outcome !== 'no access') return [];
      return [
        doubt(
          reading,
          ['weighs', i, 'is'],
          'nil-search-as-proof',
          phrase('{0} found nothing, and nothing found in what was searched proves no absence', search.id),
          phrase('write is: compatible or is: not diagnostic, with the reason'),
        ),
      ];
    }),
  );
}

function daysOf({ settings }: DoubtInput, text: string): DayRange | null {
  const read = readDate(text, 'gregorian', settings.dates);
  return isDateProblem(read) ? null : hullOfExpression(read);
}

function doubt(entry: Entry, path: KeyPath, code: string, message: Said, mend: Said): Diagnostic {
  return { code, severity: 'doubt', place: entry.placeOf(path), message, mend, entry: entry.id };
}
