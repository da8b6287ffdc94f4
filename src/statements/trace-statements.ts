import { type Grade, lowestGrade, rankOf } from '../base/grade.ts';
import { oneOf, phrase } from '../base/said.ts';
import { type Link, ORIGIN } from '../chronology/chronology.ts';
import { dayOf } from '../dates/day.ts';
import type { Entry, KeyPath } from '../model/entry.ts';
import { LAYER_KEYS, type LayerRelation, layerRelations } from '../model/layer-relations.ts';
import { citationOf } from '../model/row-citation.ts';
import { CONSISTING_KINDS } from '../model/types/evidence.ts';
import type { Collector } from './collector.ts';
import { findMaterial, gradeOfMaterial, type NamedMaterial, nearMaterials } from './dated-material.ts';
import { inlineId } from './event-statements.ts';
import type { Span } from './file-statement.ts';
import { relationLinks } from './relation-links.ts';
import type { MaterialYear } from './saying.ts';

const NO_GAP = { min: null, max: null };

/** Statements of a trace: over, cuts, fills, same-as, left-by, materials (two numbers each). */
export function collectTrace(collector: Collector, trace: Entry<'evidence'>): void {
  const span = collector.moments.spanOf(trace.id);
  if (!span) return;
  if (trace.keys.seen !== undefined && trace.keys.seen !== 'seen') {
    doubtUnseen(collector, trace);
    return;
  }
  const usual = trace.keys.observed?.grade ?? 'possible';
  const relations = layerRelations(trace);
  relations.forEach((relation, i) => {
    collectLayer(collector, trace, span, relation, i + 1);
  });
  let number = collectLeftBy(collector, trace, span, usual, relations.length);
  (trace.keys.materials ?? []).forEach((material, i) => {
    collectMaterial(collector, trace, span, material, number + 1, ['materials', i]);
    number += 2;
  });
}

/** Traces that were not seen bear on nothing; relations written on them are pointed out. */
function doubtUnseen(collector: Collector, trace: Entry<'evidence'>): void {
  const key = ([...LAYER_KEYS, 'left-by', 'materials'] as const).find((one) => trace.keys[one] !== undefined);
  if (!key) return;
  collector.problem(
    trace,
    [key],
    'unseen-used',
    'doubt',
    phrase('the trace was {0}, so "{1}" is not used; what was not seen proves no absence', trace.keys.seen, key),
    phrase('delete the key, or write seen: seen if it was seen after all'),
  );
}

function collectLayer(
  collector: Collector,
  trace: Entry<'evidence'>,
  span: Span,
  other: LayerRelation,
  number: number,
): void {
  const { key, path } = other;
  if (other.id === trace.id) {
    collector.problem(
      trace,
      path,
      'relation-to-itself',
      'error',
      phrase('a trace cannot stand in "{0}" to itself', key),
      phrase('name the other trace'),
    );
    return;
  }
  const target = collector.moments.spanOf(other.id);
  const entry = collector.catalogue.get(other.id);
  if (!target || !entry) return;
  const links =
    key === 'same-as'
      ? relationLinks('same-as', span, target, false, NO_GAP)
      : [{ from: target.start, to: span.end, days: 0, role: `layer-${key}` }];
  collector.add(
    trace,
    {
      id: inlineId(trace.id, other.ref, number),
      kind: 'layer',
      path,
      grade: other.grade,
      why: other.why,
      says: { is: 'layer', relation: key, one: collector.subject(trace), other: collector.subject(entry) },
    },
    { links, order: key === 'same-as' ? 'same' : 'order' },
  );
}

/**
 * Of several events that may have left a trace, only those of the best grade count, and only one alone. Events that the
 * audience does not see are as if nobody had named them; their places are counted, so that ids stay.
 */
function collectLeftBy(
  collector: Collector,
  trace: Entry<'evidence'>,
  span: Span,
  usual: Grade,
  before: number,
): number {
  const all = (trace.keys['left-by'] ?? []).map((one) =>
    typeof one === 'string' ? { event: one, grade: usual } : one,
  );
  const told = all.filter((one) => !collector.isHidden(one.event));
  const best = Math.min(...told.map((one) => rankOf(one.grade)));
  const leading = told.filter((one) => rankOf(one.grade) === best);
  if (leading.length > 1) {
    collector.problem(
      trace,
      ['left-by'],
      'left-by-undecided',
      'doubt',
      phrase(
        '{0} events are given with the same grade as what left this trace, so none of them bounds it',
        leading.length,
      ),
      phrase('give one of them a better grade, or leave it as it is: undecided'),
    );
  }
  all.forEach((one, i) => {
    const event = collector.catalogue.get(one.event);
    const target = collector.moments.spanOf(one.event);
    if (!event || !target) return;
    const notUsed =
      rankOf(one.grade) !== best
        ? phrase('another event is given with a better grade')
        : leading.length > 1
          ? phrase('several events are given with the same grade')
          : null;
    const reason = 'why' in one ? one.why : undefined;
    collector.add(
      trace,
      {
        id: inlineId(trace.id, 'ref' in one ? one.ref : undefined, before + i + 1),
        kind: 'left-by',
        path: ['left-by', i],
        grade: one.grade,
        why: reason,
        says: { is: 'left by', one: collector.subject(trace), other: collector.subject(event) },
      },
      {
        links: [
          { from: target.start, to: span.start, days: 0, role: 'left-by' },
          { from: span.end, to: target.end, days: 0, role: 'left-by' },
        ],
        ...(notUsed ? { notUsed } : {}),
      },
    );
  });
  return before + all.length;
}

function collectMaterial(
  collector: Collector,
  trace: Entry<'evidence'>,
  span: Span,
  material: NamedMaterial,
  number: number,
  path: KeyPath,
): void {
  const row = findMaterial(material.name);
  if (!row) {
    const near = nearMaterials(material.name);
    collector.problem(
      trace,
      [...path, 'name'],
      'material-not-in-table',
      'note',
      phrase('"{0}" is not in the table of dated materials, so it bounds nothing', material.name),
      near.length > 0
        ? phrase('did you mean {0}?', oneOf(near.map((one) => `"${one}"`)))
        : phrase('leave it as it is, or see the table on the method page'),
    );
    return;
  }
  if (material.belongs !== 'made with the layer') return;
  if (!CONSISTING_KINDS.includes(trace.keys.kind)) {
    collector.problem(
      trace,
      path,
      'material-on-gap',
      'doubt',
      phrase('a {0} does not consist of a material, so "{1}" bounds nothing here', trace.keys.kind, material.name),
      phrase('give the fill an entry of its own (kind: fill, fills: [this trace]) and put the material there'),
    );
    return;
  }
  const { grade, note } = gradeOfMaterial(material, row);
  const add = (year: number | null, is: MaterialYear, at: Grade, place: number, ref: string | undefined): void => {
    if (year === null) return;
    const link: Link = { from: ORIGIN, to: span.start, days: dayOf(year, 1, 1), role: 'material' };
    collector.add(
      trace,
      {
        id: inlineId(trace.id, ref, place),
        kind: 'material',
        path,
        grade: at,
        source: material.report,
        why: material.why,
        says: {
          is: 'material',
          subject: collector.subject(trace),
          material: material.name,
          year: is,
          from: year,
          table: citationOf(row),
        },
      },
      { links: [link], precision: 'year', statedGrade: material.grade, gradeNote: note },
    );
  };
  add(row.firstKnownYear, 'first known', grade, number, material.ref);
  add(
    row.firstCommercialYear,
    'in trade',
    lowestGrade(grade, 'probable'),
    number + 1,
    material.ref === undefined ? undefined : `${material.ref}-trade`,
  );
}
