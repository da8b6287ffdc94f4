import type { CaseFile } from '../findings/case-file.ts';
import { inLanguage } from '../model/catalogue.ts';
import { type Entry, isOfType } from '../model/entry.ts';
import { type Block, list, passage, section } from './document.ts';
import type { Matter } from './matter.ts';
import { finenessOf, nameOf, sayDate } from './say-entry.ts';

/** What an event records beside its dates: how it was done, for what price, by what authority; and the papers of that authority. */
export function particularsOf(
  file: CaseFile,
  { keys }: Entry<'event'>,
): { readonly told: readonly string[]; readonly rests: readonly string[] } {
  const { words, term } = file.sayer;
  const { technique, circumstance, lot, price, contract, payment } = keys;
  const permit = keys['authorised-by'] === undefined ? undefined : file.catalogue.get(keys['authorised-by']);
  const dated = (said: (date: string, fineness: string) => string, date: string | undefined): string =>
    date === undefined ? '' : said(sayDate(file, date), finenessOf(file, date));
  const told = [
    technique && technique !== 'unknown' ? words('technique: {0}', term(technique)) : '',
    circumstance ? words('circumstance: {0}; {1}', term(circumstance.is), circumstance.why) : '',
    lot === undefined ? '' : words('lot {0}', lot),
    price === undefined ? '' : words('price: {0}', [price.amount, price.currency].filter(Boolean).join(' ')),
    dated((date, fineness) => words('contract of {0}', date, fineness), contract),
    dated((date, fineness) => words('paid {0}', date, fineness), payment),
    permit && isOfType(permit, 'source') ? sayPermit(file, permit) : '',
  ].filter(Boolean);
  return { told, rests: [...(permit ? [permit.id] : []), ...(price?.source ? [price.source] : [])] };
}

/** The paper by which something was authorised, and what it says of how far it goes. */
function sayPermit(file: CaseFile, permit: Entry<'source'>): string {
  const { words, term } = file.sayer;
  const { authorises } = permit.keys;
  const name = words('authorised by “{0}”', nameOf(file, permit.id));
  if (!authorises) return name;
  const { act, quantity, from, to, covers } = authorises;
  const parts = [
    act,
    quantity,
    from === undefined ? '' : words('from {0}', sayDate(file, from), finenessOf(file, from)),
    to === undefined ? '' : words('until {0}', sayDate(file, to), finenessOf(file, to)),
    words('covers what it speaks of: {0}', term(covers)),
  ].filter(Boolean);
  return `${name} (${parts.join(file.sayer.semicolon)})`;
}

/** Where the papers are kept and by whom, and whether they may be quoted, where that is recorded. */
export function papers({ file, dossier }: Matter): readonly Block[] {
  const { words } = file.sayer;
  const said = dossier.flatMap((entry) => {
    if (!isOfType(entry, 'source')) return [];
    const { quoting, describes } = entry.keys;
    const custody = entry.keys['custody-of-paper'];
    const told = [
      describes === undefined ? '' : words('describes: {0}', inLanguage(describes, file.settings.languages)),
      custody === undefined ? '' : words('kept by: {0}', custody),
      quoting === undefined ? '' : words('permission to quote: {0}', quoting),
    ].filter(Boolean);
    return told.length === 0
      ? []
      : [passage(words('{0}: {1}', nameOf(file, entry.id), told.join(file.sayer.semicolon)), [entry.id])];
  });
  return section(words('Papers: what they describe, who keeps them, whether they may be quoted'), list(said));
}
