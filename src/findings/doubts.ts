import type { Diagnostic } from '../base/diagnostic.ts';
import { rankOf } from '../base/grade.ts';
import { phrase, type Said } from '../base/said.ts';
import type { DayRange } from '../dates/day.ts';
import { hullOfExpression } from '../dates/expression.ts';
import { isDateProblem, readDate } from '../dates/read-date.ts';
import { sayDays } from '../language/date-words.ts';
import type { Catalogue } from '../model/catalogue.ts';
import { type Entry, isOfType, type KeyPath } from '../model/entry.ts';
import { samePiece } from '../model/pieces.ts';
import type { Settings } from '../model/settings.ts';
import type { FileStatements, Moment } from '../statements/statements.ts';
import { gregorianHint } from './calendar-slip.ts';
import { doubtsOfHoldings } from './doubts-of-holdings.ts';
import { doubtsOfOrder } from './doubts-of-order.ts';
import { doubtsOfPapers } from './doubts-of-papers.ts';
import { ancestorsOf } from './independence.ts';
import { type MomentRange, sayRange } from './printed-range.ts';
import { titleDoubts } from './title-disputes.ts';

/** What the doubts are found from. */
export interface DoubtInput {
  readonly catalogue: Catalogue;
  rangesOf(moment: Moment): readonly MomentRange[];
  readonly settings: Settings;
  readonly statements: FileStatements;
}

/** A date with the words of its document. */
interface StatedWords {
  readonly date?: string | undefined;
  readonly calendar?: string | undefined;
  readonly 'as-written'?: string | undefined;
}

/** Finds the trade's known traps in the entries; never an inference about persons. */
export function findDoubts(input: DoubtInput): readonly Diagnostic[] {
  const { catalogue } = input;
  return [
    ...catalogue
      .ofType('claim')
      .flatMap((claim) => [
        ...claimAndCopy(catalogue, claim),
        ...convertedSlip(input, claim, claim.keys.says, ['says', 'date']),
      ]),
    ...[...catalogue.ofType('event'), ...catalogue.ofType('holding')].flatMap((entry) =>
      (['stated', 'begins', 'ends', 'held'] as const).flatMap((key) =>
        statedUnder(entry, key).flatMap((one, i) => convertedSlip(input, entry, one, [key, i, 'date'])),
      ),
    ),
    ...gradeAboveSource(input),
    ...twoPossessors(input),
    ...catalogue.ofType('evidence').flatMap((trace) => labelOutsideYears(input, trace)),
    ...doubtsOfOrder(input),
    ...doubtsOfPapers(input),
    ...doubtsOfHoldings(input),
    ...titleDoubts(catalogue, input.settings),
    ...catalogue.ofType('party').flatMap((party) => livingPerson(party)),
    ...catalogue.ofType('figure').flatMap((figure) => printBeforeTaking(input, figure)),
  ];
}

function doubt(entry: Entry, path: KeyPath, code: string, message: Said, mend: Said): Diagnostic {
  return { code, severity: 'doubt', place: entry.placeOf(path), message, mend, entry: entry.id };
}

/** A claim called first-hand, whose source was copied from that of another claim on the same thing. */
function claimAndCopy(catalogue: Catalogue, claim: Entry<'claim'>): readonly Diagnostic[] {
  const source = catalogue.get(claim.keys.source);
  if (!source || !isOfType(source, 'source') || claim.keys.basis !== 'first-hand') return [];
  const ancestors = ancestorsOf(catalogue, source.id);
  const copied =
    ancestors.size > 0 &&
    catalogue
      .ofType('claim')
      .some((other) => other.keys.about === claim.keys.about && ancestors.has(other.keys.source));
  if (!copied) return [];
  return [
    doubt(
      claim,
      ['basis'],
      'first-hand-from-a-copy',
      phrase(
        'the claim is called first-hand, but its source {0} derives from {1}',
        source.id,
        [...ancestors].join(', '),
      ),
      phrase('write basis: reported, or let the claim rest on the first source'),
    ),
  ];
}

function statedUnder(entry: Entry, key: string): readonly StatedWords[] {
  return ((entry.keys as Record<string, unknown>)[key] ?? []) as readonly StatedWords[];
}

/** Statements graded better than a questioned source allows. */
function gradeAboveSource({ catalogue, statements }: DoubtInput): readonly Diagnostic[] {
  return statements.all.flatMap((one) => {
    const entry = catalogue.get(one.entry);
    const source = one.source === null ? undefined : catalogue.get(one.source);
    const judged = source && isOfType(source, 'source') ? source.keys.authenticity : undefined;
    const authenticity = typeof judged === 'string' ? judged : judged?.is;
    if (!entry || authenticity !== 'questioned' || rankOf(one.statedGrade) >= rankOf('possible')) return [];
    const path = one.kind === 'claim' ? ['grade'] : [...one.path, 'grade'];
    return [
      doubt(
        entry,
        path,
        'grade-above-source',
        phrase(
          'the statement is {0}, but its source {1} is questioned; it is computed as possible',
          one.statedGrade,
          one.source,
        ),
        phrase('write grade: possible, or settle the question about the source'),
      ),
    ];
  });
}

/** A label with the address of a firm, made (on probable statements) at a time when the firm was not there. */
function labelOutsideYears(input: DoubtInput, trace: Entry<'evidence'>): readonly Diagnostic[] {
  const named = trace.keys['firm-at-address'];
  const firm = named ? input.catalogue.get(named.party) : undefined;
  const moment = input.statements.moments.momentOf(trace.id, 'moment');
  if (!named || !firm || !isOfType(firm, 'party') || !moment) return [];
  const times = (firm.keys.addresses ?? []).filter((one) => one.text === named.address);
  const made = input.rangesOf(moment)[1];
  const [first, last] = [
    made?.earliest?.day ?? Number.NEGATIVE_INFINITY,
    made?.latest?.day ?? Number.POSITIVE_INFINITY,
  ];
  const outside = (one: (typeof times)[number]): boolean => {
    const from = one.from === undefined ? null : dayRange(input, one.from);
    const to = one.to === undefined ? null : dayRange(input, one.to);
    return (from !== null && last < from.first) || (to !== null && first > to.last);
  };
  if (times.length === 0 || !times.every(outside)) return [];
  const years = times.map((one) => `${one.from ?? ''}-${one.to ?? ''}`).join(', ');
  return [
    doubt(
      trace,
      ['firm-at-address'],
      'label-outside-years',
      phrase(
        'the firm was at this address in {0}, but other statements put this label {1}',
        years,
        made ? sayRange(made) : '',
      ),
      phrase('check the dates of the address, or of the label; old labels and slates were used again'),
    ),
  ];
}

function dayRange({ settings }: DoubtInput, text: string): DayRange | null {
  const read = readDate(text, 'gregorian', settings.dates);
  return isDateProblem(read) ? null : hullOfExpression(read);
}

/** Two possessors who, on probable statements, both held the same piece throughout more than the paperwork lag. */
function twoPossessors(input: DoubtInput): readonly Diagnostic[] {
  const { catalogue, settings } = input;
  const possessors = catalogue.ofType('holding').filter((one) => one.keys.capacity === 'possessor');
  const place = new Map(possessors.map((one, i) => [one.id, i]));
  // Only what names the same object can be the same piece.
  const after = (one: Entry<'holding'>, i: number): readonly Entry<'holding'>[] => {
    const roots = new Set(one.keys.objects.map((id) => id.split('/')[0] as string));
    const named = new Set([...roots].flatMap((root) => catalogue.onObject('holding', root)));
    return [...named]
      .filter((other) => (place.get(other.id) ?? -1) > i)
      .sort((a, b) => (place.get(a.id) ?? 0) - (place.get(b.id) ?? 0));
  };
  return possessors.flatMap((one, i) =>
    after(one, i).flatMap((other) => {
      const shared = one.keys['shared-with'] ?? other.keys['shared-with'];
      if (shared || !one.keys.objects.some((id) => other.keys.objects.some((second) => samePiece(id, second))))
        return [];
      const [a, b] = [heldThroughout(input, one.id), heldThroughout(input, other.id)];
      if (!a || !b) return [];
      const both = { first: Math.max(a.first, b.first), last: Math.min(a.last, b.last) };
      if (both.last - both.first + 1 <= Math.max(settings.paperworkLagDays, 1) + 1) return [];
      return [
        doubt(
          other,
          ['begins'],
          'two-possessors',
          phrase('{0} and {1} are both possessors of the same piece, {2}', one.id, other.id, sayDays(both, 'day')),
          phrase('if they shared it, write shared-with; else check the dates, or the capacity of one of them'),
        ),
      ];
    }),
  );
}

/** From the latest beginning to the earliest end, on probable statements; null where it is empty or open. */
function heldThroughout({ statements, rangesOf }: DoubtInput, holding: string): DayRange | null {
  const begins = statements.moments.momentOf(holding, 'begins');
  const ends = statements.moments.momentOf(holding, 'ends');
  const first = begins ? rangesOf(begins)[1]?.latest?.day : undefined;
  const last = ends ? rangesOf(ends)[1]?.earliest?.day : undefined;
  return first !== undefined && last !== undefined && first <= last ? { first, last } : null;
}

/** A day in the words of the document that does not become the date given. */
function convertedSlip(
  { settings }: DoubtInput,
  entry: Entry,
  words: StatedWords,
  path: KeyPath,
): readonly Diagnostic[] {
  if (words.date === undefined || words['as-written'] === undefined) return [];
  const given = readDate(words.date, (words.calendar ?? 'gregorian') as 'gregorian', settings.dates);
  if (isDateProblem(given)) return [];
  const hint = gregorianHint(words['as-written'], settings.dates);
  if (!hint) return [];
  const { first, last } = hullOfExpression(given);
  if (hint.range.first <= last && first <= hint.range.last) return [];
  return [
    doubt(
      entry,
      path,
      'text-and-date-differ',
      phrase('“{0}” is {1}, which is not {2}', words['as-written'], hint.words, words.date),
      phrase('check the conversion; write the date in its own calendar (calendar: ...) and let the program convert it'),
    ),
  ];
}

function livingPerson(party: Entry<'party'>): readonly Diagnostic[] {
  const { living, is } = party.keys;
  if (is !== 'person' || party.access !== 'public' || (living !== 'yes' && living !== 'not known')) return [];
  if (party.keys['may-be-named'] || party.keys['public-name']) return [];
  return [
    doubt(
      party,
      ['living'],
      'living-person-public',
      phrase('the entry is public, but the person may be living; it is left out of public builds'),
      phrase("set access: internal, give a public-name, or add \"may-be-named: '{' ground: ... '}'\""),
    ),
  ];
}

function printBeforeTaking({ settings }: DoubtInput, figure: Entry<'figure'>): readonly Diagnostic[] {
  const { taken, printed } = figure.keys;
  if (taken === undefined || printed === undefined) return [];
  const [from, to] = [taken, printed].map((text) => readDate(text, 'gregorian', settings.dates));
  if (!from || !to || isDateProblem(from) || isDateProblem(to)) return [];
  if (hullOfExpression(to).last >= hullOfExpression(from).first) return [];
  return [
    doubt(
      figure,
      ['printed'],
      'printed-before-taken',
      phrase('the print is dated before the picture was taken'),
      phrase('check both dates'),
    ),
  ];
}
