import type { ComponentChildren, JSX } from 'preact';
import type { Point } from '../../src/geometry/point.ts';
import { titleOf } from '../../src/model/catalogue.ts';
import type { Entry } from '../../src/model/entry.ts';
import type { CutMotif } from '../../src/physical/panel-motifs.ts';
import { extentOf, type PanelFace } from '../../src/publish/panel-faces.ts';
import { MARK_WORDS, type NumberedShape, numberShapes, placeNumbers } from '../../src/publish/plan-marks.ts';
import type { PageContext } from '../context.ts';
import { term, words } from '../say.ts';
import { PlanPatterns, pathOf, ShapeLines } from './plan-shape.tsx';

interface Props {
  readonly page: PageContext;
  readonly plan: PanelFace;
  /** Photographs laid underneath; the reader picks one. */
  readonly under?: readonly Entry<'figure'>[];
  /** Address of a trace's page; null for a file that stands alone. */
  readonly link: ((trace: string) => string) | null;
  /** Written size, as `91.5mm`; else as wide as its place. */
  readonly size?: { readonly width: string; readonly height: string };
  /** Text of a style sheet, for a file that stands alone. */
  readonly style?: string;
  /** False where another plan of the panel on the same page has brought the hatchings. */
  readonly patterns?: boolean;
}

/** Photographs that can be shown under the lines, at most eight; a rule of the style sheet belongs to each place. */
export function shownUnder(page: PageContext, { figures }: PanelFace): readonly Entry<'figure'>[] {
  return figures
    .map(({ figure }) => figure)
    .filter((figure) => page.plans.has(figure.id))
    .slice(0, 8);
}

/** The margins of a plan about the panel, in mm, and the size of its letters. */
export function planFrame(plan: PanelFace): {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly letters: number;
} {
  const { width, height } = extentOf(plan.outline);
  const letters = Math.max(width, height) / 46;
  const margin = Math.max(width, height) * (plan.motifs.length > 0 ? 0.16 : 0.09);
  return {
    x: -margin,
    y: -margin,
    width: width + 2 * margin,
    height: height + 2 * margin + letters * 2,
    letters,
  };
}

/** The plan of one face of a panel in millimetres: outline, marks by kind, photographs underneath, a scale in centimetres. */
export function PanelPlan({ page, plan, under = [], link, size, style, patterns = true }: Props): JSX.Element {
  const { width, height } = extentOf(plan.outline);
  const frame = planFrame(plan);
  const flip = ([x, y]: Point): Point => [x, height - y];
  const shapes = numberShapes(plan.shapes);
  const margin = -frame.x;
  const name = words(
    'Plan of panel {0}, {1}{2}',
    plan.panel,
    term(plan.face),
    link ? words('; the key below names every mark') : '',
  );
  return (
    <svg
      xmlns="http://www.w3.org/2000/svg"
      class="plan"
      font-size={frame.letters}
      viewBox={[frame.x, frame.y, frame.width, frame.height].map((value) => Math.round(value * 10) / 10).join(' ')}
      role="group"
      aria-label={name}
      {...size}
    >
      {style === undefined ? null : <style>{style}</style>}
      {link ? null : <title>{name}</title>}
      {patterns ? <PlanPatterns size={frame.letters} /> : null}
      {under.map((figure, i) => (
        <image
          class={`under under-${i + 1}`}
          href={page.href(page.plans.get(figure.id) ?? '')}
          x={0}
          y={0}
          width={width}
          height={height}
          preserveAspectRatio="none"
        />
      ))}
      {plan.motifs.map((motif) => (
        <MotifCircle motif={motif} flip={flip} />
      ))}
      {shapes.map((one) => (
        <Linked
          one={one}
          id={idOf(shapes, one)}
          link={link}
          words={`${one.number}. ${words('{0}: {1}', titleOf(one.shape.trace, page.file.settings.languages), term(MARK_WORDS[one.mark]))}`}
        >
          <ShapeLines one={one} flip={flip} size={frame.letters} inside={[width, height]} />
        </Linked>
      ))}
      <path class="outline" d={`${pathOf(plan.outline.map(flip))}Z`} />
      {placeNumbers(shapes, flip, frame.letters).map(({ one, at: [x, y] }) => (
        <g class={`mark mark-${one.mark}`} aria-hidden="true">
          <text class="plan-number" x={x} y={y} text-anchor="middle">
            {one.number}
          </text>
        </g>
      ))}
      <text class="plan-label" x={width / 2} y={-margin + frame.letters * 1.6} text-anchor="middle">
        {plan.face === 'back' ? words('top, seen from behind') : words('top')}
      </text>
      <ScaleBar y={height + margin * 0.55} size={frame.letters} longest={width} />
    </svg>
  );
}

/** The id of the trace; further parts of it carry a number after an underscore, as drawing programs write and this program reads. */
function idOf(shapes: readonly NumberedShape[], one: NumberedShape): string {
  const part = shapes.filter((other) => other.number === one.number).indexOf(one);
  return part === 0 ? one.shape.trace.id : `${one.shape.trace.id}_${part + 1}`;
}

function Linked({
  one,
  id,
  link,
  words,
  children,
}: {
  readonly one: NumberedShape;
  readonly id: string;
  readonly link: Props['link'];
  readonly words: string;
  readonly children: ComponentChildren;
}): JSX.Element {
  const inner = (
    <>
      <title>{words}</title>
      {children}
    </>
  );
  return link ? (
    <a class={`mark mark-${one.mark}`} href={link(one.shape.trace.id)}>
      {inner}
    </a>
  ) : (
    <g class={`mark mark-${one.mark}`} id={id}>
      {inner}
    </g>
  );
}

function MotifCircle({ motif, flip }: { readonly motif: CutMotif; readonly flip: (p: Point) => Point }): JSX.Element {
  const { circle, radius } = motif.fit;
  const [x, y] = flip(circle.centre);
  return (
    <g class="mark mark-motif" aria-hidden="true">
      <circle class="motif-circle" cx={x} cy={y} r={circle.radius} />
      {radius === null ? null : <circle class="motif-end" cx={x} cy={y} r={radius.least} />}
      {radius === null || radius.most === null ? null : <circle class="motif-end" cx={x} cy={y} r={radius.most} />}
    </g>
  );
}

/** Decimetres, in turn dark and light: five, or fewer on a small panel. */
function ScaleBar({
  y,
  size,
  longest,
}: {
  readonly y: number;
  readonly size: number;
  readonly longest: number;
}): JSX.Element {
  const step = longest >= 500 ? 100 : longest >= 200 ? 20 : 10;
  return (
    <g class="scale">
      {[0, 1, 2, 3, 4].map((i) => (
        <rect class={i % 2 === 0 ? 'scale-dark' : 'scale-light'} x={i * step} y={y} width={step} height={size * 0.35} />
      ))}
      {[0, 1, 3, 5].map((steps) => (
        <text class="plan-label" x={steps * step} y={y + size * 1.6} text-anchor="middle">
          {steps === 5 ? words('{0} cm', step / 2) : (steps * step) / 10}
        </text>
      ))}
    </g>
  );
}
