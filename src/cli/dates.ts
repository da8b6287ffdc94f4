import { GRADES } from '../base/grade.ts';
import { allOf, inLines, inRow, named, phrase, type Said } from '../base/said.ts';
import type { CaseFile, FileContradiction } from '../findings/case-file.ts';
import { datesReport } from '../findings/dates-report.ts';
import { disputeOf, sayDispute } from '../findings/dispute.ts';
import { countRoots, sayRootCount } from '../findings/independence.ts';
import { type PrintedRange, sayRange } from '../findings/printed-range.ts';
import { sayContradiction } from '../findings/say-contradiction.ts';
import { type ClusterOfContradictions, clustersOfContradictions } from '../findings/ways-out.ts';
import { titleOf } from '../model/catalogue.ts';
import type { Entry } from '../model/entry.ts';
import { sayStatement } from '../statements/say-statement.ts';
import { audienceOf, folderOf, type RunCommand } from './commands.ts';
import { countWords, formatProblems } from './format-problems.ts';
import { loadWorkspace } from './load-workspace.ts';
import { computeTrial } from './trial.ts';

export const dates: RunCommand = async (options, effects) => {
  const files = await loadWorkspace(folderOf(options, effects));
  const computed = computeTrial(files, audienceOf(options), options, effects.sayer.language);
  const { file, errors } = computed;
  if (options.flags.json) effects.out(inRow([JSON.stringify(datesReport(file), null, 2), '\n'], ''));
  else effects.out(file.sayer.say(table(file)));
  if (errors.length > 0)
    effects.err(
      phrase(
        '{0}The ranges rest on the entries that could be read.\n',
        formatProblems(effects.sayer, errors, 'text', computed.problems),
      ),
    );
  else if (!options.flags.json && computed.problems.length > 0)
    effects.err(phrase('{0} "kerfmark check" shows them.\n', countWords(computed.problems)));
  return errors.length > 0 ? 1 : 0;
};

function table(file: CaseFile): Said {
  const { say } = file.sayer;
  const lines: Said[] = [];
  if (file.withdrawn.length > 0)
    lines.push(phrase('A trial without {0}; the file itself is not changed.', file.withdrawn.join(', ')), '');
  for (const moment of file.statements.moments.all) {
    const entry = file.catalogue.get(moment.entry);
    lines.push(
      inRow(
        [
          moment.entry,
          ' ',
          named(moment.edge),
          entry ? inRow(['  ', titleOf(entry, file.settings.languages)], '') : '',
        ],
        '',
      ),
    );
    for (const range of file.rangesOf(moment)) {
      const because = [
        ...new Set([...(range.earliest?.because ?? []), ...(range.latest?.because ?? [])].map((one) => one.id)),
      ];
      const told: readonly Said[] = [
        ...(range.consistent ? [] : [phrase('contradicted')]),
        ...(because.length > 0 ? [phrase('rests on {0}', because.join(', '))] : []),
        ...(range.setAside.length > 0
          ? [phrase('set aside: {0}', range.setAside.map((one) => one.id).join(', '))]
          : []),
      ];
      lines.push(
        `  ${say(named(range.grade)).padEnd(12)} ${say(sayRange(range)).padEnd(34)} ${say(inRow(told, '; '))}`.trimEnd(),
      );
    }
  }
  lines.push('', contradictionWords(file));
  return inLines([...lines, '']);
}

function contradictionWords(file: CaseFile): Said {
  if (file.contradictions.length === 0)
    return phrase('No statements contradict each other at any of the grades ({0}).', GRADES.join(', '));
  return inRow(
    clustersOfContradictions(file).map((cluster) => clusterWords(file, cluster)),
    '\n\n',
  );
}

/** The contradictions of one cluster, then every way out with the dates that it leaves. */
function clusterWords(file: CaseFile, cluster: ClusterOfContradictions): Said {
  const { affected } = cluster;
  const title = (i: number): string => titleOf(affected[i] as Entry, file.settings.languages);
  const ranges = (list: readonly PrintedRange[]): readonly Said[] =>
    list.map((range, i) => inRow(['      ', title(i), ': ', sayRange(range)], ''));
  return inRow(
    [
      inRow([sayDispute(file, disputeOf(file, cluster.contradictions)), '.'], ''),
      ...cluster.contradictions.flatMap((one): readonly Said[] => [
        inRow(
          [
            one.kind === 'order' ? phrase('A loop of order') : phrase('Statements that cannot all be right'),
            ' (',
            named(one.grade),
            '): ',
            ids(one.statements),
          ],
          '',
        ),
        ...bothSides(file, one),
        ...one.statements.map((s) => inRow(['    ', s.id, ': ', sayStatement(s.says), ' (', named(s.grade), ')'], '')),
        inRow(['    ', sayRootCount(countRoots(file.catalogue, one.statements)), '.'], ''),
      ]),
      ...(cluster.complete ? [] : [phrase('  There may be more contradictions here than could be listed.')]),
      ...(affected.length > 0
        ? [phrase('  As the file stands, on {0} statements:', named(cluster.grade)), ...ranges(cluster.standing)]
        : []),
      phrase('  Ways out; none is preferred:'),
      ...cluster.ways.flatMap((way) => [
        phrase('    without {0}', allOf(way.withdrawn.map((s) => s.id))),
        ...ranges(way.ranges),
      ]),
    ],
    '\n',
  );
}

function bothSides(file: CaseFile, one: FileContradiction): readonly Said[] {
  const said = sayContradiction(file, one);
  if (!said) return [];
  const { moment, earliest, latest } = said;
  return [
    phrase(
      '    {0} would have to be {1} ({2}) and {3} ({4})',
      moment,
      earliest.words,
      ids(earliest.statements),
      latest.words,
      ids(latest.statements),
    ),
  ];
}

function ids(list: readonly { readonly id: string }[]): string {
  return list.map((one) => one.id).join(', ');
}
