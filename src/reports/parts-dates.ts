import { GRADES } from '../base/grade.ts';
import { explainBound, sayMoment } from '../findings/explain.ts';
import { fromTo, sayRange } from '../findings/printed-range.ts';
import { titleOf } from '../model/catalogue.ts';
import type { Entry } from '../model/entry.ts';
import { type Block, list, paragraph, passage, section } from './document.ts';
import type { Matter } from './matter.ts';
import { eventsAsked } from './parts-known.ts';
import { capital } from './say-entry.ts';

/** All events of the pieces with their ranges at the four grades. */
export function chronology(matter: Matter, figure: Block | null): readonly Block[] {
  const { say, words, term } = matter.file.sayer;
  const { file } = matter;
  const rows = eventsAsked(matter).map((event) => {
    const [starts = [], ends = []] = (['start', 'end'] as const).map((edge) => {
      const moment = file.statements.moments.momentOf(event.id, edge);
      return moment ? file.rangesOf(moment) : [];
    });
    return [
      passage(titleOf(event, file.settings.languages), [event.id]),
      ...GRADES.map((_, rank) => {
        const [start, end] = [starts[rank], ends[rank]];
        const isDisputed = !(start?.consistent && end?.consistent);
        return passage(`${say(sayRange(fromTo(start, end)))}${isDisputed ? words(', statements disagree') : ''}`);
      }),
    ];
  });
  const table: Block = {
    kind: 'table',
    caption: words('From the earliest beginning to the latest end, on statements of each grade or better'),
    head: [words('Event'), ...GRADES.map((one) => capital(term(one)))],
    widths: [4, 3, 3, 3, 3],
    rows,
  };
  return section(
    words('Chronology'),
    rows.length === 0 ? [] : [...(figure ? [figure] : []), table],
    words('No event is recorded.'),
  );
}

/** Why the key events lie where they do, sentence by sentence, at the printed grade. */
export function reasons({ file, objects }: Matter): readonly Block[] {
  const { words, term } = file.sayer;
  const keys = objects.flatMap((object) => object.keys['key-events'] ?? []);
  const blocks = keys.flatMap((id): readonly Block[] => {
    const event = file.catalogue.get(id) as Entry<'event'> | undefined;
    if (!event) return [];
    const rank = GRADES.indexOf(file.settings.printedGrade);
    const said = (['start', 'end'] as const).flatMap((edge) => {
      const moment = file.statements.moments.momentOf(id, edge);
      if (!moment) return [];
      // The earliest beginning and the latest end are what is printed of an event.
      const side = edge === 'start' ? 'earliest' : 'latest';
      const { sentences } = explainBound(file, moment, rank, side);
      const head = passage(
        words('{0}, why not {1}:', sayMoment(file, moment), side === 'earliest' ? words('earlier') : words('later')),
      );
      const steps = sentences.map((one) =>
        passage(
          words('{0}; so {1}.', one.because, one.so),
          one.statement ? [one.statement.entry, ...(one.statement.source ? [one.statement.source] : [])] : [],
          one.statement ? [one.statement.id] : [],
        ),
      );
      return steps.length === 0 ? [] : [head, ...steps];
    });
    return said.length === 0
      ? []
      : [{ kind: 'heading', level: 3, words: titleOf(event, file.settings.languages) }, ...list(said)];
  });
  return section(
    words('Why these dates'),
    blocks.length === 0
      ? []
      : [paragraph(words('On {0} statements or better.', term(file.settings.printedGrade))), ...blocks],
  );
}
