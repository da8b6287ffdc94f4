const MONTHS: Readonly<Record<string, string>> = {
  January: 'janvier',
  February: 'février',
  March: 'mars',
  April: 'avril',
  May: 'mai',
  June: 'juin',
  July: 'juillet',
  August: 'août',
  September: 'septembre',
  October: 'octobre',
  November: 'novembre',
  December: 'décembre',
};

const MONTH = Object.keys(MONTHS).join('|');

/** Phrases around dates, the longer first. */
const PHRASES: readonly (readonly [RegExp, string])[] = [
  [/not bounded/g, 'sans borne'],
  [/no stretch that is certain/g, 'aucun laps de temps certain'],
  [/length not known/g, 'longueur inconnue'],
  [/at a time that nothing bounds/g, 'à un moment que rien ne borne'],
  [/an unknown beginning/g, 'un commencement inconnu'],
  [/an unknown end/g, 'une fin inconnue'],
  [/throughout /g, 'de bout en bout, '],
  [/at least /g, 'au moins '],
  [/up to /g, 'jusqu’à '],
  [/(?:at )?some time (?:in )?(?=from|until)/g, 'à un moment '],
  [/(?:at )?some time in /g, 'à un moment en '],
  [/\bfrom (?=\d{1,2}(?:er)? [a-zéû])([^;,]*?) on\b/g, 'à partir du $1'],
  [/\bfrom (?:about )([^;,]*?) on\b/g, 'à partir de vers $1'],
  [/\bfrom ([^;,]*?) on\b/g, 'à partir de $1'],
  [/\bfrom (?=\d)/g, 'de '],
  [/\buntil (?=\d{1,2}(?:er)? [a-zéû])/g, 'jusqu’au '],
  [/\buntil about /g, 'jusque vers '],
  [/\buntil /g, 'jusqu’en '],
  [/\babout /g, 'vers '],
  [/ to /g, ' à '],
  [/ or /g, ' ou '],
  [/ and /g, ' et '],
  [/\b(\d+)\.(\d) years\b/g, '$1,$2 ans'],
  [/\byears\b/g, 'ans'],
  [/\byear\b/g, 'an'],
  [/\bmonths?\b/g, 'mois'],
  [/\bweeks\b/g, 'semaines'],
  [/\bweek\b/g, 'semaine'],
  [/no time at all/g, 'aucun délai'],
  [/\bdays\b/g, 'jours'],
  [/\bday\b/g, 'jour'],
  [/\bBCE\b/g, 'av. J.-C.'],
];

/** Dates, ranges and lengths as the program words them, in French: `until 12 May 1929` is `jusqu’au 12 mai 1929`. */
export function frenchDate(words: string): string {
  const months = words
    .replace(new RegExp(`\\b1 (?=${MONTH})`, 'g'), '1er ')
    .replace(new RegExp(`\\b(${MONTH})\\b`, 'g'), (month) => MONTHS[month] ?? month);
  return PHRASES.reduce((text, [shape, french]) => text.replace(shape, french), months);
}
