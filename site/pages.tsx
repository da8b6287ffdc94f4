import type { JSX } from 'preact';
import { renderToString } from 'preact-render-to-string';
import { iiifManifest } from '../src/exchange/iiif-manifest.ts';
import { datesReport } from '../src/findings/dates-report.ts';
import type { Entry } from '../src/model/entry.ts';
import { ID_SHAPE } from '../src/model/fields.ts';
import {
  answerPath,
  closePath,
  entryPath,
  manifestPath,
  measuredPath,
  panelPath,
  planFilePath,
  platePath,
  REGISTERS,
  reasonPath,
  relativeHref,
  reportPath,
  reportPicturePath,
  tracingPath,
} from '../src/publish/page-paths.ts';
import { facesOf, type PanelFace } from '../src/publish/panel-faces.ts';
import { composeAppendix, composeFile } from '../src/reports/provenance-file.ts';
import type { PageContext, SiteData } from './context.ts';
import { PanelPlan, planFrame } from './drawings/panel-plan.tsx';
import { renderAsXml, standingAlone } from './drawings/standing-alone.ts';
import { markLanguages } from './mark-languages.ts';
import { AnswerPage } from './pages/answer-page.tsx';
import { CheckFirstPage } from './pages/check-first-page.tsx';
import { ChronologyPage } from './pages/chronology-page.tsx';
import { ClosePage } from './pages/close-page.tsx';
import { ContradictionsPage } from './pages/contradictions-page.tsx';
import { CustodyPage } from './pages/custody-page.tsx';
import { DoubtsPage } from './pages/doubts-page.tsx';
import { EntryPage } from './pages/entry-page.tsx';
import { FaultyEntryPage } from './pages/faulty-entry-page.tsx';
import { MarksPage } from './pages/marks-page.tsx';
import { MeasuredPage } from './pages/measured-page.tsx';
import { MethodPage } from './pages/method-page.tsx';
import { OpeningPage } from './pages/opening-page.tsx';
import { PanelPage } from './pages/panel-page.tsx';
import { PlacesPage } from './pages/places-page.tsx';
import { PlatePage } from './pages/plate-page.tsx';
import { ReasonPage } from './pages/reason-page.tsx';
import { ReferencesPage } from './pages/references-page.tsx';
import { RegisterPage, RegistersPage } from './pages/register-page.tsx';
import { ReportPage } from './pages/report-page.tsx';
import { ResearchPage } from './pages/research-page.tsx';
import { SearchPage } from './pages/search-page.tsx';
import { TracingPage } from './pages/tracing-page.tsx';
import { TrialPage } from './pages/trial-page.tsx';
import { reportPictures } from './report-pictures.tsx';
import { Speech } from './say.ts';

/** One file of the site: its address and how to make its text. */
export interface SitePage {
  readonly path: string;
  render(): string;
}

/** All pages of the site, in a fixed order and in the language of the file. */
export function sitePages(data: SiteData): readonly SitePage[] {
  return [...plainPages(data), ...reportedObjects(data).flatMap((object) => reportPagesOf(data, object))];
}

/** All pages but the reports: which drawings a report has is known only when what bears on its object was gathered. */
export function plainPages(data: SiteData): readonly SitePage[] {
  return pagesOf(data);
}

/** The pages of the reports among which an address would be: those of its object, with their drawings. */
export function reportPagesAt(data: SiteData, address: string): readonly SitePage[] {
  return reportedObjects(data)
    .filter((object) => address.startsWith(reportPicturePath(object.id, '').slice(0, -'.svg'.length)))
    .flatMap((object) => reportPagesOf(data, object));
}

type MakePage = (path: string, view: (context: PageContext) => JSX.Element) => SitePage;

const pageFrom =
  (data: SiteData): MakePage =>
  (path, view) => ({
    path,
    render: () => {
      const context = { ...data, path, href: (to: string) => relativeHref(path, to) };
      const html = renderToString(<Speech.Provider value={data.file.sayer}>{view(context)}</Speech.Provider>);
      // The live page is drawn anew in the browser, from the same parts.
      return `<!doctype html>\n${path === 'trial.html' ? html : markLanguages(html)}\n`;
    },
  });

function pagesOf(data: SiteData): readonly SitePage[] {
  const { file } = data;
  const page = pageFrom(data);
  const timed = new Set(file.statements.moments.all.map((moment) => moment.entry));
  return [
    page('index.html', (context) => <OpeningPage page={context} />),
    page('chronology.html', (context) => <ChronologyPage page={context} />),
    page('contradictions.html', (context) => <ContradictionsPage page={context} />),
    page('trial.html', (context) => <TrialPage page={context} />),
    page('references.html', (context) => <ReferencesPage page={context} />),
    page('custody.html', (context) => <CustodyPage page={context} />),
    page('search.html', (context) => <SearchPage page={context} />),
    page('places.html', (context) => <PlacesPage page={context} />),
    page('research.html', (context) => <ResearchPage page={context} />),
    page('method.html', (context) => <MethodPage page={context} />),
    page('marks.html', (context) => <MarksPage page={context} />),
    page('registers.html', (context) => <RegistersPage page={context} />),
    ...(file.catalogue.audience === 'public'
      ? []
      : [
          page('doubts.html', (context) => <DoubtsPage page={context} />),
          page('check-first.html', (context) => <CheckFirstPage page={context} />),
          ...file.catalogue
            .ofType('figure')
            .filter((figure) => data.pictures.has(figure.id))
            .map((figure) => page(tracingPath(figure.id), (context) => <TracingPage page={context} figure={figure} />)),
        ]),
    ...REGISTERS.map((one) =>
      page(`register/${one.name}.html`, (context) => <RegisterPage page={context} name={one.name} />),
    ),
    ...(data.excerpts === null ? [] : data.leftOut)
      .filter((id) => ID_SHAPE.test(id) && !file.catalogue.get(id))
      .map((id) => page(entryPath(id), (context) => <FaultyEntryPage page={context} id={id} />)),
    ...file.catalogue.entries.map((entry) =>
      page(entryPath(entry.id), (context) => <EntryPage page={context} entry={entry} />),
    ),
    ...file.physical.panels.map((panel) =>
      page(panelPath(panel.geometry.object.id, panel.geometry.panel), (context) => (
        <PanelPage page={context} panel={panel} />
      )),
    ),
    ...file.physical.panels.map((panel) =>
      page(measuredPath(panel.geometry.object.id, panel.geometry.panel), (context) => (
        <MeasuredPage page={context} panel={panel} />
      )),
    ),
    ...file.physical.panels
      .flatMap(facesOf)
      .flatMap((plan) => [
        page(platePath(plan.object, plan.panel, plan.face), (context) => <PlatePage page={context} plan={plan} />),
        planFile(data, plan),
      ]),
    ...file.catalogue.ofType('figure').flatMap((figure) => {
      const tiles = data.tiles.get(figure.id);
      return tiles
        ? [page(closePath(figure.id), (context) => <ClosePage page={context} figure={figure} tiles={tiles} />)]
        : [];
    }),
    ...file.catalogue.entries
      .filter((entry) => timed.has(entry.id))
      .map((entry) => page(reasonPath(entry.id), (context) => <ReasonPage page={context} entry={entry} />)),
    ...file.catalogue
      .ofType('inquiry')
      .map((inquiry) => page(answerPath(inquiry.id), (context) => <AnswerPage page={context} inquiry={inquiry} />)),
    ...manifests(data),
    { path: 'data/dates.json', render: () => `${JSON.stringify(datesReport(file), null, 1)}\n` },
  ];
}

/** Objects that have reports: those that are not part of another. */
function reportedObjects({ file }: SiteData): readonly Entry<'object'>[] {
  return file.catalogue.ofType('object').filter((one) => one.keys['part-of'] === undefined);
}

/** The provenance file and the appendix of an object, with their drawings. */
function reportPagesOf(data: SiteData, object: Entry<'object'>): readonly SitePage[] {
  const { file, built, version } = data;
  const page = pageFrom(data);
  const made = reportPictures(file, object, { drawings: data.drawingStyle, plan: data.planStyle });
  const kinds = [
    ['file', composeFile],
    ['appendix', composeAppendix],
  ] as const;
  return [
    ...kinds.map(([kind, compose]) =>
      page(reportPath(object.id, kind), (context) => (
        <ReportPage page={context} object={object} document={compose(file, object, made.list, { built, version })} />
      )),
    ),
    ...made.pictures.map((one): SitePage => ({ path: reportPicturePath(object.id, one.key), render: () => one.svg })),
  ];
}

/** Manifests of the objects; only a site that knows its own address has them. */
function manifests({ file, plans }: SiteData): readonly SitePage[] {
  const base = file.catalogue.workspace?.keys['base-url']?.replace(/\/$/, '');
  if (base === undefined) return [];
  return file.catalogue.ofType('object').flatMap((object): readonly SitePage[] => {
    const manifest = iiifManifest(file, object, base, plans);
    return manifest === null
      ? []
      : [{ path: manifestPath(object.id), render: () => `${JSON.stringify(manifest, null, 1)}\n` }];
  });
}

/** A plan as an SVG file in true size, lines only, the traces as groups that carry their ids. */
function planFile(data: SiteData, plan: PanelFace): SitePage {
  const path = planFilePath(plan.object, plan.panel, plan.face);
  const context: PageContext = { ...data, path, href: (to) => relativeHref(path, to) };
  const { width, height } = planFrame(plan);
  const style = standingAlone(data.planStyle);
  const size = { width: `${width}mm`, height: `${height}mm` };
  return {
    path,
    render: () =>
      `<?xml version="1.0" encoding="UTF-8"?>\n${renderAsXml(<PanelPlan page={context} plan={plan} link={null} size={size} style={style} />, data.file.sayer)}\n`,
  };
}
