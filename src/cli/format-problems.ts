import type { Diagnostic } from '../base/diagnostic.ts';

/** How problems may be printed. */
export const PROBLEM_FORMATS = ['text', 'json', 'sarif'] as const;
export type ProblemFormat = (typeof PROBLEM_FORMATS)[number];

/** Prints problems in one of the formats; the empty list is said in words. `all`: of which the count is told, where only some are printed. */
export function formatProblems(
  problems: readonly Diagnostic[],
  format: ProblemFormat,
  all: readonly Diagnostic[] = problems,
): string {
  if (format === 'json') return `${JSON.stringify({ format: 'kerfmark-problems/1', problems }, null, 2)}\n`;
  return format === 'sarif' ? sarif(problems) : text(problems, all);
}

function text(problems: readonly Diagnostic[], all: readonly Diagnostic[]): string {
  const blocks = problems.map((one) => {
    const related = (one.related ?? []).map(
      ({ place, text: words }) => `  see   ${place.file}:${place.line}:${place.column} (${words})\n`,
    );
    return `${one.place.file}:${one.place.line}:${one.place.column}  ${one.severity}  [${one.code}]\n  ${sentence(one.message)}\n  Mend: ${one.mend}\n${related.join('')}`;
  });
  const more = problems[0] ? ` "kerfmark explain ${problems[0].code}" tells more of a message.` : '';
  return `${blocks.join('\n')}${blocks.length > 0 ? '\n' : ''}${countWords(all)}${more}\n`;
}

function sentence(words: string): string {
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;
}

/** How many problems there are of each severity. */
export function countProblems(problems: readonly Diagnostic[]): Readonly<Record<Diagnostic['severity'], number>> {
  const count = (severity: Diagnostic['severity']) => problems.filter((one) => one.severity === severity).length;
  return { error: count('error'), doubt: count('doubt'), note: count('note') };
}

/** `2 errors, 1 doubt, no notes`. */
export function countWords(problems: readonly Diagnostic[]): string {
  const counts = Object.entries(countProblems(problems)).map(
    ([severity, count]) => `${count === 0 ? 'no' : count} ${severity}${count === 1 ? '' : 's'}`,
  );
  return `${counts.join(', ')}.`;
}

/** SARIF 2.1.0 (OASIS, 2020), for editors that show it. */
function sarif(problems: readonly Diagnostic[]): string {
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
