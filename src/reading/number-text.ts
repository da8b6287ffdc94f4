import { isMap, isScalar, isSeq, parseDocument, type YAMLMap } from 'yaml';
import type { TextFile } from './text-file.ts';

/** Lists whose items are statements with numbers, by type of entry, in the order of the numbers. */
const NUMBERED: Readonly<Record<string, readonly string[]>> = {
  event: ['stated', 'relations'],
  holding: ['begins', 'ends', 'held'],
};

/**
 * Puts `ref: NUMBER` into every inline statement that has none, where NUMBER is that of its place,
 * so that no id changes. Only these words are inserted; every other character stays.
 */
export function numberText({ text }: TextFile): { readonly text: string; readonly added: readonly string[] } {
  const none = { text, added: [] };
  const opening = /^---[ \t]*\r?\n/.exec(text);
  const closing = opening ? /\r?\n---[ \t]*(?:\r?\n|$)/.exec(text.slice(opening[0].length - 1)) : null;
  if (!opening || !closing) return none;
  const from = opening[0].length;
  const document = parseDocument(text.slice(from, from - 1 + closing.index));
  if (document.errors.length > 0 || !isMap(document.contents)) return none;
  const keys = document.contents;
  const lists = NUMBERED[String(keys.get('type'))] ?? [];
  const insertions: { readonly at: number; readonly words: string }[] = [];
  const added: string[] = [];
  const refs = new Set(lists.flatMap((list) => itemsOf(keys, list).map((item) => String(item.get('ref') ?? ''))));
  let place = 0;
  for (const item of lists.flatMap((list) => itemsOf(keys, list))) {
    place += 1;
    if (item.has('ref') || refs.has(String(place)) || !item.range) continue;
    const at = from + item.range[0];
    insertions.push(text[at] === '{' ? { at: at + 1, words: ` ref: "${place}",` } : blockInsertion(text, at, place));
    added.push(`${String(keys.get('id'))}#${place}`);
  }
  return {
    text: insertions
      .toSorted((a, b) => b.at - a.at)
      .reduce((all, { at, words }) => all.slice(0, at) + words + all.slice(at), text),
    added,
  };
}

function itemsOf(keys: YAMLMap, list: string): readonly YAMLMap[] {
  const value = keys.get(list, true);
  return isSeq(value)
    ? value.items.filter((item): item is YAMLMap => isMap(item) && item.items.every((pair) => isScalar(pair.key)))
    : [];
}

/** In a block of lines the ref gets a line of its own, set in like its neighbours. */
function blockInsertion(text: string, at: number, place: number): { readonly at: number; readonly words: string } {
  const column = at - (text.lastIndexOf('\n', at) + 1);
  return { at, words: `ref: "${place}"\n${' '.repeat(column)}` };
}
