import { formatIsoDay } from '../dates/day.ts';
import { sayStatement } from '../statements/say-statement.ts';
import type { CaseFile } from './case-file.ts';
import type { MomentBound } from './printed-range.ts';

/** The machine-readable chronology, format `kerfmark-dates/1` (docs/methods.md, what machines read). */
export interface DatesReport {
  readonly format: 'kerfmark-dates/1';
  readonly moments: readonly {
    readonly entry: string;
    readonly edge: string;
    readonly ranges: readonly {
      readonly grade: string;
      /** ISO dates; null where nothing bounds it. */
      readonly earliest: string | null;
      readonly latest: string | null;
      readonly earliestBecause: readonly string[];
      readonly latestBecause: readonly string[];
      readonly consistent: boolean;
      readonly setAside: readonly string[];
      readonly alternatives: readonly { readonly earliest: string | null; readonly latest: string | null }[];
      readonly exact: boolean;
    }[];
  }[];
  readonly contradictions: readonly {
    readonly grade: string;
    readonly kind: string;
    readonly cluster: number;
    readonly complete: boolean;
    readonly statements: readonly string[];
    readonly waysOut: readonly (readonly string[])[];
  }[];
  readonly statements: Readonly<
    Record<string, { readonly kind: string; readonly grade: string; readonly text: string }>
  >;
}

/** Writes the chronology of a case file as data. */
export function datesReport(file: CaseFile): DatesReport {
  const ids = (list: readonly { readonly id: string }[]): readonly string[] => list.map((one) => one.id);
  return {
    format: 'kerfmark-dates/1',
    moments: file.statements.moments.all.map((moment) => ({
      entry: moment.entry,
      edge: moment.edge,
      ranges: file.rangesOf(moment).map((range) => ({
        grade: range.grade,
        earliest: isoOf(range.earliest),
        latest: isoOf(range.latest),
        earliestBecause: ids(range.earliest?.because ?? []),
        latestBecause: ids(range.latest?.because ?? []),
        consistent: range.consistent,
        setAside: ids(range.setAside),
        alternatives: range.alternatives.map((one) => ({ earliest: isoDay(one.earliest), latest: isoDay(one.latest) })),
        exact: range.exact,
      })),
    })),
    contradictions: file.contradictions.map(({ grade, kind, cluster, complete, statements, waysOut }) => ({
      grade,
      kind,
      cluster,
      complete,
      statements: ids(statements),
      waysOut: waysOut.map(ids),
    })),
    statements: Object.fromEntries(
      file.statements.used
        .filter((one) => !file.withdrawn.includes(one.id))
        .map(({ id, kind, grade, says }) => [id, { kind, grade, text: file.sayer.say(sayStatement(says)) }]),
    ),
  };
}

function isoOf(bound: MomentBound | null): string | null {
  return bound ? formatIsoDay(bound.day) : null;
}

function isoDay(day: number): string | null {
  return Number.isFinite(day) ? formatIsoDay(day) : null;
}
