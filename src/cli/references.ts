import { GRADES } from '../base/grade.ts';
import { inLines, inRow, named, phrase, type Said } from '../base/said.ts';
import type { CaseFile } from '../findings/case-file.ts';
import { offeredReferences, sayNothingOffered } from '../findings/offered-references.ts';
import { referenceTable } from '../findings/reference-dates.ts';
import { type ReachedOrder, type ReferenceTest, testReferences } from '../findings/reference-tests.ts';
import { sayApplied, sayHeld, sayOrder, tellAnswers } from '../findings/reference-words.ts';
import { titleOf } from '../model/catalogue.ts';
import { citationOf } from '../model/row-citation.ts';
import { compute } from '../pipeline.ts';
import cautions from '../reference/cautions.json' with { type: 'json' };
import { audienceOf, folderOf, type RunCommand } from './commands.ts';
import { loadWorkspace } from './load-workspace.ts';

export const references: RunCommand = async (options, effects) => {
  if (options.flags.list) {
    const rows = referenceTable().map(
      (row) => `${row.id.padEnd(44)} ${row.dateAsGiven.padEnd(34)} ${row.title} (${row.territory})`,
    );
    effects.out(inRow([rows.join('\n'), '\n'], ''));
    return 0;
  }
  const { file, errors } = compute(await loadWorkspace(folderOf(options, effects)), audienceOf(options), {
    spoken: effects.sayer.language,
  });
  const tests = testReferences(file);
  if (options.flags.json) effects.out(inRow([JSON.stringify(report(file, tests), null, 2), '\n'], ''));
  else if (options.flags.offered) effects.out(file.sayer.say(tellOffered(file)));
  else {
    const lines = tests.flatMap(({ reference, events, holdings }): readonly Said[] => [
      inRow([reference.title, ' (', reference.id, ')'], ''),
      ...events.flatMap(({ event, applied, answers }): readonly Said[] => [
        inRow(['  ', titleOf(event, file.settings.languages), ' [', event.id, ']'], ''),
        ...(applied ? [inRow(['    ', sayApplied(file, applied)], '')] : []),
        ...tellAnswers(answers).flatMap(
          ({ grades, answer: { order, decides, because, decidedBy } }): readonly Said[] => [
            inRow(
              [
                '    ',
                inRow(grades.map(named), ', '),
                ': ',
                sayOrder(order),
                decides === null ? '' : phrase('; to be found out: {0}', decides),
                because.length > 0 ? phrase('; rests on {0}', because.map((one) => one.id).join(', ')) : '',
              ],
              '',
            ),
            ...decidedBy.map(
              (one): Said =>
                phrase(
                  '      {0}, were {1, plural, one {} other {any one of }}{2} established',
                  sayOrder(one.order),
                  one.statements.length,
                  one.statements.map((s) => s.id).join(', '),
                ),
            ),
          ],
        ),
      ]),
      ...holdings.map(
        ({ holding, answers }): Said =>
          inRow(
            [
              '  ',
              titleOf(holding, file.settings.languages),
              ' [',
              holding.id,
              ']: ',
              inRow(
                answers.map((held, rank): Said => inRow([named(GRADES[rank] as string), ' ', sayHeld(held)], '')),
                '; ',
              ),
            ],
            '',
          ),
      ),
      '',
    ]);
    const caution = cautions.find((one) => one.subject === 'legal')?.text ?? '';
    effects.out(
      file.sayer.say(
        inRow(
          [
            tests.length === 0 ? phrase('No reference dates were chosen for this file.\n') : inLines(lines),
            '\n',
            phrase('The order of dates only; it does not say that an act was lawful or unlawful.'),
            '\n',
            named(caution),
            '\n',
          ],
          '',
        ),
      ),
    );
  }
  return errors.length > 0 ? 1 : 0;
};

function tellOffered(file: CaseFile): Said {
  const told = offeredReferences(file).map((one): Said => {
    const rule = one.rule ? `, ${one.rule.power} (${one.rule.kind})` : '';
    const head = `${titleOf(one.event, file.settings.languages)} [${one.event.id}]${one.place ? `: ${titleOf(one.place, file.settings.languages)}${rule}` : ''}`;
    const nothing = sayNothingOffered(one);
    const rows = one.rows.map(
      ({ row, decision }): Said =>
        inRow(
          [
            '    ',
            row.id,
            ': ',
            row.dateAsGiven,
            ', ',
            row.title,
            ' (',
            row.kind,
            '; ',
            citationOf(row),
            '): ',
            named(decision),
          ],
          '',
        ),
    );
    const none: readonly Said[] = nothing ? [inRow(['    ', nothing], '')] : [];
    return inRow([head, ...(nothing ? none : rows)], '\n');
  });
  return phrase(
    '{0}\n\nOffered by the rule over each place at the time of the event; a person chooses or declines, in the workspace entry.\n',
    inRow(told, '\n\n'),
  );
}

function report(file: CaseFile, tests: readonly ReferenceTest[]): unknown {
  return {
    format: 'kerfmark-references/2',
    note: 'the order of dates only; it does not say that an act was lawful or unlawful',
    offered: offeredReferences(file).map((one) => ({
      event: one.event.id,
      place: one.place?.id ?? null,
      jurisdiction: one.jurisdiction,
      rows: one.rows.map(({ row, decision }) => ({ id: row.id, decision })),
      nothing: sayOrNull(file, sayNothingOffered(one)),
    })),
    references: tests.map(({ reference, events, holdings, outside }) => ({
      id: reference.id,
      title: file.sayer.say(reference.title),
      outside: outside.map((one) => one.id),
      events: events.map(({ event, applied, answers }) => ({
        entry: event.id,
        applied: applied && { by: applied.by, why: applied.why },
        answers: answers.map(({ grade, order, decides, because, decidedBy }) => ({
          grade,
          order: order satisfies ReachedOrder,
          decides: sayOrNull(file, decides),
          because: because.map((one) => one.id),
          decidedBy: decidedBy.map((one) => ({ order: one.order, statements: one.statements.map((s) => s.id) })),
        })),
      })),
      holdings: holdings.map(({ holding, answers }) => ({ entry: holding.id, held: answers })),
    })),
  };
}

function sayOrNull({ sayer }: CaseFile, said: Said | null): string | null {
  return said === null ? null : sayer.say(said);
}
