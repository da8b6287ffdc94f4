import type { KeptText, LineNote } from './line-types.ts';

/** A stretch of a line between two marks. */
export interface Segment {
  readonly text: string;
  readonly from: number;
  readonly to: number;
  /** `;`, `.`, the end, or a break between two statements of one line. */
  readonly mark: ';' | '.' | 'end' | 'break';
  /** Notes that follow the mark (`.[1]`); those before it stand in the text. */
  readonly notesAfter: readonly number[];
}

/** Abbreviations after which a period never ends a holding: titles and the like stand before a name. */
const BEFORE_NAMES =
  /^(?:mr|mrs|ms|dr|drs|mme|mlle|messrs|st|ste|sta|capt|col|gen|lt|maj|sgt|rev|prof|hon|sir|herr|fr|frl|freih|gebr|bros|wm|chas|geo|jas|jno|thos|no|nos|nr|vol|vols|p|pp|c|ca|cf|d|b|m|fl|fig|figs|pl|inv|cat|lit|acc|dept|suppl|viz|vs|e\.g|i\.e|jan|feb|mar|apr|jun|jul|aug|sept|sep|oct|nov|dec|attr|presumably|poss|prob)$/i;

/** Abbreviations that may end a holding: what stands after a name or a place. */
const AFTER_NAMES =
  /^(?:inc|co|cie|ltd|jr|sr|esq|bt|bart|corp|calif|mass|conn|penn|ill|wash|mich|minn|pa|va|fla|tex|d\.c|u\.s|u\.s\.a|n\.y|n\.j|q\.c|m\.p|ph\.d|m\.d|etc)$/i;

/** Where the body of a line ends and its notes or an editor's remark begin. */
const END_OF_BODY = /(?:^|\s)notes?\s*:|\n\s*\[?1\]?\s*[.)]?\s+(?=\S)|\n\s*under review\b/i;

/**
 * Parts a text into the body, its notes, and what stands below them. A note begins with its number at the beginning of a line, or
 * directly after the word "Notes".
 */
export function partText(text: string): {
  readonly bodyEnd: number;
  readonly notes: readonly LineNote[];
  readonly kept: readonly KeptText[];
} {
  const found = END_OF_BODY.exec(text);
  const bodyEnd = found ? found.index : text.length;
  const starts = [...text.slice(bodyEnd).matchAll(/(?:\n|notes?\s*:)\s*\[?(\d{1,3})\]?\s*[.)]?\s*(?=\S)/gi)].filter(
    ([, number], i, all) => Number(number) === i + 1 || all[i - 1] === undefined || Number(number) > 0,
  );
  const notes: LineNote[] = [];
  const kept: KeptText[] = [];
  const keep = (from: number, to: number): void => {
    const [a, b] = trimmed(text, from, to);
    if (a < b) kept.push({ text: text.slice(a, b), span: [a, b] });
  };
  let at = bodyEnd;
  let last = 0;
  starts.forEach((start, i) => {
    const from = bodyEnd + start.index;
    const n = Number(start[1]);
    if (n !== last + 1) return;
    last = n;
    if (notes.length === 0) keep(at, from + (start[0].match(/^notes?\s*:/i)?.[0].length ?? 0));
    const next = starts.slice(i + 1).find((other) => Number(other[1]) === n + 1);
    const to = next ? bodyEnd + next.index : text.length;
    const textFrom = from + start[0].length;
    const remark = /\n\s*\n\s*under review\b/i.exec(text.slice(textFrom, to));
    const end = remark ? textFrom + remark.index : to;
    const [a, b] = trimmed(text, textFrom, end);
    notes.push({ n, text: text.slice(a, b), span: [a, b] });
    at = to;
    if (remark) keep(end, to);
  });
  if (notes.length === 0) keep(bodyEnd, text.length);
  return { bodyEnd, notes, kept };
}

/** The span without blanks at its ends. */
export function trimmed(text: string, from: number, to: number): readonly [number, number] {
  let [a, b] = [from, to];
  while (a < b && /\s/.test(text[a] as string)) a += 1;
  while (b > a && /\s/.test(text[b - 1] as string)) b -= 1;
  return [a, b];
}

/**
 * Cuts a body at its marks: semicolons, and periods that end a holding, both outside of brackets and quotation marks. Periods of
 * initials, titles and abbreviations do not part holdings. Two paragraphs are two statements.
 */
export function cutSegments(body: string): readonly Segment[] {
  const segments: Segment[] = [];
  const depths = depthsOf(body);
  let from = 0;
  const close = (to: number, mark: Segment['mark'], next: number, notesAfter: readonly number[]): void => {
    const [a, b] = trimmed(body, from, to);
    if (a < b) segments.push({ text: body.slice(a, b), from: a, to: b, mark, notesAfter });
    else if (segments.length > 0 && mark === '.') {
      const before = segments.pop() as Segment;
      segments.push({ ...before, notesAfter: [...before.notesAfter, ...notesAfter] });
    }
    from = next;
  };
  for (let i = 0; i < body.length; i += 1) {
    if (depths[i] !== 0) continue;
    const paragraph = /^\n\s*\n\s*/.exec(body.slice(i, i + 20));
    if (paragraph) {
      const last = body.slice(from, i).trim();
      close(i, last === '' ? '.' : 'break', i + paragraph[0].length, []);
      i += paragraph[0].length - 1;
      continue;
    }
    if (
      /^\n\s*(?=\p{Lu})/u.test(body.slice(i, i + 20)) &&
      !/[;.]\s*$/.test(body.slice(from, i)) &&
      body.slice(from, i).trim() !== ''
    ) {
      close(i, 'break', i + 1, []);
      continue;
    }
    const mark = body[i];
    if (mark !== ';' && mark !== '.') continue;
    if (mark === '.' && !endsHolding(body, from, i)) continue;
    const after = /^(?:\s?\[\d{1,3}\])+/.exec(body.slice(i + 1));
    const notes = after ? [...after[0].matchAll(/\d+/g)].map(([n]) => Number(n)) : [];
    const next = i + 1 + (after?.[0].length ?? 0);
    close(i, mark, next, notes);
    i = next - 1;
  }
  close(body.length, 'end', body.length, []);
  const last = segments.at(-1);
  return last ? [...segments.slice(0, -1), { ...last, mark: 'end' }] : [];
}

/** How deep in brackets or quotation marks each character lies; a bracket that is never closed counts for nothing. */
function depthsOf(text: string): Int32Array {
  const depths = new Int32Array(text.length);
  const open: { readonly at: number; readonly closes: string }[] = [];
  const pairs: Readonly<Record<string, string>> = { '(': ')', '[': ']', '“': '”', '«': '»' };
  const raise = (a: number, b: number): void => {
    for (let i = a; i <= b; i += 1) depths[i] = (depths[i] as number) + 1;
  };
  for (let i = 0; i < text.length; i += 1) {
    const one = text[i] as string;
    const known = open.findLastIndex((other) => other.closes === one);
    if (known !== -1 && (one !== '"' || known === open.length - 1)) {
      raise((open[known] as { at: number }).at, i);
      open.length = known;
    } else if (pairs[one]) open.push({ at: i, closes: pairs[one] });
    else if (one === '"') open.push({ at: i, closes: '"' });
  }
  return depths;
}

function endsHolding(body: string, from: number, at: number): boolean {
  const before = body.slice(from, at);
  const after = body.slice(at + 1).replace(/^(?:\s?\[\d{1,3}\])+/, '');
  if (after.trim() === '') return true;
  if (!/^\s/.test(after)) return false;
  const next = after.trimStart();
  // Life dates go on with the name.
  if (next.startsWith('[')) return false;
  if (
    /^[\p{Ll},;:)\]&]/u.test(next) &&
    !/^(?:ca?\.|by|from|with|probably|possibly|purchased|sold|gift|the)\s/i.test(next)
  )
    return false;
  if (/^,/.test(after.trimStart())) return false;
  const word = /([\p{L}][\p{L}.’']*)$/u.exec(before)?.[1] ?? '';
  const initialsNext = /^(?:\p{Lu}\.\s?)+/u.test(next);
  // "Frank. K. M. Rehn", "Esq. Q. C.": a name goes on with initials.
  if (initialsNext && !/[,\])]/.test(before) && before.trim().split(/\s+/).length <= 2) return false;
  if (initialsNext && /^(?:esq|jr|sr)$/i.test(word)) return false;
  if (/^\p{Lu}$/u.test(word) || /(?:^|\.)\p{Lu}$/u.test(word)) {
    // An initial; but "D.C" or "N.Y" may end a place.
    return AFTER_NAMES.test(word);
  }
  if (BEFORE_NAMES.test(word)) return false;
  return true;
}
