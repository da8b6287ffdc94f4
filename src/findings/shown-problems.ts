import type { Diagnostic } from '../base/diagnostic.ts';
import { textsIn } from '../base/said.ts';
import type { Catalogue } from '../model/catalogue.ts';

/**
 * The problems found in the whole file that may stand on a page for an audience: those of entries that it sees with
 * every word, which name no entry that it does not see. The words of others could tell what was taken out; `kerfmark
 * check`, run by who has the files, tells all of them.
 */
export function shownProblems(
  problems: readonly Diagnostic[],
  whole: Catalogue,
  shown: Catalogue,
): readonly Diagnostic[] {
  if (!shown.holdsMore) return problems;
  const hidden = new Set(whole.entries.map((entry) => entry.id).filter((id) => shown.shownAs(id) !== id));
  const namesHidden = (text: string): boolean =>
    (text.match(/[\p{L}\p{N}][\p{L}\p{N}.-]*/gu) ?? []).some(
      (word) => hidden.has(word) || hidden.has(word.replace(/\.(begins|ends|start|end|md|csv)$|\.+$/, '')),
    );
  return problems.filter(
    (one) =>
      one.entry !== undefined &&
      shown.isWhole(one.entry) &&
      !namesHidden(
        [one.message, one.mend, ...(one.related ?? []).flatMap(({ text, place }) => [text, place.file])]
          .flatMap(textsIn)
          .join('\n'),
      ),
  );
}
