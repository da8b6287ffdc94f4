import type { YAMLError } from 'yaml';
import type { Diagnostic } from '../base/diagnostic.ts';
import type { Place } from '../base/place.ts';
import { phrase, type Said } from '../base/said.ts';
import { ENTRY_SCHEMAS } from '../model/entry.ts';
import { keyNames } from '../model/walk-fields.ts';

interface Wording {
  readonly code: string;
  readonly message: Said;
  readonly mend: Said;
}

const BY_CODE: Readonly<Record<string, Wording>> = {
  TAB_AS_INDENT: {
    code: 'yaml-tab',
    message: phrase('a tab stands where the line is set in'),
    mend: phrase('use spaces (two for each step) instead of the tab'),
  },
  DUPLICATE_KEY: {
    code: 'yaml-key-twice',
    message: phrase('the same key is written twice in one place'),
    mend: phrase('keep one of the two, or make them one list'),
  },
  BAD_ALIAS: {
    code: 'yaml-special-start',
    message: phrase('a value begins with *, which has a meaning of its own in YAML'),
    mend: phrase('put the whole value in quotation marks: key: "* ..."'),
  },
};

const QUOTE_OPEN: Wording = {
  code: 'yaml-quote-open',
  message: phrase('a quotation mark is opened and not closed'),
  mend: phrase('close it at the end of the value; inside double quotation marks write \\" for a quotation mark'),
};

const BRACKET_OPEN: Wording = {
  code: 'yaml-bracket-open',
  message: phrase('a bracket is opened and not closed'),
  mend: phrase("close it: every [ needs its ], every '{' its '}'"),
};

const COMMA_MISSING: Wording = {
  code: 'yaml-comma-missing',
  message: phrase('a comma is missing between two keys inside the brackets'),
  mend: phrase("write a comma after each value: '{' date: \"1926\", grade: probable '}'"),
};

const NEIGHBOURS: Wording = {
  code: 'yaml-set-in',
  message: phrase('this line is set in differently from its neighbours'),
  mend: phrase('begin it in the same column as the keys that belong with it'),
};

const SET_IN: Wording = {
  code: 'yaml-set-in',
  message: phrase('a line below this key is set in, although the key has a value already'),
  mend: phrase('begin the next key in the same column as this one'),
};

/** Words for text that YAML would take for a comment. */
export const COMMENT_IN_TEXT: Wording = {
  code: 'yaml-comment-in-text',
  message: phrase('from the # on, YAML takes the rest of the line for a comment, so it would be lost'),
  mend: phrase(
    'put the whole text in quotation marks: "lot #3"; a comment of your own is set off by a space after the #',
  ),
};

/** Words for a line that is set in with hard spaces, wherever it is noticed. */
export const HARD_SPACE: Wording = {
  code: 'yaml-hard-space',
  message: phrase('the line is set in with hard spaces (copied from a web page or a word processor)'),
  mend: phrase('delete the space before the first word and type ordinary spaces'),
};

/** Words and mend for an error of the YAML parser, guessing the usual slip from the line itself. */
export function yamlProblem(error: YAMLError, text: string, placeAt: (offset: number) => Place): Diagnostic {
  const severity = error.name === 'YAMLWarning' ? 'note' : 'error';
  const at = error.pos[0];
  const line = lineAround(text, at);
  const duplicate = error.code === 'DUPLICATE_KEY';
  const curly = duplicate ? null : curlyQuotes(line);
  if (curly) return { ...curly, severity, place: placeAt(lineStart(text, at) + line.search(CURLY)) };
  // On this line or the one above: further up, a line of a long text may begin with the word of a key.
  const here = lineStart(text, at);
  for (const start of duplicate ? [] : [here, lineStart(text, here - 1)]) {
    const colon = withoutColon(text.slice(start, nextLineEnd(text, start)));
    if (colon) return { ...colon, severity, place: placeAt(start) };
  }
  const bracket = duplicate ? -1 : lineBefore(text, at, (one) => oddBrackets(one));
  if (bracket !== -1) return { ...BRACKET_OPEN, severity, place: placeAt(bracket) };
  const open = duplicate ? -1 : openQuoteBefore(text, at);
  const wording = fromLine(error, line) ?? (open === -1 ? null : QUOTE_OPEN) ?? BY_CODE[error.code] ?? unread(error);
  // A straight mark that a curly one was meant to close.
  const half = wording === QUOTE_OPEN ? curlyQuotes(lineAround(text, open + 1)) : null;
  return { ...(half ?? wording), severity, place: placeAt(wording === QUOTE_OPEN ? open : at) };
}

const CURLY = /[“”„‟‘]/;

/** Words for a line where curly quotation marks stand around a value, or close one that a straight mark opens. */
export function curlyQuotes(line: string): Wording | null {
  if (!/[:[{,] *[“„‟‘]|[:[{,] *"[^"]*[”“] *(?:[,}\]]|$)/.test(line)) return null;
  return {
    code: 'curly-quotes',
    message: phrase('curly quotation marks stand around a value; only straight ones count'),
    mend: phrase(
      'write {0}',
      line
        .trim()
        .replace(/[“”„‟]/g, '"')
        .replace(/[‘’](?=\s|$|,|})|(?<=\s)[‘’]/g, "'"),
    ),
  };
}

function lineStart(text: string, at: number): number {
  return text.lastIndexOf('\n', Math.max(0, at - 1)) + 1;
}

function unread(error: YAMLError): Wording {
  return {
    code: 'yaml-not-read',
    message: phrase('the front matter cannot be read here: {0}', plain(error.message)),
    mend: phrase('look for a missing quotation mark, bracket or colon in this line or the one before'),
  };
}

/** Keys that entries may have, at any depth. */
const KEYS = new Set(Object.values(ENTRY_SCHEMAS).flatMap((schema) => [...keyNames(schema)]));

/** A key of entries that a line begins with, in braces too, without the colon after it. */
function withoutColon(line: string): Wording | null {
  const [, before = '', key = '', after = ''] = /^(\s*(?:- )?(?:\{ *)?)([a-z][\w-]*)(?:[ ;]+|$)(.*)$/.exec(line) ?? [];
  if (key === '' || !KEYS.has(key) || after.startsWith('=') || (before.includes('{') && !/^["'[\d]/.test(after)))
    return null;
  const value = after === '' ? '' : ` ${after.split(/, [a-z-]+:/)[0]}`;
  return {
    code: 'yaml-no-colon',
    message: phrase('a colon is missing after "{0}"', key),
    mend: phrase('write {0}:{1}', key, value),
  };
}

function fromLine(error: YAMLError, line: string): Wording | null {
  if (error.code === 'DUPLICATE_KEY') return null;
  const inBraces = slipInBraces(line);
  if (inBraces) return inBraces;
  if (/^\s*\t/.test(line)) return BY_CODE.TAB_AS_INDENT as Wording;
  if (/^ *\u00a0/.test(line)) return HARD_SPACE;
  if (/^\s*[\w-]+\s*=\s/.test(line)) {
    return {
      code: 'yaml-no-colon',
      message: phrase('a key is followed by a colon, not by an equals sign'),
      mend: phrase('write {0}', line.trim().replace(/\s*=\s*/, ': ')),
    };
  }
  if (/:\s+"[^"]*"\s*[^\s,}\]#]/.test(line) || /:\s+'[^']*'\s*[^\s,}\]#']/.test(line)) {
    if (/\{.*["\w]\s+[a-z-]+:/.test(line)) return COMMA_MISSING;
    return {
      code: 'yaml-text-after-quote',
      message: phrase('text goes on after a closing quotation mark'),
      mend: phrase(
        'put the whole text in double quotation marks, and write \\" for those inside: "\\"Sold\\" to the museum", "The dealer\'\'s sale"',
      ),
    };
  }
  if (error.code === 'BAD_SCALAR_START' || /^\s*(?:- )?[\w-]+:\s+(?:[@`%*&!|>]|- )/.test(line)) {
    return {
      code: 'yaml-special-start',
      message: phrase('a value begins with a character that has a meaning of its own in YAML'),
      mend: phrase('put the whole value in quotation marks'),
    };
  }
  if (/^\s*(?:- )?[\w-]+:\s+[^"'[{|>#].*?:\s/.test(`${line} `)) {
    return {
      code: 'yaml-colon-in-text',
      message: phrase('the text after the key holds a colon followed by a space, which YAML takes for another key'),
      mend: phrase('put the text in quotation marks: {0}', quoted(line)),
    };
  }
  if (/^\s*(?:- )?[a-z][\w-]*:[^\s/]/.test(line)) {
    return {
      code: 'yaml-no-space',
      message: phrase('there is no space after the colon'),
      mend: phrase('write {0}', line.trim().replace(/:(?=\S)/, ': ')),
    };
  }
  if (oddQuotes(line)) return null;
  if (/\{.*["\w]\s+[a-z-]+:/.test(line)) return COMMA_MISSING;
  if (/Sequence item without -|same column|indentation/i.test(error.message)) return NEIGHBOURS;
  return ['MULTILINE_IMPLICIT_KEY', 'BLOCK_AS_IMPLICIT_KEY', 'BAD_INDENT'].includes(error.code) ? SET_IN : null;
}

/** Slips of a line in braces that YAML reports as something else. */
function slipInBraces(line: string): Wording | null {
  const mended = (text: string): string => `write ${text.trim()}`;
  if (/^\s*-[{[]/.test(line))
    return {
      code: 'yaml-no-space',
      message: phrase('there is no space after the dash'),
      mend: mended(line.replace(/-(?=[{[])/, '- ')),
    };
  if (!/\{.*\}/.test(line)) return null;
  const bare = line.replace(/"(?:[^"\\]|\\.)*"/g, (text) => '"'.repeat(text.length));
  if (/;\s+[a-z][\w-]*:\s/.test(bare))
    return {
      code: 'yaml-comma-missing',
      message: phrase('keys inside braces are parted by commas, not by semicolons'),
      mend: mended(line.replace(/;(?=\s+[a-z][\w-]*:\s)/g, ',')),
    };
  // Piece by piece between the commas: one pattern over the whole line would try every way to part it.
  const pieces = bare.slice(bare.indexOf('{') + 1, bare.lastIndexOf('}')).split(',');
  const slips = pieces.flatMap((piece) => {
    const [, key, text = ''] = /^\s*([a-z][\w-]*): +([^"'{}[\]]*)$/.exec(piece) ?? [];
    const inner = /(\S+): /.exec(text)?.[1];
    return key !== undefined && inner !== undefined && !KEYS.has(inner) ? [{ key, text: text.trim() }] : [];
  });
  const [slip] = slips;
  if (!slip) return null;
  const { key, text } = slip;
  return {
    code: 'yaml-colon-in-text',
    message: phrase('the text after "{0}" holds a colon followed by a space, which YAML takes for another key', key),
    mend: phrase('put the text in quotation marks: {0}: "{1}"', key, text),
  };
}

function lineAround(text: string, at: number): string {
  const start = text.lastIndexOf('\n', Math.max(0, at - 1)) + 1;
  return text.slice(start, nextLineEnd(text, start));
}

/** Offset of the first quotation mark on the nearest line at or above a place where one stays open; -1 if none does. */
function openQuoteBefore(text: string, at: number): number {
  const start = lineBefore(text, at, oddQuotes);
  return start === -1 ? -1 : start + Math.max(0, text.slice(start).search(/["']/));
}

/** Offset of the nearest line at or above a place that shows a slip; -1 if none does. */
function lineBefore(text: string, at: number, shows: (line: string) => boolean): number {
  let start = lineStart(text, at);
  while (!shows(text.slice(start, nextLineEnd(text, start)))) {
    if (start === 0) return -1;
    // The line before ends with the break before this one; a text may begin with a break.
    start = text.slice(0, start - 1).lastIndexOf('\n') + 1;
  }
  return start;
}

/** More brackets opened than closed on one line, what stands in quotation marks left aside. */
function oddBrackets(line: string): boolean {
  const bare = line.replace(/"(?:[^"\\]|\\.)*"|'[^']*'/g, '');
  return (bare.match(/[[{]/g)?.length ?? 0) > (bare.match(/[\]}]/g)?.length ?? 0);
}

function oddQuotes(line: string): boolean {
  const bare = line.replace(/\\"/g, '').replace(/''/g, '');
  return (bare.match(/"/g)?.length ?? 0) % 2 === 1 || /:\s+'[^']*$/.test(bare);
}

function quoted(line: string): string {
  const [, key, value] = /^\s*(?:- )?([\w-]+):\s+(.*?)\s*$/.exec(line) ?? [];
  return `${key}: "${(value ?? '').replaceAll('"', '\\"')}"`;
}

function nextLineEnd(text: string, from: number): number {
  const end = text.indexOf('\n', from);
  return end === -1 ? text.length : end;
}

function plain(message: string): string {
  return (message.split('\n')[0] ?? '').replace(/ at line \d+.*$/, '');
}
