import type { Root } from 'mdast';
import type { ComponentChildren, JSX } from 'preact';
import rehypeStringify from 'rehype-stringify';
import remarkParse from 'remark-parse';
import remarkRehype from 'remark-rehype';
import { unified } from 'unified';
import { visit } from 'unist-util-visit';
import { language } from '../say.ts';

/** A paragraph that stands for something computed: `[[grades]]`. */
const SLOT = /^\[\[([a-z]+)\]\]$/;

/** A heading with the name by which links lead to it: `Grades {#grades}`. */
const NAMED = /^(.*?)\s*\{#([a-z]+)\}$/;

/**
 * A longer text of the interface, which each language has as Markdown, with what is computed in its places: elements where
 * `[[name]]` stands alone, words where it stands in a sentence.
 *
 * @param name of the file in the folder of the language
 */
export function Prose({
  name,
  slots,
  values = {},
}: {
  readonly name: string;
  readonly slots: Readonly<Record<string, () => ComponentChildren>>;
  readonly values?: Readonly<Record<string, string>>;
}): JSX.Element {
  const text = language().prose[name];
  if (text === undefined) throw new Error(`The language ${language().tag} has no text "${name}".`);
  const parts = partsOf(unified().use(remarkParse).parse(text), values);
  return (
    <>
      {parts.map((part) =>
        typeof part === 'string' ? (
          slots[part]?.()
        ) : (
          <div class="prose" dangerouslySetInnerHTML={{ __html: htmlOf(part) }} />
        ),
      )}
    </>
  );
}

/** Stretches of text, and the names of what stands between them. */
function partsOf(tree: Root, values: Readonly<Record<string, string>>): readonly (Root | string)[] {
  const parts: (Root | string)[] = [];
  for (const block of tree.children) {
    const [only] = block.type === 'paragraph' ? block.children : [];
    const slot = only?.type === 'text' ? SLOT.exec(only.value)?.[1] : undefined;
    const last = parts.at(-1);
    if (slot !== undefined) parts.push(slot);
    else if (typeof last === 'object') last.children.push(block);
    else parts.push({ type: 'root', children: [block] });
  }
  for (const part of parts.filter((one) => typeof one === 'object')) {
    visit(part, 'heading', (heading) => {
      const [only] = heading.children;
      const found = only?.type === 'text' ? NAMED.exec(only.value) : null;
      if (!found || only?.type !== 'text') return;
      only.value = found[1] ?? '';
      heading.data = { hProperties: { id: found[2] } };
    });
    visit(part, 'text', (node) => {
      node.value = node.value.replace(/\[\[([a-z]+)\]\]/g, (_, value: string) => values[value] ?? '');
    });
  }
  return parts;
}

function htmlOf(tree: Root): string {
  const processor = unified().use(remarkRehype).use(rehypeStringify);
  return processor.stringify(processor.runSync(tree));
}
