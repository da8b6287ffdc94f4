import { GRADES } from '../base/grade.ts';
import type { CaseFile, FileContradiction } from '../findings/case-file.ts';
import { datesReport } from '../findings/dates-report.ts';
import { countRoots, sayRootCount } from '../findings/independence.ts';
import { type PrintedRange, sayRange } from '../findings/printed-range.ts';
import { sayContradiction } from '../findings/say-contradiction.ts';
import { type ClusterOfContradictions, clustersOfContradictions } from '../findings/ways-out.ts';
import { titleOf } from '../model/catalogue.ts';
import type { Entry } from '../model/entry.ts';
import { audienceOf, folderOf, type RunCommand } from './commands.ts';
import { countWords, formatProblems } from './format-problems.ts';
import { loadWorkspace } from './load-workspace.ts';
import { computeTrial } from './trial.ts';

export const dates: RunCommand = async (options, effects) => {
  const files = await loadWorkspace(folderOf(options, effects));
  const computed = computeTrial(files, audienceOf(options), options);
  const { file, errors } = computed;
  if (options.flags.json) effects.out(`${JSON.stringify(datesReport(file), null, 2)}\n`);
  else effects.out(table(file));
  if (errors.length > 0)
    effects.err(
      `${formatProblems(errors, 'text', computed.problems)}The ranges rest on the entries that could be read.\n`,
    );
  else if (!options.flags.json && computed.problems.length > 0)
    effects.err(`${countWords(computed.problems)} "kerfmark check" shows them.\n`);
  return errors.length > 0 ? 1 : 0;
};

function table(file: CaseFile): string {
  const lines: string[] = [];
  if (file.withdrawn.length > 0)
    lines.push(`A trial without ${file.withdrawn.join(', ')}; the file itself is not changed.`, '');
  for (const moment of file.statements.moments.all) {
    const entry = file.catalogue.get(moment.entry);
    lines.push(`${moment.entry} ${moment.edge}${entry ? `  ${titleOf(entry, file.settings.languages)}` : ''}`);
    for (const range of file.rangesOf(moment)) {
      const because = [
        ...new Set([...(range.earliest?.because ?? []), ...(range.latest?.because ?? [])].map((one) => one.id)),
      ];
      const told = [
        ...(range.consistent ? [] : ['contradicted']),
        ...(because.length > 0 ? [`rests on ${because.join(', ')}`] : []),
        ...(range.setAside.length > 0 ? [`set aside: ${range.setAside.map((one) => one.id).join(', ')}`] : []),
      ];
      lines.push(`  ${range.grade.padEnd(12)} ${sayRange(range).padEnd(34)} ${told.join('; ')}`.trimEnd());
    }
  }
  lines.push('', contradictionWords(file));
  return `${lines.join('\n')}\n`;
}

function contradictionWords(file: CaseFile): string {
  if (file.contradictions.length === 0)
    return `No statements contradict each other at any of the grades (${GRADES.join(', ')}).`;
  return clustersOfContradictions(file)
    .map((cluster) => clusterWords(file, cluster))
    .join('\n\n');
}

/** The contradictions of one cluster, then every way out with the dates that it leaves. */
function clusterWords(file: CaseFile, cluster: ClusterOfContradictions): string {
  const { affected } = cluster;
  const title = (i: number): string => titleOf(affected[i] as Entry, file.settings.languages);
  const ranges = (list: readonly PrintedRange[]): readonly string[] =>
    list.map((range, i) => `      ${title(i)}: ${sayRange(range)}`);
  return [
    ...cluster.contradictions.flatMap((one) => [
      `${one.kind === 'order' ? 'A loop of order' : 'Statements that cannot all be right'} (${one.grade}): ${ids(one.statements)}`,
      ...bothSides(file, one),
      ...one.statements.map((s) => `    ${s.id}: ${s.text} (${s.grade})`),
      `    ${sayRootCount(countRoots(file.catalogue, one.statements))}.`,
    ]),
    ...(cluster.complete ? [] : ['  There may be more contradictions here than could be listed.']),
    ...(affected.length > 0
      ? [`  As the file stands, on ${cluster.grade} statements:`, ...ranges(cluster.standing)]
      : []),
    '  Ways out; none is preferred:',
    ...cluster.ways.flatMap((way) => [
      `    without ${way.withdrawn.map((s) => s.id).join(' and ')}`,
      ...ranges(way.ranges),
    ]),
  ].join('\n');
}

function bothSides(file: CaseFile, one: FileContradiction): readonly string[] {
  const said = sayContradiction(file, one);
  if (!said) return [];
  const { moment, earliest, latest } = said;
  return [
    `    ${moment} would have to be ${earliest.words} (${ids(earliest.statements)}) and ${latest.words} (${ids(latest.statements)})`,
  ];
}

function ids(list: readonly { readonly id: string }[]): string {
  return list.map((one) => one.id).join(', ');
}
