import type { EntryType } from '../model/entry-type-names.ts';

/** Registers of the site: address, title, and the types that they list. */
export const REGISTERS = [
  { name: 'events', title: 'Events', types: ['event'] },
  { name: 'evidence', title: 'Evidence', types: ['evidence', 'examination', 'survey', 'figure'] },
  { name: 'claims', title: 'Claims', types: ['claim'] },
  { name: 'sources', title: 'Sources', types: ['source'] },
  { name: 'holdings', title: 'Holdings and titles', types: ['holding', 'title'] },
  { name: 'parties', title: 'Parties', types: ['party'] },
  { name: 'places', title: 'Places', types: ['place'] },
  { name: 'searches', title: 'Searches', types: ['search'] },
  { name: 'questions', title: 'Questions and readings', types: ['question', 'reading'] },
  { name: 'letters', title: 'Inquiries and answers', types: ['inquiry', 'request-for-return', 'response'] },
  { name: 'laws', title: 'Reference dates', types: ['reference-date'] },
] as const satisfies readonly { name: string; title: string; types: readonly EntryType[] }[];

/** Name of a register. */
export type RegisterName = (typeof REGISTERS)[number]['name'];

/** Address of an entry's page; `#` parts lead to its statements, `/` parts to panels of an object. */
export function entryPath(target: string): string {
  const [entry = '', statement] = target.split('#');
  const [id = '', part] = entry.replace(/\.(begins|ends|start|end)$/, '').split('/');
  const anchor = statement !== undefined ? `#${statementAnchor(statement)}` : part === undefined ? '' : `#part-${part}`;
  return `entry/${id}.html${anchor}`;
}

/** Anchor of a statement inside its entry's page. */
export function statementAnchor(part: string): string {
  return `s-${part}`;
}

/** Address of the page that gives the reasons for an entry's dates. */
export function reasonPath(entry: string): string {
  return `why/${entry}.html`;
}

/** Address of the page of a panel. */
export function panelPath(object: string, panel: string): string {
  return `panel/${object}-${panel}.html`;
}

/** Address of the plate of a panel's face. */
export function platePath(object: string, panel: string, face: string): string {
  return `plate/${object}-${panel}-${face}.html`;
}

/** Address of the plan of a panel's face as a file of its own. */
export function planFilePath(object: string, panel: string, face: string): string {
  return `plate/${object}-${panel}-${face}.svg`;
}

/** Address of the page for looking at a large figure closely. */
export function closePath(figure: string): string {
  return `close/${figure}.html`;
}

/** Address of the page that tells how the results of a panel were computed. */
export function measuredPath(object: string, panel: string): string {
  return `panel/${object}-${panel}-how.html`;
}

/** Address of a report on an object: its provenance file, or its appendix. */
export function reportPath(object: string, kind: 'file' | 'appendix'): string {
  return `report/${object}-${kind}.html`;
}

/** Address of a drawing of a report. */
export function reportPicturePath(object: string, picture: string): string {
  return `report/${object}-${picture}.svg`;
}

/** Address of the manifest of an object for programs that show pictures (IIIF Presentation 3). */
export function manifestPath(object: string): string {
  return `iiif/${object}.json`;
}

/** Address of the answer to an inquiry. */
export function answerPath(inquiry: string): string {
  return `answer/${inquiry}.html`;
}

/** Address of the page for tracing on a figure. */
export function tracingPath(figure: string): string {
  return `tracing/${figure}.html`;
}

/** A link from one page of the site to another, relative, so that the site works from any folder and from a disk. */
export function relativeHref(fromPath: string, toPath: string): string {
  const depth = fromPath.split('/').length - 1;
  return `${'../'.repeat(depth)}${toPath}`;
}
