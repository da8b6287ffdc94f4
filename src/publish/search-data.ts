import { visit } from 'unist-util-visit';
import type { CaseFile } from '../findings/case-file.ts';
import { titleOf } from '../model/catalogue.ts';
import type { Entry } from '../model/entry.ts';
import { entryPath } from './page-paths.ts';

/** One entry as the search knows it. */
export interface SearchRow {
  readonly id: string;
  readonly type: string;
  readonly title: string;
  /** Titles in other languages, names, romanised names, numbers. */
  readonly names: string;
  /** The beginning of its text, or what its keys say in words. */
  readonly summary: string;
  readonly address: string;
}

/** Longest summary, in characters. */
const MOST = 240;

/** Everything that can be found, as this audience may see it. */
export function searchRows(file: CaseFile): readonly SearchRow[] {
  return file.catalogue.entries.map((entry) => ({
    id: entry.id,
    type: entry.type,
    title: titleOf(entry, file.settings.languages),
    names: namesOf(entry).join(' · '),
    summary: summaryOf(entry),
    address: entryPath(entry.id),
  }));
}

function namesOf({ keys }: Entry): readonly string[] {
  const all = keys as {
    readonly names?: readonly { readonly text: string; readonly romanised?: string }[];
    readonly 'accession-numbers'?: readonly string[];
    readonly numbers?: readonly { readonly number: string }[];
  };
  const titles = typeof keys.title === 'string' ? [] : Object.values(keys.title);
  return [
    ...titles,
    ...(all.names ?? []).flatMap((one) => [one.text, ...(one.romanised ? [one.romanised] : [])]),
    ...(all['accession-numbers'] ?? []),
    ...(all.numbers ?? []).map((one) => one.number),
  ];
}

function summaryOf({ argument, keys }: Entry): string {
  const words: string[] = [];
  visit(argument, 'text', (node) => {
    words.push(node.value);
  });
  const said = keys as Readonly<Record<string, unknown>>;
  const inKeys = ['kind', 'role', 'repository', 'reference-code', 'for', 'proposition', 'where', 'reads']
    .map((key) => said[key])
    .filter((value) => typeof value === 'string');
  const observed = (said.observed as { text?: string } | undefined)?.text;
  const text = [...inKeys, observed ?? '', words.join(' ')].filter(Boolean).join('. ').replace(/\s+/g, ' ').trim();
  return text.length <= MOST ? text : `${text.slice(0, MOST - 1).trimEnd()}…`;
}
