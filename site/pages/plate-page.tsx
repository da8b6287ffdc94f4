import type { JSX } from 'preact';
import { titleOf } from '../../src/model/catalogue.ts';
import { entryPath, panelPath } from '../../src/publish/page-paths.ts';
import type { PanelFace } from '../../src/publish/panel-faces.ts';
import type { PageContext } from '../context.ts';
import { PanelPlan, planFrame } from '../drawings/panel-plan.tsx';
import { say, words } from '../say.ts';
import { Layout } from './layout.tsx';
import { PlanKey } from './panel-plan-part.tsx';
import { EntryLink } from './parts.tsx';

/** Scales of plates, largest first. */
const SCALES = [1, 2, 2.5, 5, 10, 15, 20, 25, 50, 100] as const;

/** Room for the drawing on a sheet of A4 with its caption, in mm. */
const SHEET = { width: 174, height: 205 } as const;

/** The largest usual scale at which a plan of this extent (mm) fits on A4; never larger than life. */
export function plateScale(width: number, height: number): number {
  return SCALES.find((scale) => width / scale <= SHEET.width && height / scale <= SHEET.height) ?? 200;
}

/** A plan as a plate for a sheet of A4: lines on bare paper at a stated scale, with its key. */
export function PlatePage({ page, plan }: { readonly page: PageContext; readonly plan: PanelFace }): JSX.Element {
  const object = page.file.catalogue.get(plan.object);
  const frame = planFrame(plan);
  const scale = plateScale(frame.width, frame.height);
  const mm = (value: number): string => `${Math.round((value / scale) * 100) / 100}mm`;
  const what = plan.face === 'back' ? words('Panel {0}, back', plan.panel) : words('Panel {0}', plan.panel);
  return (
    <Layout
      page={page}
      title={words('Plate: {0}', what)}
      standing={
        <>
          {say(
            '{0} of {1}, as a plate to print.',
            <a href={page.href(panelPath(plan.object, plan.panel))}>{say('Panel {0}', plan.panel)}</a>,
            <EntryLink page={page} id={plan.object} />,
          )}
        </>
      }
      usesGrades={false}
    >
      <h1 class="plate-title">{what}</h1>
      <figure class="plate">
        <PanelPlan
          page={page}
          plan={plan}
          link={(trace) => page.href(entryPath(trace))}
          size={{ width: mm(frame.width), height: mm(frame.height) }}
        />
        <figcaption>
          {say(
            '{0}, panel {1}{2}. Scale 1 : {3} on A4, printed without fitting to the page; the bar shows whether the printer kept it.',
            object ? titleOf(object, page.file.settings.languages) : '',
            plan.panel,
            plan.face === 'back' ? words(', seen from behind') : '',
            scale,
          )}
        </figcaption>
      </figure>
      <PlanKey page={page} plan={plan} />
    </Layout>
  );
}
