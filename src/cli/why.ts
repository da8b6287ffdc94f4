import { GRADES, type Grade, rankOf } from '../base/grade.ts';
import { nearest } from '../base/nearest.ts';
import { capital, inRow, named, phrase, type Said } from '../base/said.ts';
import type { Side } from '../chronology/chronology.ts';
import type { CaseFile } from '../findings/case-file.ts';
import { supportOf } from '../findings/company.ts';
import { explainBound, sayMoment } from '../findings/explain.ts';
import { sayRootCount, sayTitles } from '../findings/independence.ts';
import { sayRange } from '../findings/printed-range.ts';
import { titleOf } from '../model/catalogue.ts';
import { sayStatement } from '../statements/say-statement.ts';
import type { Moment } from '../statements/statements.ts';
import { audienceOf, choiceOf, folderOf, type RunCommand } from './commands.ts';
import { Fault } from './fault.ts';
import { formatProblems } from './format-problems.ts';
import { loadWorkspace } from './load-workspace.ts';
import { computeTrial } from './trial.ts';

export const why: RunCommand = async (options, effects) => {
  const [id] = options.words;
  if (id === undefined) throw new Fault(phrase('Which entry? Type its id: kerfmark why EV-removal'));
  const files = await loadWorkspace(folderOf(options, effects));
  const computed = computeTrial(files, audienceOf(options), options, effects.sayer.language);
  const { file, errors } = computed;
  const target = file.catalogue.resolve(id);
  if (!target) {
    const near = nearest(
      id,
      file.catalogue.entries.map((entry) => entry.id),
    );
    throw new Fault(
      phrase('There is no entry "{0}".{1}', id, near.length > 0 ? phrase(' Did you mean {0}?', near.join(', ')) : ''),
    );
  }
  const moments = file.statements.moments.all.filter(
    (one) => one.entry === target.entry.id && (target.edge === null || one.edge === target.edge),
  );
  if (moments.length === 0) {
    throw new Fault(
      phrase(
        '{0} is of type {1}, which has no time of its own. Events, holdings and traces have.',
        id,
        target.entry.type,
      ),
    );
  }
  const grade = choiceOf<Grade>(options, 'grade', GRADES, file.settings.printedGrade);
  if (options.flags.json) {
    const reasons = moments.map((moment) => reasonsOf(file, moment, grade));
    const report = { format: 'kerfmark-reasons/1', entry: target.entry.id, grade, without: file.withdrawn, reasons };
    effects.out(inRow([JSON.stringify(report, null, 2), '\n'], ''));
    return errors.length > 0 ? 1 : 0;
  }
  if (file.withdrawn.length > 0)
    effects.out(phrase('A trial without {0}; the file itself is not changed.\n', file.withdrawn.join(', ')));
  effects.out(
    phrase(
      '{0} ({1}), on {2} statements\n',
      titleOf(target.entry, file.settings.languages),
      target.entry.id,
      named(grade),
    ),
  );
  for (const moment of moments) effects.out(file.sayer.say(argument(file, moment, grade)));
  if (errors.length > 0) effects.err(formatProblems(effects.sayer, errors, 'text', computed.problems));
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
      because: file.sayer.say(because),
      so: file.sayer.say(so),
    }));
    return [side, { steps, ruledOutBy: excluding.map((one) => one.id) }] as const;
  });
  return {
    moment: file.sayer.say(sayMoment(file, moment)),
    edge: moment.edge,
    range: range ? file.sayer.say(sayRange(range)) : null,
    consistent: range?.consistent ?? true,
    ...Object.fromEntries(sides),
  };
}

function argument(file: CaseFile, moment: Moment, grade: Grade): Said {
  const rank = rankOf(grade);
  const range = file.rangesOf(moment)[rank];
  if (!range) return '';
  const sides: readonly Side[] = ['earliest', 'latest'];
  const parts = sides.map((side): Said => {
    const bound = range[side];
    const head = side === 'earliest' ? phrase('Why not earlier') : phrase('Why not later');
    if (!bound) return phrase('  {0}: nothing in the file bounds it on this side.', head);
    const { sentences, excluding } = explainBound(file, moment, rank, side);
    const lines = sentences.map(
      ({ statement, because, so }, i): Said =>
        phrase(
          '    {0}. {1}{2}; so {3}.',
          i + 1,
          because,
          statement ? inRow([' [', statement.id, ', ', named(statement.grade), ']'], '') : '',
          so,
        ),
    );
    const ruled: readonly Said[] =
      excluding.length > 0
        ? [phrase('    The other possibilities are ruled out by {0}.', excluding.map((one) => one.id).join(', '))]
        : [];
    return inRow([phrase('  {0}:', head), ...lines, ...ruled, ...support(file, moment, rank, side)], '\n');
  });
  const dispute: Said = range.consistent
    ? ''
    : phrase(
        '\n  Statements that cannot all be right pass through this moment; the range rests only on what is not in dispute.',
      );
  const aside = range.setAside.map(
    (one): Said =>
      phrase('\n  Set aside, since in dispute: {0} [{1}, {2}].', sayStatement(one.says), one.id, named(one.grade)),
  );
  return inRow(
    [
      phrase('\n{0}: {1}\n', capital(sayMoment(file, moment)), sayRange(range)),
      inRow(parts, '\n'),
      dispute,
      ...aside,
      '\n',
    ],
    '',
  );
}

/** What the bound hangs on: alone, in company, and by how many roots. */
function support(file: CaseFile, moment: Moment, rank: number, side: Side): readonly Said[] {
  const { sole, company, roots } = supportOf(file, moment, rank, side);
  const ids = (list: readonly { readonly id: string }[]): string => list.map((one) => one.id).join(', ');
  return [
    ...(sole.length > 0 ? [phrase('    Moves without any one of: {0}.', ids(sole))] : []),
    ...company.map(({ spared, instead, freed, oneRoot, perhapsOneRoot }): Said => {
      if (freed)
        return phrase(
          '    Without {0} it would be the same day, by {1}, of which some is set aside now.',
          ids(spared),
          ids(instead),
        );
      const root: Said =
        oneRoot.length > 0
          ? phrase(
              '; held twice, by one independent origin: {0}',
              sayTitles(file.catalogue, oneRoot, file.settings.languages),
            )
          : perhapsOneRoot
            ? phrase('; perhaps by one origin, since the parentage of a source is not known')
            : '';
      return phrase(
        '    Holds without {0} too{1}{2}.',
        ids(spared),
        instead.length > 0 ? phrase(', by {0}', ids(instead)) : '',
        root,
      );
    }),
    inRow(['    ', sayRootCount(roots), '.'], ''),
  ];
}
