import type { Diagnostic } from '../base/diagnostic.ts';
import { rankOf } from '../base/grade.ts';
import { phrase, type Said } from '../base/said.ts';
import { hullOfExpression } from '../dates/expression.ts';
import { isDateProblem, readDate } from '../dates/read-date.ts';
import { type Entry, isOfType, type KeyPath } from '../model/entry.ts';
import type { DoubtInput } from './doubts.ts';

/** Traps of holdings: outside the years of a person or firm, a dealer who bought counted as an agent. */
export function doubtsOfHoldings(input: DoubtInput): readonly Diagnostic[] {
  return input.catalogue
    .ofType('holding')
    .flatMap((holding) => [...outsideLife(input, holding), ...dealerWhoBought(input, holding)]);
}

/** Certainly held on a day after a death or a closing, or before a birth or a founding. */
function outsideLife(input: DoubtInput, holding: Entry<'holding'>): readonly Diagnostic[] {
  const party = holding.keys.holder === undefined ? undefined : input.catalogue.get(holding.keys.holder);
  const [begins, ends] = (['begins', 'ends'] as const).map((edge) =>
    input.statements.moments.momentOf(holding.id, edge),
  );
  if (!party || !isOfType(party, 'party') || !begins || !ends) return [];
  const rank = rankOf(input.settings.printedGrade);
  const begunBy = input.rangesOf(begins)[rank]?.latest?.day;
  const notEndedBefore = input.rangesOf(ends)[rank]?.earliest?.day;
  const days = (text: string | undefined) => {
    if (text === undefined) return null;
    const read = readDate(text, 'gregorian', input.settings.dates);
    return isDateProblem(read) ? null : hullOfExpression(read);
  };
  const { born, died, founded, closed } = party.keys;
  const first = days(born ?? founded);
  const last = days(died ?? closed);
  const early =
    first && begunBy !== undefined && begunBy < first.first
      ? born
        ? phrase('born {0}', born)
        : phrase('founded {0}', founded)
      : null;
  const late =
    last && notEndedBefore !== undefined && notEndedBefore > last.last
      ? died
        ? phrase('died {0}', died)
        : phrase('closed {0}', closed)
      : null;
  const outside = early ?? late;
  if (outside === null) return [];
  return [
    doubt(
      holding,
      [early ? 'begins' : 'ends'],
      'holding-outside-life',
      phrase('{0} has it with {1} at a time when the party was not there ({2})', holding.id, party.id, outside),
      phrase('check the dates; an estate, an heir or a successor firm is a holding and a party of its own'),
    ),
  ];
}

/** A dealer who bought possesses; counted as an agent, his purchase does not end the time of the one before. */
function dealerWhoBought({ catalogue }: DoubtInput, holding: Entry<'holding'>): readonly Diagnostic[] {
  const { capacity, from, passage } = holding.keys;
  const before = from === undefined ? undefined : catalogue.get(from);
  const bought = ['purchase', 'sale', 'gift', 'bequest', 'exchange', 'inheritance'].includes(
    holding.keys['acquired-by'] ?? '',
  );
  if (capacity !== 'agent or dealer' || !bought || passage === undefined) return [];
  if (!before || !isOfType(before, 'holding') || before.keys.capacity !== 'possessor') return [];
  return [
    doubt(
      holding,
      ['capacity'],
      'dealer-who-bought',
      phrase(
        'the dealer is said to have acquired it ({0}), but counts as an agent, so that {1} goes on possessing it',
        holding.keys['acquired-by'],
        before.id,
      ),
      phrase(
        'if the dealer owned it, write capacity: possessor; if it was only to be sold for another, write acquired-by: consignment',
      ),
    ),
  ];
}

function doubt(entry: Entry, path: KeyPath, code: string, message: Said, mend: Said): Diagnostic {
  return { code, severity: 'doubt', place: entry.placeOf(path), message, mend, entry: entry.id };
}
