import type { CaseFile } from '../findings/case-file.ts';
import type { Sayer } from '../language/sayer.ts';
import { inLanguage, titleOf } from '../model/catalogue.ts';
import type { Entry } from '../model/entry.ts';
import { type Block, type Figure, paragraph, passage, type ReportDocument } from './document.ts';
import { footOf, type Matter, matterOf } from './matter.ts';
import { papers } from './parts-acts.ts';
import {
  abbreviations,
  contributors,
  conventions,
  glossary,
  hiddenPart,
  type Making,
  versions,
} from './parts-conventions.ts';
import { coverage, custody, nilResults, readings } from './parts-custody.ts';
import { chronology, reasons } from './parts-dates.ts';
import { numberedEvidence, technicalTable } from './parts-evidence.ts';
import { acquisition, identification, known, presentCustody } from './parts-known.ts';
import { concordance, examinations, figuresList, names, sections } from './parts-object.ts';
import { conflicts, orderToReferences, publications, searches, titles, unknown, voices } from './parts-open.ts';
import { nameOf } from './say-entry.ts';

/** A drawing that the shell can make for a report: its key, its true width where it is a plate at a scale, and words. */
export interface ReportPicture {
  readonly key: string;
  readonly caption: string;
  readonly alt: string;
  /** Width in print; null for the width of the text. */
  readonly widthMm: number | null;
  readonly rests: readonly string[];
}

/** The drawings of a report: the chronology, the four chains, and the plates of the panels. */
export interface ReportPictures {
  readonly chronology: ReportPicture | null;
  readonly chains: ReportPicture | null;
  readonly plates: readonly ReportPicture[];
}

/** The provenance file of an object: what is known, why, what is not known, and on what it rests. */
export function composeFile(
  file: CaseFile,
  object: Entry<'object'>,
  pictures: ReportPictures,
  making: Making,
): ReportDocument {
  const { words } = file.sayer;
  const matter = matterOf(file, [object.id]);
  return report(file, object, words('Provenance file'), [
    ...opening(matter),
    ...identification(matter),
    ...concordance(matter),
    ...presentCustody(matter),
    ...acquisition(matter),
    ...known(matter),
    ...chronology(matter, figureOf(pictures.chronology)),
    ...reasons(matter),
    ...conflicts(matter),
    ...custody(matter, figureOf(pictures.chains)),
    ...unknown(matter),
    ...titles(matter),
    ...voices(matter),
    ...orderToReferences(matter),
    ...searches(matter),
    ...coverage(matter),
    ...readings(matter),
    ...numberedEvidence(matter),
    ...sections(matter),
    ...plates(file.sayer, pictures),
    ...examinations(matter),
    ...publications(matter),
    ...papers(matter),
    ...figuresList(matter),
    ...names(matter),
    ...conventions(matter),
    ...hiddenPart(matter),
    ...versions(matter, making),
  ]);
}

/** The appendix to a publication: evidence numbered, technique, plates, documents, chronology, nil results, conventions. */
export function composeAppendix(
  file: CaseFile,
  object: Entry<'object'>,
  pictures: ReportPictures,
  making: Making,
): ReportDocument {
  const { words } = file.sayer;
  const matter = matterOf(file, [object.id]);
  const body: readonly Block[] = [
    ...opening(matter),
    ...numberedEvidence(matter),
    ...technicalTable(matter),
    ...sections(matter),
    ...plates(file.sayer, pictures),
    ...concordance(matter),
    ...chronology(matter, figureOf(pictures.chronology)),
    ...conflicts(matter),
    ...custody(matter, null),
    ...voices(matter),
    ...nilResults(matter),
    ...examinations(matter),
    ...figuresList(matter),
    ...names(matter),
  ];
  return report(file, object, words('Appendix: evidence, technique, documents'), [
    ...body,
    ...glossary(file.sayer, { blocks: body }),
    ...abbreviations(file.sayer, { blocks: body }),
    ...conventions(matter),
    ...contributors(matter),
    ...hiddenPart(matter),
    ...versions(matter, making),
  ]);
}

function report(file: CaseFile, object: Entry<'object'>, subtitle: string, blocks: readonly Block[]): ReportDocument {
  const { language, words, term } = file.sayer;
  return {
    id: object.id,
    title: titleOf(object, file.settings.languages),
    subtitle,
    isLong: true,
    language: language.tag,
    draft:
      file.catalogue.audience === 'public'
        ? null
        : words('For {0} readers; not for release', term(file.catalogue.audience)),
    foot: footOf(file, object.id),
    blocks,
  };
}

/** What the file says of itself, and the care that the object asks for. */
function opening({ file, objects }: Matter): readonly Block[] {
  const { words } = file.sayer;
  const care = objects.flatMap((object) => (object.keys.care ?? []).filter((one) => one !== 'none known'));
  const origin = objects.flatMap((object) => (object.keys.of ? [nameOf(file, object.keys.of)] : []));
  const description = objects.flatMap((object) =>
    object.keys.description === undefined ? [] : [inLanguage(object.keys.description, file.settings.languages)],
  );
  return [
    ...description.map((words) =>
      paragraph(
        words,
        objects.map((one) => one.id),
      ),
    ),
    ...(origin.length === 0
      ? []
      : [
          paragraph(
            words('Held to be from: {0}.', origin.join(file.sayer.semicolon)),
            objects.map((one) => one.id),
          ),
        ]),
    ...(care.length === 0
      ? []
      : [
          paragraph(
            words('Care: {0}.', [...new Set(care)].join(', ')),
            objects.map((one) => one.id),
          ),
        ]),
  ];
}

function plates(sayer: Sayer, { plates: list }: ReportPictures): readonly Block[] {
  const { words } = sayer;
  if (list.length === 0) return [];
  return [{ kind: 'heading', level: 2, words: words('Plates') }, ...list.flatMap((one) => figureOf(one) ?? [])];
}

function figureOf(picture: ReportPicture | null): Figure | null {
  if (!picture) return null;
  const { key, alt, widthMm, caption, rests } = picture;
  return { kind: 'figure', picture: key, alt, widthMm, caption: passage(caption, rests) };
}
