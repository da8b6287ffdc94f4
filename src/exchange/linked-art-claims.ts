import type { Grade } from '../base/grade.ts';
import type { DayRange } from '../dates/day.ts';
import { hullOfExpression } from '../dates/expression.ts';
import type { CaseFile } from '../findings/case-file.ts';
import { titleOf } from '../model/catalogue.ts';
import { type Entry, isOfType } from '../model/entry.ts';
import type { FileStatement } from '../statements/file-statement.ts';
import { sayStatement } from '../statements/say-statement.ts';
import { type Json, ref, spanOf, statement } from './linked-art-parts.ts';

/** The standard has no number for confidence: a word of the file's own stands as the class of the assignment. */
function confidence(grade: Grade): Json {
  return { id: `urn:kerfmark:grade:${grade}`, type: 'Type', _label: grade };
}

/** What sources say about an event, used or not: each a dated assignment with its confidence and its reason. */
export function claimsAbout(file: CaseFile, event: Entry<'event'>): readonly Json[] {
  return file.statementsAbout(event.id).flatMap((one): readonly Json[] => {
    if (!one.date) return [];
    const span = claimedSpan(file, one, hullOfExpression(one.date)).timespan;
    const source = one.source === null ? undefined : file.catalogue.get(one.source);
    return [
      {
        type: 'AttributeAssignment',
        _label: file.sayer.say(sayStatement(one.says)),
        assigned_property: 'timespan',
        ...(span ? { assigned: [span] } : {}),
        classified_as: [confidence(one.grade)],
        ...(source ? { influenced_by: [ref(file, source.id, 'LinguisticObject')] } : {}),
        referred_to_by: [
          statement('Statement', one.id),
          ...(one.why ? [statement('Why', one.why)] : []),
          ...(one.notUsed ? [statement('Not used in the computation, because', file.sayer.say(one.notUsed))] : []),
        ],
      },
    ];
  });
}

/** The span that a statement claims, by its sense: by a day, not before it, within; any other sense is left in words. */
function claimedSpan(file: CaseFile, { entry, path, kind, says }: FileStatement, { first, last }: DayRange): Json {
  const keys = file.catalogue.get(entry)?.keys as Readonly<Record<string, unknown>> | undefined;
  const at = (kind === 'claim' ? ['says'] : path).reduce<unknown>(
    (value, key) => (value as Readonly<Record<string | number, unknown>> | undefined)?.[key],
    keys,
  );
  const sense = (at as { sense?: string } | undefined)?.sense ?? 'within';
  const begin = ['begin_of_the_begin', first, 'first'] as const;
  const end = ['end_of_the_end', last, 'last'] as const;
  if (sense === 'within') return spanOf([begin, end]);
  if (sense === 'by') return spanOf([end]);
  if (sense === 'not-before') return spanOf([begin]);
  return {
    timespan: { type: 'TimeSpan', identified_by: [{ type: 'Name', content: file.sayer.say(sayStatement(says)) }] },
  };
}

/** Assertions of title, and candidate origins: who says so, on which ground; nothing is found. */
export function assertionsAbout(file: CaseFile, object: Entry<'object'>): readonly Json[] {
  const titles = file.catalogue
    .ofType('title')
    .filter((one) => one.keys.objects.some((id) => id.split('/')[0] === object.id))
    .map((one): Json => {
      const party = file.catalogue.get(one.keys['asserted-by']);
      const type = party && isOfType(party, 'party') && party.keys.is === 'person' ? 'Person' : 'Group';
      const who = party ? [ref(file, party.id, type)] : [];
      return {
        type: 'AttributeAssignment',
        _label: titleOf(one, file.settings.languages),
        assigned_property: 'current_owner',
        ...(who.length > 0 ? { assigned: who, carried_out_by: who } : {}),
        referred_to_by: [
          statement('Interest', one.keys.interest),
          statement('Ground', one.keys.ground),
          statement('Note', 'An assertion of title: a legal position of the party named, not a finding.'),
        ],
      };
    });
  const readings = file.catalogue
    .ofType('reading')
    .filter((one) => (one.keys.about ?? []).some((id) => id.split('/')[0] === object.id))
    .map(
      (one): Json => ({
        type: 'AttributeAssignment',
        _label: titleOf(one, file.settings.languages),
        assigned_property: 'part_of',
        referred_to_by: [
          statement('Proposition', one.keys.proposition),
          ...(one.keys.weighs ?? []).map((weigh) => statement(`${weigh.is}: ${weigh.entry}`, weigh.why)),
        ],
      }),
    );
  return [...titles, ...readings];
}
