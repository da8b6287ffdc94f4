import type { Diagnostic } from '../base/diagnostic.ts';
import { phrase, type Said } from '../base/said.ts';
import { type Entry, isOfType, type KeyPath } from '../model/entry.ts';
import { samePiece } from '../model/pieces.ts';
import type { DoubtInput } from './doubts.ts';

/** Traps of holdings: a dealer who bought counted as an agent, somebody who is said to have had it and has no holding. */
export function doubtsOfHoldings(input: DoubtInput): readonly Diagnostic[] {
  return [...dealersWhoBought(input), ...outsideTheChain(input)];
}

/** Events at which somebody has a piece, though the event hands nothing on. */
const SHOWN_BY: readonly string[] = ['offered unsold', 'exhibition'];

/** Parties whom an offer, a show or a claim names as having a piece, and who have no holding of it. */
function outsideTheChain({ catalogue }: DoubtInput): readonly Diagnostic[] {
  const hasIt = (party: string, pieces: readonly string[]): boolean =>
    pieces.some((piece) =>
      catalogue
        .onObject('holding', piece.split('/')[0] as string)
        .some(
          ({ keys }) =>
            (keys.holder === party || (keys['shared-with'] ?? []).includes(party)) &&
            keys.objects.some((one) => samePiece(one, piece)),
        ),
    );
  const named = [
    ...catalogue
      .ofType('event')
      .filter(({ keys }) => SHOWN_BY.includes(keys.kind))
      .flatMap((event) =>
        (event.keys.parties ?? []).map((one, i) => ({
          entry: event as Entry,
          path: ['parties', i] as KeyPath,
          party: typeof one === 'string' ? one : one.party,
          pieces: (typeof one === 'string' ? undefined : one.objects) ?? event.keys.objects ?? [],
        })),
      ),
    ...catalogue.ofType('claim').flatMap((claim) => {
      const { says, about, standing } = claim.keys;
      const isOut = standing === 'rejected' || standing === 'withdrawn';
      return says.holder === undefined || isOut
        ? []
        : [{ entry: claim as Entry, path: ['says', 'holder'] as KeyPath, party: says.holder, pieces: [about] }];
    }),
  ];
  return named
    .filter(({ party, pieces }) => pieces.length > 0 && catalogue.get(party) && !hasIt(party, pieces))
    .map(({ entry, path, party }) =>
      doubt(
        entry,
        path,
        'named-not-in-chain',
        phrase('{0} is named as having it, but is not in the chain of those who had it', party),
        phrase('write a holding of {0}, or why it did not have it', party),
      ),
    );
}

function dealersWhoBought(input: DoubtInput): readonly Diagnostic[] {
  return input.catalogue.ofType('holding').flatMap((holding) => dealerWhoBought(input, holding));
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
