import type { Entry } from '../model/entry.ts';
import { isOfType } from '../model/entry.ts';
import table from '../reference/cautions.json' with { type: 'json' };

/** A caution with the bodies and the source that it points to. */
export type Caution = (typeof table)[number];

/** Words of a material's name, or of what is seen, that call for a caution. */
const BY_WORDS: readonly (readonly [subject: string, words: RegExp])[] = [
  ['lead', /\blead (white|tin)|white lead|red lead|minium|chrome yellow|litharge/i],
  ['arsenic', /orpiment|realgar|emerald green|scheele|paris green|arsenic/i],
  ['mercury', /vermilion|cinnabar|mercur/i],
  ['asbestos', /asbestos|cement sheet|fibre cement/i],
  ['pesticide residues', /\b(straw|felt|tow|sacking|hay)\b/i],
  ['mould', /\b(mould|mold)\b/i],
];

/** The cautions of one subject. */
export function cautionsOn(subject: string): readonly Caution[] {
  return table.filter((one) => one.subject === subject);
}

/**
 * Cautions that belong beside an entry: ultraviolet beside looks taken under it, poisons beside the materials that hold
 * them, dust beside sampling and treatment, residues beside straw and tow. Empty for most entries.
 */
export function cautionsFor(entry: Entry): readonly Caution[] {
  const subjects = new Set<string>();
  if (isOfType(entry, 'evidence')) {
    const { keys } = entry;
    if (keys['seen-under']?.includes('ultraviolet') || keys.glow) subjects.add('ultraviolet');
    if (keys.kind === 'sample') subjects.add('silica dust');
    const words = [...(keys.materials ?? []).map((one) => one.name), keys.observed?.text ?? ''].join(' ');
    for (const [subject, pattern] of BY_WORDS) if (pattern.test(words)) subjects.add(subject);
  }
  if (isOfType(entry, 'examination') && entry.keys.technique.includes('ultraviolet')) subjects.add('ultraviolet');
  if (isOfType(entry, 'figure') && entry.keys.technique === 'ultraviolet') subjects.add('ultraviolet');
  if (isOfType(entry, 'event') && ['sampling', 'treatment', 'backing', 'mounting'].includes(entry.keys.kind))
    subjects.add('silica dust');
  return table.filter((one) => subjects.has(one.subject));
}
