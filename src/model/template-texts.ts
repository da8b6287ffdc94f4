/** What stands below the keys of a new entry until somebody writes; it is never shown on a page. */
export const TEMPLATE_TEXTS = {
  entry: 'Write here what speaks for this entry and what against it.',
  workspace: 'Say here in a few sentences what this file is about and which question brought it about.',
  object: 'Describe the object here.',
  removal: 'What is known of the removal, and from where?',
} as const;

/** True for a text that is still the one of the template. */
export function isTemplateText(text: string): boolean {
  const plain = text.trim().replace(/\s+/g, ' ');
  return Object.values<string>(TEMPLATE_TEXTS).includes(plain);
}
