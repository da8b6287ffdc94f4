import type { Diagnostic } from '../base/diagnostic.ts';
import { nearest } from '../base/nearest.ts';
import { oneOf, phrase } from '../base/said.ts';
import type { Catalogue } from '../model/catalogue.ts';
import type { Entry } from '../model/entry.ts';
import { isKnownReference, REFERENCE_IDS, referenceTable } from './reference-dates.ts';

/** Words of the column of acts that a reference date is tested on. */
const ACT_WORDS: readonly string[] = ['removal', 'export', 'import', 'acquisition', 'holding', 'any'];

/** Reference dates that would drop out without a word: an id that is not in the table, an act that is none, no date. */
export function referenceProblems(catalogue: Catalogue): readonly Diagnostic[] {
  const { workspace } = catalogue;
  const chosen = (workspace?.keys['reference-dates'] ?? []).flatMap((one, i) =>
    workspace
      ? [{ entry: workspace as Entry, path: ['reference-dates', i], id: typeof one === 'string' ? one : one.id }]
      : [],
  );
  const citing = [...catalogue.ofType('event'), ...catalogue.ofType('title'), ...catalogue.ofType('source')];
  const cited = citing.flatMap((entry) =>
    (entry.keys['under-law'] ?? []).map((id, i) => ({ entry: entry as Entry, path: ['under-law', i], id })),
  );
  const applied = catalogue
    .ofType('event')
    .flatMap((entry) =>
      (entry.keys.applies ?? []).map((one, i) => ({ entry: entry as Entry, path: ['applies', i, 'law'], id: one.law })),
    );
  const unknown = [...chosen, ...cited, ...applied].flatMap(({ entry, path, id }): readonly Diagnostic[] => {
    if (isKnownReference(catalogue, id)) return [];
    const near = nearest(id, REFERENCE_IDS);
    const begins = REFERENCE_IDS.filter((row) => row.startsWith(id.slice(0, 6))).slice(0, 3);
    const offers = near.length > 0 ? near : begins;
    return [
      {
        code: 'unknown-reference-date',
        severity: 'error',
        place: entry.placeOf(path),
        entry: entry.id,
        message: phrase('there is no reference date "{0}" in the table', id),
        mend:
          offers.length > 0
            ? phrase('did you mean {0}? "kerfmark references --list" prints all', oneOf(offers))
            : phrase('"kerfmark references --list" prints all; one of your own is an entry of type reference-date'),
      },
    ];
  });
  const untestable = catalogue.ofType('reference-date').flatMap((entry): readonly Diagnostic[] => {
    const { tests, made } = entry.keys;
    const acts = (tests ?? 'any').split(/[;,]/).map((act) => act.trim());
    const strange = acts.filter((act) => !ACT_WORDS.includes(act));
    const dated = made !== undefined || entry.keys['in-force-from'] !== undefined;
    if (strange.length === 0 && dated) return [];
    return [
      {
        code: 'reference-date-untestable',
        severity: 'error',
        place: entry.placeOf([strange.length > 0 ? 'tests' : 'id']),
        entry: entry.id,
        message:
          strange.length > 0
            ? phrase('"{0}" is no act that a reference date can be tested on', strange.join(', '))
            : phrase('{0} has no date, so nothing can be tested on it', entry.id),
        mend:
          strange.length > 0
            ? phrase('write of these: {0}; several with ;', ACT_WORDS.join(', '))
            : phrase('add made or in-force-from'),
      },
    ];
  });
  return [...unknown, ...untestable, ...unknownTerritories(catalogue)];
}

/** A territory under a place's rule that is nearly one of the table: a slip would print "no rows". */
function unknownTerritories(catalogue: Catalogue): readonly Diagnostic[] {
  const known = [...new Set(referenceTable().map((row) => row.jurisdiction))];
  return catalogue.ofType('place').flatMap((place) =>
    (place.keys.rule ?? []).flatMap((rule, i): readonly Diagnostic[] => {
      const name = rule.jurisdiction
        ?.trim()
        .toLowerCase()
        .replace(/[^a-z0-9]+/g, '-');
      if (name === undefined || known.includes(name)) return [];
      const near = nearest(name, known);
      if (near.length === 0) return [];
      return [
        {
          code: 'unknown-territory',
          severity: 'doubt',
          place: place.placeOf(['rule', i, 'jurisdiction']),
          entry: place.id,
          message: phrase('the table of reference dates has no territory "{0}"', rule.jurisdiction),
          mend: phrase('did you mean {0}? "kerfmark references --list" prints all', oneOf(near)),
        },
      ];
    }),
  );
}
