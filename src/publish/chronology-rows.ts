import type { CaseFile } from '../findings/case-file.ts';
import { eventsInOrder } from '../findings/event-order.ts';
import type { EntryRanges } from '../findings/range-changes.ts';
import { chosenReferences } from '../findings/reference-dates.ts';
import { titleOf } from '../model/catalogue.ts';
import type { Entry } from '../model/entry.ts';
import type { Moment } from '../statements/statements.ts';
import type { NamedDay } from './chronology-drawing.ts';

/** The events of a file in their computed order, as they are drawn. */
export function drawnEvents(file: CaseFile, events = eventsInOrder(file)): readonly EntryRanges[] {
  return events.map((event) => {
    const moments = momentsOf(file, event);
    const [starts = [], ends = []] = moments.map((moment) => file.rangesOf(moment));
    return {
      id: event.id,
      title: titleOf(event, file.settings.languages),
      starts,
      ends,
      crossing: moments.map((moment) => file.chronology.crossing(3, moment.index)).find((one) => one) ?? null,
    };
  });
}

/** The reference dates that were chosen, each by its first day. */
export function drawnReferences(file: CaseFile): readonly NamedDay[] {
  return chosenReferences(file.catalogue).flatMap(({ from, title }) =>
    from ? [{ day: from.first, name: file.sayer.say(title) }] : [],
  );
}

function momentsOf(file: CaseFile, event: Entry<'event'>): readonly Moment[] {
  return (['start', 'end'] as const).flatMap((edge) => file.statements.moments.momentOf(event.id, edge) ?? []);
}
