import type { Diagnostic } from '../base/diagnostic.ts';
import type { Place } from '../base/place.ts';
import { capital, inRow, phrase, type Said } from '../base/said.ts';
import type { Sayer } from '../language/sayer.ts';

/** How problems may be printed. */
export const PROBLEM_FORMATS = ['text', 'json', 'sarif'] as const;
export type ProblemFormat = (typeof PROBLEM_FORMATS)[number];

/** Prints problems in one of the formats; the empty list is said in words. `all`: of which the count is told, where only some are printed. */
export function formatProblems(
  sayer: Sayer,
  problems: readonly Diagnostic[],
  format: ProblemFormat,
  all: readonly Diagnostic[] = problems,
): string {
  if (format === 'text') return text(sayer, problems, all);
  const told = problems.map((one) => saidProblem(sayer, one));
  return format === 'json'
    ? `${JSON.stringify({ format: 'kerfmark-problems/1', problems: told }, null, 2)}\n`
    : sarif(told);
}

/** A problem in words. */
interface SaidProblem extends Omit<Diagnostic, 'message' | 'mend' | 'related'> {
  readonly message: string;
  readonly mend: string;
  readonly related?: readonly { readonly place: Place; readonly text: string }[];
}

/** Problems in words, in their order. */
export function saidProblems(sayer: Sayer, problems: readonly Diagnostic[]): readonly unknown[] {
  return problems.map((one) => saidProblem(sayer, one));
}

function saidProblem({ say }: Sayer, problem: Diagnostic): SaidProblem {
  const { message, mend, related, ...rest } = problem;
  const { code, severity, place, ...others } = rest;
  return {
    code,
    severity,
    place,
    message: say(message),
    mend: say(mend),
    ...others,
    ...(related ? { related: related.map((one) => ({ place: one.place, text: say(one.text) })) } : {}),
  };
}

function text(sayer: Sayer, problems: readonly Diagnostic[], all: readonly Diagnostic[]): string {
  const { words, term } = sayer;
  const blocks = problems.map((one) => {
    const { place, related = [], ...told } = saidProblem(sayer, one);
    const head = `${place.file}:${place.line}:${place.column}  ${term(one.severity)}  [${one.code}]\n`;
    const lines = [
      words('  {0}.', capital(told.message)),
      words('  Mend: {0}', told.mend),
      ...related.map(({ place: at, text: why }) =>
        words('  see   {0} ({1})', inRow([at.file, ':', at.line, ':', at.column], ''), why),
      ),
    ];
    return `${head}${lines.join('\n')}\n`;
  });
  const more = problems[0] ? words(' "kerfmark explain {0}" tells more of a message.', problems[0].code) : '';
  return `${blocks.join('\n')}${blocks.length > 0 ? '\n' : ''}${sayer.say(countWords(all))}${more}\n`;
}

/** How many problems there are of each severity. */
export function countProblems(problems: readonly Diagnostic[]): Readonly<Record<Diagnostic['severity'], number>> {
  const count = (severity: Diagnostic['severity']) => problems.filter((one) => one.severity === severity).length;
  return { error: count('error'), doubt: count('doubt'), note: count('note') };
}

/** `2 errors, 1 doubt, no notes.` */
export function countWords(problems: readonly Diagnostic[]): Said {
  const { error, doubt, note } = countProblems(problems);
  return phrase(
    '{0, plural, =0 {no errors} one {# error} other {# errors}}, {1, plural, =0 {no doubts} one {# doubt} other {# doubts}}, {2, plural, =0 {no notes} one {# note} other {# notes}}.',
    error,
    doubt,
    note,
  );
}

function sentence(words: string): string {
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;
}

/** SARIF 2.1.0 (OASIS, 2020), for editors that show it. */
function sarif(problems: readonly SaidProblem[]): string {
  const level = { error: 'error', doubt: 'warning', note: 'note' } as const;
  const run = {
    tool: {
      driver: {
        name: 'kerfmark',
        rules: [...new Set(problems.map((one) => one.code))].sort().map((id) => ({ id })),
      },
    },
    results: problems.map((one) => ({
      ruleId: one.code,
      level: level[one.severity],
      message: { text: `${sentence(one.message)} Mend: ${one.mend}` },
      locations: [
        {
          physicalLocation: {
            artifactLocation: { uri: encodeURI(one.place.file) },
            region: { startLine: one.place.line, startColumn: one.place.column },
          },
        },
      ],
    })),
  };
  const log = { $schema: 'https://json.schemastore.org/sarif-2.1.0.json', version: '2.1.0', runs: [run] };
  return `${JSON.stringify(log, null, 2)}\n`;
}
