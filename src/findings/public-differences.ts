import type { Diagnostic } from '../base/diagnostic.ts';
import { rankOf } from '../base/grade.ts';
import { named, phrase, type Said, sameSaid } from '../base/said.ts';
import { titleOf } from '../model/catalogue.ts';
import { isOfType } from '../model/entry.ts';
import type { CaseFile } from './case-file.ts';
import type { Chain } from './chain.ts';
import { findChains } from './custody-chains.ts';
import { sayGap } from './custody-words.ts';
import { sayRange } from './printed-range.ts';

/** One thing that a public build says otherwise than this one. */
export interface PublicDifference {
  readonly entry: string;
  readonly kind: 'range' | 'gap' | 'contradiction';
  /** What it is about: `beginning of “Taken off the wall”`. */
  readonly what: Said;
  readonly here: Said;
  readonly public: Said;
}

/**
 * Where a public build would print another range, another gap, or hide a contradiction: for a person to sign off before
 * publishing. Entries that the public does not see at all are no difference.
 */
export function publicDifferences(file: CaseFile, forPublic: CaseFile): readonly PublicDifference[] {
  if (!forPublic.catalogue.holdsMore) return [];
  return [...rangeDifferences(file, forPublic), ...gapDifferences(file, forPublic), ...hidden(file, forPublic)];
}

const EDGES = {
  start: 'beginning',
  end: 'end',
  begins: 'beginning',
  ends: 'end',
  moment: 'making',
  delivery: 'delivery',
} as const;

function rangeDifferences(file: CaseFile, forPublic: CaseFile): readonly PublicDifference[] {
  const rank = rankOf(file.settings.printedGrade);
  return forPublic.statements.moments.all.flatMap((moment): readonly PublicDifference[] => {
    const own = file.statements.moments.momentOf(moment.entry, moment.edge);
    const entry = file.catalogue.get(moment.entry);
    const [here, there] = [own ? file.rangesOf(own)[rank] : undefined, forPublic.rangesOf(moment)[rank]];
    if (!entry || !here || !there) return [];
    const [a, b] = [sayRange(here), sayRange(there)];
    if (sameSaid(a, b) && here.consistent === there.consistent) return [];
    const said = (words: Said, consistent: boolean): Said =>
      consistent ? words : phrase('{0}, statements disagree', words);
    return [
      {
        entry: entry.id,
        kind: 'range',
        what: phrase('{0} of “{1}”', named(EDGES[moment.edge]), titleOf(entry, file.settings.languages)),
        here: said(a, here.consistent),
        public: said(b, there.consistent),
      },
    ];
  });
}

function gapDifferences(file: CaseFile, forPublic: CaseFile): readonly PublicDifference[] {
  const gapsOf = (from: CaseFile): ReadonlyMap<string, Chain['gaps'][number]> =>
    new Map(
      findChains(from)
        .flatMap((chain) => chain.gaps)
        .map((gap) => [`${gap.before.id} ${gap.after.id}`, gap]),
    );
  const [own, there] = [gapsOf(file), gapsOf(forPublic)];
  return [...new Set([...own.keys(), ...there.keys()])].flatMap((key): readonly PublicDifference[] => {
    const [here, open] = [own.get(key), there.get(key)];
    const [a, b] = [here, open].map((gap) => (gap ? sayGap(gap) : phrase('no such gap')));
    const after = (here ?? open)?.after;
    const before = (here ?? open)?.before;
    const isSeen = [before, after].every((one) => one && forPublic.catalogue.get(one.id));
    if (!before || !after || !isSeen || sameSaid(a ?? '', b ?? '')) return [];
    return [
      {
        entry: after.id,
        kind: 'gap',
        what: phrase(
          'gap between “{0}” and “{1}”',
          titleOf(before, file.settings.languages),
          titleOf(after, file.settings.languages),
        ),
        here: a ?? '',
        public: b ?? '',
      },
    ];
  });
}

function hidden(file: CaseFile, forPublic: CaseFile): readonly PublicDifference[] {
  const key = (one: CaseFile['contradictions'][number]): string => one.statements.map((s) => s.id).join(' ');
  const shown = new Set(forPublic.contradictions.map(key));
  return file.contradictions
    .filter((one) => !shown.has(key(one)))
    .map((one) => ({
      entry: one.statements[0]?.entry ?? '',
      kind: 'contradiction',
      what: phrase('statements that cannot all be right: {0}', one.statements.map((s) => s.id).join(', ')),
      here: phrase('told'),
      public: phrase('not told'),
    }));
}

/** Each difference as a doubt, until the workspace entry signs it off. */
export function publicDoubts(file: CaseFile, differences: readonly PublicDifference[]): readonly Diagnostic[] {
  const signed = new Set((file.catalogue.workspace?.keys['signed-off'] ?? []).map((one) => one.entry));
  return differences.flatMap(({ entry: id, kind, what, here, public: there }): readonly Diagnostic[] => {
    const entry = file.catalogue.get(id);
    if (!entry || signed.has(id)) return [];
    return [
      {
        code: kind === 'contradiction' ? 'public-hides-contradiction' : 'public-differs',
        severity: 'doubt',
        place: entry.placeOf([isOfType(entry, 'claim') ? 'about' : 'id']),
        entry: id,
        message:
          kind === 'contradiction'
            ? phrase('a public build does not tell this: {0}', what)
            : phrase('a public build says otherwise of the {0}: {1} (here: {2})', what, there, here),
        mend: phrase(
          "if that may be published, sign it off in the workspace entry: signed-off: ['{' entry: {0}, by: ..., on: ..., why: ... '}']; else change access or withhold",
          id,
        ),
      },
    ];
  });
}
