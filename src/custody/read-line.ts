import { readAuction } from './line-auction.ts';
import { readLineDates } from './line-dates.ts';
import { readNameAndPlace, takeLifeDates } from './line-names.ts';
import { cutSegments, partText, type Segment } from './line-parts.ts';
import type { KeptText, Passage, ReadHolding, ReadLine, YearRange } from './line-types.ts';
import { readVerbs } from './line-verbs.ts';
import { type LineStyle, USUAL_STYLE, writeLine } from './write-line.ts';

/**
 * Reads a provenance paragraph as catalogues print it: a semicolon where the passage was direct, a period where it was not; dealers, agents and
 * houses in parentheses (AAM Guide to Provenance Research, 2001). Holdings with exact spans; what tells no holding is kept as text. Years as
 * stated, nothing is propagated. Some houses print the latest holder first, or exchange the marks: `style` says so, and the holdings
 * come in the order of time all the same.
 * @example readLine('A. Rey, Nice, by 1912; sold 1920 to (B. Sand, Paris).').holdings.length // 2
 */
export function readLine(text: string, style: LineStyle = USUAL_STYLE): ReadLine {
  const read = readOnce(text, style);
  return read['keeps-convention'] && !isStable(read, style) ? { ...read, 'keeps-convention': false } : read;
}

/** True where the line, written by the convention and read again, is written the same: what is not, does not keep to it. */
function isStable(read: ReadLine, style: LineStyle): boolean {
  const once = writeLine(read.holdings, read['note-texts'], style);
  const again = readOnce(once, style);
  return writeLine(again.holdings, again['note-texts'], style) === once;
}

function readOnce(text: string, style: LineStyle): ReadLine {
  const { bodyEnd, notes, kept: below } = partText(text);
  const kept: KeptText[] = [];
  const holdings: { holding: ReadHolding; mark: Segment['mark'] }[] = [];
  let keeps = true;
  for (const segment of mergeStray(cutSegments(text.slice(0, bodyEnd)), () => {
    keeps = false;
  })) {
    if (segment.mark === 'break') keeps = false;
    if (/^(?:inscribed|stamped|signed|label)\b/i.test(segment.text)) keeps = false;
    const last = holdings.at(-1);
    // A gap that the line itself states: nobody is named, and what follows was not had directly.
    if (STATED_GAP.test(segment.text)) {
      if (last) last.mark = '.';
      kept.push({ text: segment.text, span: [segment.from, segment.to] });
      continue;
    }
    const holding = readSegment(segment);
    const before = last?.holding;
    const isCreditLine =
      holding?.capacity === 'fund' && before !== undefined && /museum|institute|NGA/i.test(before.holder);
    if (holding && !isCreditLine) holdings.push({ holding, mark: segment.mark });
    else kept.push({ text: segment.text, span: [segment.from, segment.to] });
  }
  return {
    format: 'kerfmark-line/1',
    'keeps-convention': keeps,
    holdings: inTime(holdings, style).map(({ holding, mark }, i) => ({
      ...holding,
      'passage-to-next': passageOf(mark, i === holdings.length - 1, style.marks),
    })),
    'note-texts': notes,
    'kept-as-text': [...kept, ...below],
  };
}

interface Marked {
  readonly holding: ReadHolding;
  /** The mark between this holding and the next one in time. */
  readonly mark: Segment['mark'];
}

/** The order of time; where the latest stands first, a mark belongs to the holding that stands after it in the text. */
function inTime(holdings: readonly Marked[], { order }: LineStyle): readonly Marked[] {
  if (order === 'earliest first') return holdings;
  return holdings.map(({ holding }, i) => ({ holding, mark: holdings[i - 1]?.mark ?? ('end' as const) })).reverse();
}

function passageOf(mark: Segment['mark'], isLast: boolean, marks: LineStyle['marks']): Passage | null {
  if (isLast || mark === 'end' || mark === 'break') return null;
  return (mark === ';') === (marks === 'semicolon is direct') ? 'direct' : 'not direct';
}

/** A date that stands alone between two periods belongs to what stands before it. */
function mergeStray(segments: readonly Segment[], stray: () => void): readonly Segment[] {
  const merged: Segment[] = [];
  for (const segment of segments) {
    const before = merged.at(-1);
    const bare = readLineDates(withoutNotes(segment.text), false);
    if (before && before.mark === '.' && bare.found && !/\p{L}{3,}/u.test(bare.rest)) {
      stray();
      const gap = ' '.repeat(segment.from - before.to);
      merged.pop();
      merged.push({
        ...segment,
        text: `${before.text},${gap.slice(1)}${segment.text}`,
        from: before.from,
        notesAfter: [...before.notesAfter, ...segment.notesAfter],
      });
    } else merged.push(segment);
  }
  return merged;
}

function withoutNotes(text: string): string {
  return text.replace(/\s?\[\d{1,3}\]/g, '');
}

function readSegment(segment: Segment): ReadHolding | null {
  const notes = [...[...segment.text.matchAll(/\[(\d{1,3})\]/g)].map(([, n]) => Number(n)), ...segment.notesAfter];
  const common = { notes, span: [segment.from, segment.to] as const, 'passage-to-next': null };
  // An owner's name that stands as the gloss of an inscription.
  const gloss = /^inscribed\b.*?\((\p{Lu}[^()]*)\)/su.exec(segment.text)?.[1];
  const plain = withoutWhatIsNoCustody(withoutNotes(gloss ?? segment.text));
  const auction = readAuction(plain);
  if (auction) {
    const dates = readLineDates(takeLifeDates(auction.house).rest, true);
    const { holder, place } = readNameAndPlace(dates.rest.replace(/\bon\b\s*(?=,|$)/i, ''));
    const year = dates.begins;
    if (holder !== '')
      return {
        ...common,
        holder,
        place,
        capacity: 'auction',
        'acquired-by': 'auction',
        begins: year,
        ends: year.latest === null ? dates.ends : year,
        'begins-circa': dates.beginsCirca,
        'ends-circa': dates.beginsCirca,
        hedge: null,
        'life-dates': null,
        lot: auction.lot,
        'consigned-by': auction.consignedBy,
        through: [],
        'shared-with': [],
      };
  }
  const verbs = readVerbs(plain);
  const { inner, isDealer } = unwrap(verbs.rest);
  const { rest: bare, lifeDates } = takeLifeDates(inner);
  const transfer = verbs.acquired !== null && !['descent', 'inheritance', 'commission'].includes(verbs.acquired);
  const dates = readLineDates(bare, transfer);
  const war = warDates(plain);
  const name = verbs.namesNobody
    ? { holder: '', place: null }
    : readNameAndPlace(dates.rest.replace(/\b(?:during|after|before) (?:the war|world war \w+)\b/gi, ' '));
  if (name.holder === '' && verbs.acquired === null) return null;
  if (SENTENCE.test(name.holder)) return null;
  if (!verbs.namesNobody && !/\p{L}/u.test(name.holder)) return null;
  return {
    ...common,
    holder: name.holder,
    place: name.place,
    capacity: isDealer
      ? 'dealer'
      : /\bestate\b/i.test(name.holder)
        ? 'estate'
        : /\bfund$/i.test(name.holder)
          ? 'fund'
          : null,
    'acquired-by': verbs.acquired,
    begins: war ?? dates.begins,
    ends: dates.ends,
    ...(dates.beginsOn === null ? {} : { 'begins-on': dates.beginsOn }),
    'begins-circa': dates.beginsCirca,
    'ends-circa': dates.endsCirca,
    hedge: verbs.hedge,
    'life-dates': lifeDates,
    lot: null,
    'consigned-by': null,
    through: verbs.through,
    'shared-with': verbs.sharedWith,
  };
}

/** Without marks of collectors, titles, stock numbers, deaths and terms of office, whose years and names say nothing of custody. */
function withoutWhatIsNoCustody(text: string): string {
  let plain = text;
  // Each pattern is tried only where its word stands: most lines have none of them.
  if (/Lugt|L\./i.test(plain))
    plain = plain
      .replace(/\s*\((?:cf\. |see )?(?:Lugt|L\.)[^()]*\)/gi, '')
      .replace(/,?\s*\(?(?:cf\. )?\b(?:Lugt|L\.)[ ,]*(?:suppl\.?,? )?\s?\d+[a-z]?\)?/gi, '');
  plain = plain.replace(/["“][^"”]*["”]/g, ' ');
  if (/stock|inv|cat/i.test(plain))
    plain = plain.replace(
      /,?\s*\b(?:stock|inv(?:entory)?|cat(?:alogue)?)\.? ?(?:no|nos|nr|number)s?\.?\s*[A-Za-z]?\d[\w/-]*/gi,
      '',
    );
  return plain
    .replace(/\buntil (?:his|her|their) death in (?=\d{4})/gi, 'until ')
    .replace(
      /(\b(?:governor|ambassador|bishop|president|minister|mayor|director)\b[^,;]*),\s*\d{4}\s?[-–]\s?\d{4}/gi,
      '$1',
    );
}

/** A gap as lines print it. */
const STATED_GAP = /^\s*[[(]?\s*(?:gap|lacuna|lacune|lücke|…|\.{3})\s*[\])]?\s*$/i;

/** Words of a sentence that tells something, where a name should stand. */
const SENTENCE =
  /\b(?:was|were|is|are|has|had|which|that|wrote|described|exhibited|according to|made by|relationships?|descended|visit(?:ed)?|see|bears?)\b/i;

/** "during World War II", "after the war". */
function warDates(text: string): YearRange | null {
  if (/\bduring (?:world war (?:ii|2)|wwii)\b/i.test(text)) return { earliest: 1939, latest: 1945 };
  if (/\bafter (?:the war|world war (?:ii|2)|wwii)\b/i.test(text)) return { earliest: 1945, latest: null };
  return null;
}

/** A dealer's parentheses taken off, wherever dates stand beside them. */
function unwrap(text: string): { readonly inner: string; readonly isDealer: boolean } {
  const found = /^\s*\((.*)\)\s*(.*)$/s.exec(text);
  if (!found || !balanced(found[1] as string)) return { inner: text, isDealer: false };
  const after = (found[2] as string).replace(/\[[^\][]*\]/g, '');
  const { rest } = readLineDates(` ${after}`, false);
  if (/\p{L}{2,}/u.test(rest)) return { inner: text, isDealer: false };
  return { inner: `${found[1]} ${after.replace(/^,?\s*/, ', ')}`, isDealer: true };
}

function balanced(text: string): boolean {
  let depth = 0;
  for (const one of text) {
    if (one === '(') depth += 1;
    if (one === ')') depth -= 1;
    if (depth < 0) return false;
  }
  return depth === 0;
}
