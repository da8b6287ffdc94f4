import { GRADES, type Grade, rankOf } from '../base/grade.ts';
import { nearest } from '../base/nearest.ts';
import type { Side } from '../chronology/chronology.ts';
import type { CaseFile } from '../findings/case-file.ts';
import { supportOf } from '../findings/company.ts';
import { explainBound, sayMoment } from '../findings/explain.ts';
import { sayRootCount, sayTitles } from '../findings/independence.ts';
import { sayRange } from '../findings/printed-range.ts';
import { titleOf } from '../model/catalogue.ts';
import type { Moment } from '../statements/statements.ts';
import { audienceOf, choiceOf, folderOf, type RunCommand } from './commands.ts';
import { Fault } from './fault.ts';
import { formatProblems } from './format-problems.ts';
import { loadWorkspace } from './load-workspace.ts';
import { computeTrial } from './trial.ts';

export const why: RunCommand = async (options, effects) => {
  const [id] = options.words;
  if (id === undefined) throw new Fault('Which entry? Type its id: kerfmark why EV-removal');
  const files = await loadWorkspace(folderOf(options, effects));
  const computed = computeTrial(files, audienceOf(options), options);
  const { file, errors } = computed;
  const target = file.catalogue.resolve(id);
  if (!target) {
    const near = nearest(
      id,
      file.catalogue.entries.map((entry) => entry.id),
    );
    throw new Fault(`There is no entry "${id}".${near.length > 0 ? ` Did you mean ${near.join(', ')}?` : ''}`);
  }
  const moments = file.statements.moments.all.filter(
    (one) => one.entry === target.entry.id && (target.edge === null || one.edge === target.edge),
  );
  if (moments.length === 0) {
    throw new Fault(
      `${id} is of type ${target.entry.type}, which has no time of its own. Events, holdings and traces have.`,
    );
  }
  const grade = choiceOf<Grade>(options, 'grade', GRADES, file.settings.printedGrade);
  if (options.flags.json) {
    const reasons = moments.map((moment) => reasonsOf(file, moment, grade));
    const report = { format: 'kerfmark-reasons/1', entry: target.entry.id, grade, without: file.withdrawn, reasons };
    effects.out(`${JSON.stringify(report, null, 2)}\n`);
    return errors.length > 0 ? 1 : 0;
  }
  if (file.withdrawn.length > 0)
    effects.out(`A trial without ${file.withdrawn.join(', ')}; the file itself is not changed.\n`);
  effects.out(`${titleOf(target.entry, file.settings.languages)} (${target.entry.id}), on ${grade} statements\n`);
  for (const moment of moments) effects.out(argument(file, moment, grade));
  if (errors.length > 0) effects.err(formatProblems(errors, 'text', computed.problems));
  return errors.length > 0 ? 1 : 0;
};

/** The argument of both bounds of a moment, for machines. */
function reasonsOf(file: CaseFile, moment: Moment, grade: Grade): unknown {
  const rank = rankOf(grade);
  const range = file.rangesOf(moment)[rank];
  const sides = (['earliest', 'latest'] as const).map((side) => {
    if (!range?.[side]) return [side, null] as const;
    const { sentences, excluding } = explainBound(file, moment, rank, side);
    const steps = sentences.map(({ statement, because, so }) => ({
      statement: statement?.id ?? null,
      grade: statement?.grade ?? null,
      because,
      so,
    }));
    return [side, { steps, ruledOutBy: excluding.map((one) => one.id) }] as const;
  });
  return {
    moment: sayMoment(file, moment),
    edge: moment.edge,
    range: range ? sayRange(range) : null,
    consistent: range?.consistent ?? true,
    ...Object.fromEntries(sides),
  };
}

function argument(file: CaseFile, moment: Moment, grade: Grade): string {
  const rank = rankOf(grade);
  const range = file.rangesOf(moment)[rank];
  if (!range) return '';
  const sides: readonly Side[] = ['earliest', 'latest'];
  const parts = sides.map((side) => {
    const bound = range[side];
    const head = side === 'earliest' ? 'Why not earlier' : 'Why not later';
    if (!bound) return `  ${head}: nothing in the file bounds it on this side.`;
    const { sentences, excluding } = explainBound(file, moment, rank, side);
    const lines = sentences.map(
      ({ statement, because, so }, i) =>
        `    ${i + 1}. ${because}${statement ? ` [${statement.id}, ${statement.grade}]` : ''}; so ${so}.`,
    );
    const ruled =
      excluding.length > 0
        ? [`    The other possibilities are ruled out by ${excluding.map((one) => one.id).join(', ')}.`]
        : [];
    return [`  ${head}:`, ...lines, ...ruled, ...support(file, moment, rank, side)].join('\n');
  });
  const dispute = range.consistent
    ? ''
    : '\n  Statements that cannot all be right pass through this moment; the range rests only on what is not in dispute.';
  const aside = range.setAside.map((one) => `\n  Set aside, since in dispute: ${one.text} [${one.id}, ${one.grade}].`);
  return `\n${sentenceCase(sayMoment(file, moment))}: ${sayRange(range)}\n${parts.join('\n')}${dispute}${aside.join('')}\n`;
}

/** What the bound hangs on: alone, in company, and by how many roots. */
function support(file: CaseFile, moment: Moment, rank: number, side: Side): readonly string[] {
  const { sole, company, roots } = supportOf(file, moment, rank, side);
  const ids = (list: readonly { readonly id: string }[]): string => list.map((one) => one.id).join(', ');
  return [
    ...(sole.length > 0 ? [`    Moves without any one of: ${ids(sole)}.`] : []),
    ...company.map(({ spared, instead, freed, oneRoot, perhapsOneRoot }) => {
      if (freed)
        return `    Without ${ids(spared)} it would be the same day, by ${ids(instead)}, of which some is set aside now.`;
      const root =
        oneRoot.length > 0
          ? `; held twice, by one root: ${sayTitles(file.catalogue, oneRoot, file.settings.languages)}`
          : perhapsOneRoot
            ? '; perhaps by one root, since the parentage of a source is not known'
            : '';
      return `    Holds without ${ids(spared)} too${instead.length > 0 ? `, by ${ids(instead)}` : ''}${root}.`;
    }),
    `    ${sayRootCount(roots)}.`,
  ];
}

function sentenceCase(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
