import { h, type VNode } from 'preact';
import { renderToString } from 'preact-render-to-string';
import type { Sayer } from '../../src/language/sayer.ts';
import { Speech } from '../say.ts';

/** The colours of a drawing that stands alone: those of the light page. */
const ALONE: Readonly<Record<string, string>> = {
  '--ink': '#1f1c18',
  '--second': '#5d564d',
  '--paper': '#ffffff',
  '--hair': '#d8d2c6',
  '--tint': '#b9ae9c',
  '--accent': '#8a3b24',
  '--sans': '"Source Sans 3", "Liberation Sans", Arial, sans-serif',
};

/** A style sheet of drawings without the variables of the page. */
export function standingAlone(style: string): string {
  return style.replace(/var\((--\w+)\)/g, (_, name: string) => ALONE[name] ?? 'inherit');
}

/**
 * A drawing as XML: what HTML allows in text and XML does not (`]]>`, control characters; XML 1.0, 2.2 and 2.4) is
 * written otherwise or left out.
 */
export function renderAsXml(drawing: VNode, sayer: Sayer): string {
  return renderToString(h(Speech.Provider, { value: sayer, children: drawing }))
    .replaceAll(']]>', ']]&gt;')
    .replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g, '');
}
