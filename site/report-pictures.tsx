import type { JSX } from 'preact';
import type { CaseFile } from '../src/findings/case-file.ts';
import { fourChains } from '../src/findings/four-chains.ts';
import type { Sayer } from '../src/language/sayer.ts';
import { titleOf } from '../src/model/catalogue.ts';
import type { Entry } from '../src/model/entry.ts';
import { layOutRuling } from '../src/publish/chronology-drawing.ts';
import { drawnEvents, drawnReferences } from '../src/publish/chronology-rows.ts';
import { facesOf, type PanelFace } from '../src/publish/panel-faces.ts';
import { matterOf } from '../src/reports/matter.ts';
import { eventsAsked } from '../src/reports/parts-known.ts';
import type { ReportPicture, ReportPictures } from '../src/reports/provenance-file.ts';
import type { Picture } from '../src/typeset/print-data.ts';
import type { PageContext } from './context.ts';
import { ChainsFigure } from './drawings/chains-figure.tsx';
import { ChronologyFigure } from './drawings/chronology-figure.tsx';
import { PanelPlan, planFrame } from './drawings/panel-plan.tsx';
import { renderAsXml, standingAlone } from './drawings/standing-alone.ts';

/** Style sheets of the drawings. */
export interface DrawingStyles {
  readonly drawings: string;
  readonly plan: string;
}

/** Widest and highest that a plate may be on a page, in mm. */
const PLATE = { width: 150, height: 195 };

/** Scales at which plates are printed. */
const SCALES = [1, 2, 4, 5, 10, 20, 25, 50, 100, 200];

/** The drawings of an object for a printed report: words of each, and the SVG of each. */
export function reportPictures(
  file: CaseFile,
  object: Entry<'object'>,
  styles: DrawingStyles,
): { readonly list: ReportPictures; readonly pictures: readonly Picture[] } {
  const { words } = file.sayer;
  const pictures: Picture[] = [];
  // Drawn only where somebody looks, and not kept: a site of many objects has many of them.
  const keep = (key: string, drawing: () => JSX.Element, style: () => string): void => {
    pictures.push({
      key,
      get svg() {
        return alone(renderAsXml(drawing(), file.sayer), style());
      },
    });
  };
  const events = drawnEvents(file, eventsAsked(matterOf(file, [object.id])));
  const steps = fourChains(file, object);
  const name = titleOf(object, file.settings.languages);
  if (events.length > 0)
    keep(
      'chronology',
      () => (
        <ChronologyFigure
          events={events}
          ruling={layOutRuling(events, drawnReferences(file))}
          printedGrade={file.settings.printedGrade}
          hrefOf={() => '#'}
        />
      ),
      () => styles.drawings,
    );
  if (steps.length > 0)
    keep(
      'chains',
      () => <ChainsFigure file={file} steps={steps} hrefOf={() => '#'} />,
      () => styles.drawings,
    );
  const faces = file.physical.panels.filter(({ geometry }) => geometry.object.id === object.id).flatMap(facesOf);
  const plates = faces.map((plan): ReportPicture => {
    const frame = planFrame(plan);
    const scale = SCALES.find((n) => frame.width / n <= PLATE.width && frame.height / n <= PLATE.height) ?? 400;
    const key = `plate-${plan.panel}-${plan.face}`;
    keep(
      key,
      () => <PanelPlan page={bareContext(file)} plan={plan} link={null} />,
      () => strokesAt(styles.plan, scale),
    );
    return plateOf(file.sayer, plan, key, scale, frame.width);
  });
  return {
    pictures,
    list: {
      chronology:
        events.length === 0
          ? null
          : {
              key: 'chronology',
              caption: words(
                'Chronology: established, an open bar; probable, a tint; possible, a dashed outline; conjectural, dots; arrows, no limit known. Reference dates mark the order of dates only.',
              ),
              alt: words('Chronology of {0}: one row an event; the table says the same', name),
              widthMm: null,
              rests: [],
            },
      chains:
        steps.length === 0
          ? null
          : {
              key: 'chains',
              caption: words(
                'Physical state, place, custody, and title as asserted. Between two ticks an act took place; solid: throughout; dashed: possibly; a point: recorded then; a thin line: a title as somebody asserts it.',
              ),
              alt: words('State, place, custody and title of {0} in time; the tables say the same', name),
              widthMm: null,
              rests: [],
            },
      plates,
    },
  };
}

/** Strokes of a plan in the units of the panel: a line of 1 px on the screen is a fifth of a millimetre on paper. */
function strokesAt(style: string, scale: number): string {
  return style.replace(/(stroke-(?:width|dasharray): )([^;]+);/g, (_, key: string, values: string) => {
    const scaled = values.replace(/[\d.]+/g, (value) => String(Math.round(Number(value) * scale * 20) / 100));
    return `${key}${scaled};`;
  });
}

function plateOf({ words, term }: Sayer, plan: PanelFace, key: string, scale: number, width: number): ReportPicture {
  return {
    key,
    caption: words('Panel {0}, {1}, at 1 : {2}.', plan.panel, term(plan.face), scale),
    alt: words('Plan of panel {0}, {1}, with {2} traces', plan.panel, term(plan.face), plan.shapes.length),
    widthMm: Math.round((width / scale) * 10) / 10,
    rests: [...new Set(plan.shapes.map(({ trace }) => trace.id))],
  };
}

/** A drawing with its own name space and style, as a file of its own. */
function alone(svg: string, style: string): string {
  const styled = svg.replace(/>/, `><style>${standingAlone(style)}</style>`);
  return styled.includes('xmlns=') ? styled : styled.replace('<svg', '<svg xmlns="http://www.w3.org/2000/svg"');
}

/** A page that leads nowhere, for drawings outside the site. */
function bareContext(file: CaseFile): PageContext {
  const none = new Map();
  return {
    file,
    fileFor: () => file,
    sent: none,
    built: '',
    version: '',
    problems: [],
    errors: 0,
    excerpts: null,
    leftOut: [],
    resting: none,
    pictures: none,
    scales: none,
    plans: none,
    layers: none,
    tiles: none,
    land: null,
    planStyle: '',
    drawingStyle: '',
    path: '',
    href: () => '#',
  };
}
