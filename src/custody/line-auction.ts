/** A sale by auction as a line tells it. */
export interface AuctionWords {
  /** The house with its place and date, as they stand. */
  readonly house: string;
  readonly consignedBy: string | null;
  readonly lot: string | null;
}

const LOT = /,?\s?\b(?:lot|lots|no\.|nos\.|as lot|number)\s?(\d+[a-z]?(?:\s?[-–&]\s?\d+)?)\b/i;
const AFTER_LOT = /,?\s*(?:illustrated|ill\.|repr\.|not sold|bought in|unsold)(?:\b.*)?$/i;
const HOUSE_WORDS =
  /\b(?:christie|sotheby|phillips|bonham|parke-bernet|drouot|lempertz|auction|galer(?:ie|y)|american art association|doyle|skinner|swann|dorotheum|lepke|muller|cassirer|helbing|fischer|rahn|puttick|foster|wright)\b/i;

/**
 * Reads "sale, House, place, date, lot n", "Owner sale, House, ...", "(his sale, House, ...)", "Owner sale at House, ...", "House sale, place, ..." and
 * "House, name of the sale, date, lot n". Null where no auction is told.
 */
export function readAuction(text: string): AuctionWords | null {
  const inner = /^\((.*)\)$/s.exec(text)?.[1] ?? text;
  const soldAt = /^(?:sold|offered) (?:at|by) (.*)$/is.exec(inner);
  if (soldAt && !/\sto\s/.test(inner) && (LOT.test(inner) || HOUSE_WORDS.test(soldAt[1]?.split(',')[0] ?? ''))) {
    const lot = LOT.exec(inner)?.[1] ?? null;
    const house = (soldAt[1] as string)
      .replace(LOT, '')
      .replace(AFTER_LOT, '')
      .replace(/^(?:auction at|auction,)\s*/i, '');
    return /\d{4}/.test(house) || lot !== null ? { house, consignedBy: null, lot } : null;
  }
  const noun = /^(.*?)\b(?:sale|auction sale|auction|vente)\b(?!\s?(?:to|by|price|room|house)\b)(.*)$/is.exec(inner);
  if (!noun) return null;
  const [, before = '', after = ''] = noun;
  if (/\b(?:sold|purchased|bought|acquired)\b/i.test(before)) return null;
  const lot = LOT.exec(inner)?.[1] ?? null;
  if (lot === null && !/\d{4}/.test(after) && !/\d{4}/.test(before)) return null;
  const rest = after
    .replace(LOT, '')
    .replace(AFTER_LOT, '')
    .replace(/^\s*(?:,|at|by|of)\s*/i, '');
  const owner = before.trim().replace(/[,\s]+$/, '');
  const inFront = owner.split(',')[0]?.trim() ?? '';
  // "Christie's sale, London", "Wright Auction House, Modernist sale, December": the house stands in front.
  if (owner.includes(',') && HOUSE_WORDS.test(inFront)) return { house: `${inFront}, ${rest}`, consignedBy: null, lot };
  if (owner !== '' && HOUSE_WORDS.test(owner) && !HOUSE_WORDS.test(rest.split(',')[0] ?? ''))
    return { house: `${owner}, ${rest}`, consignedBy: null, lot };
  const consignedBy = /^(?:his|her|their|its|the|a)?$/i.test(owner) ? null : owner.replace(/^(?:the)\s+/i, '');
  return { house: rest, consignedBy, lot };
}
