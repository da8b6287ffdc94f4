import type { JSX } from 'preact';
import type { Path, Point } from '../../src/geometry/point.ts';
import { titleOf } from '../../src/model/catalogue.ts';
import type { Entry } from '../../src/model/entry.ts';
import type { CutMotif } from '../../src/physical/panel-motifs.ts';
import type { PanelFindings } from '../../src/physical/panels.ts';
import { entryPath } from '../../src/publish/page-paths.ts';
import { MARK_WORDS, type NumberedShape, numberShapes, placeNumbers } from '../../src/publish/plan-marks.ts';
import type { PageContext } from '../context.ts';

interface Props {
  readonly page: PageContext;
  readonly panel: PanelFindings;
}

/** Photographs that can be shown under the lines, at most eight; a rule of the style sheet belongs to each place. */
export function shownUnder(page: PageContext, { geometry }: PanelFindings): readonly Entry<'figure'>[] {
  return geometry.figures
    .map(({ figure }) => figure)
    .filter((figure) => page.plans.has(figure.id))
    .slice(0, 8);
}

/** The plan of a panel in millimetres: outline, marks by kind, the registered photographs underneath, a scale in centimetres. */
export function PanelPlan({ page, panel }: Props): JSX.Element {
  const { geometry, motifs } = panel;
  const [xs, ys] = [geometry.outline.map((p) => p[0]), geometry.outline.map((p) => p[1])];
  const [width, height] = [Math.max(...xs), Math.max(...ys)];
  const margin = Math.max(width, height) * 0.16;
  const flip = ([x, y]: Point): Point => [x, height - y];
  const size = Math.max(width, height) / 46;
  return (
    <svg
      class="plan"
      font-size={size}
      viewBox={`${-margin} ${-margin} ${width + 2 * margin} ${height + 2 * margin + size * 2}`}
      role="group"
      aria-label={`Plan of panel ${geometry.panel}; the key below names every mark`}
    >
      <Patterns size={size} />
      {shownUnder(page, panel).map((figure, i) => {
        const source = page.plans.get(figure.id);
        return source ? (
          <image
            class={`under under-${i + 1}`}
            href={page.href(source)}
            x={0}
            y={0}
            width={width}
            height={height}
            preserveAspectRatio="none"
          />
        ) : null;
      })}
      {motifs.map((motif) => (
        <MotifCircle motif={motif} flip={flip} />
      ))}
      {numberShapes(panel).map((one) => (
        <ShapeMark page={page} one={one} flip={flip} size={size} inside={[width, height]} />
      ))}
      <path class="outline" d={`${pathOf(geometry.outline.map(flip))}Z`} />
      {placeNumbers(numberShapes(panel), flip, size).map(({ one, at }) => (
        <g class={`mark mark-${one.mark}`} aria-hidden="true">
          <PlanNumber at={at} number={one.number} />
        </g>
      ))}
      <text class="plan-label" x={width / 2} y={-margin + size * 1.6} text-anchor="middle">
        top
      </text>
      <ScaleBar y={height + margin * 0.55} size={size} />
    </svg>
  );
}

/** Hatchings that stay apart in grey: fills slanted, additions crossed, retouching dotted. */
function Patterns({ size }: { readonly size: number }): JSX.Element {
  const step = size * 0.55;
  return (
    <defs>
      <pattern id="mark-fill" width={step} height={step} patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
        <line x1={0} y1={0} x2={0} y2={step} class="hatch" />
      </pattern>
      <pattern
        id="mark-addition"
        width={step}
        height={step}
        patternUnits="userSpaceOnUse"
        patternTransform="rotate(45)"
      >
        <path d={`M0 0V${step} M0 0H${step}`} class="hatch" />
      </pattern>
      <pattern id="mark-retouching" width={step} height={step} patternUnits="userSpaceOnUse">
        <circle cx={step / 2} cy={step / 2} r={step / 6} class="stipple" />
      </pattern>
    </defs>
  );
}

function MotifCircle({ motif, flip }: { readonly motif: CutMotif; readonly flip: (p: Point) => Point }): JSX.Element {
  const { circle, radius } = motif.fit;
  const [x, y] = flip(circle.centre);
  return (
    <g class="mark mark-motif" aria-hidden="true">
      <circle class="motif-circle" cx={x} cy={y} r={circle.radius} />
      <circle class="motif-end" cx={x} cy={y} r={radius.least} />
      {radius.most === null ? null : <circle class="motif-end" cx={x} cy={y} r={radius.most} />}
    </g>
  );
}

function ShapeMark({
  page,
  one,
  flip,
  size,
  inside,
}: {
  readonly page: PageContext;
  readonly one: NumberedShape;
  readonly flip: (p: Point) => Point;
  readonly size: number;
  readonly inside: Point;
}): JSX.Element {
  const { shape, mark, number } = one;
  const path = shape.path.map(flip);
  const title = titleOf(shape.trace, page.file.settings.languages);
  const rings = [path, ...shape.holes.map((hole) => hole.map(flip))];
  const d = shape.kind === 'area' ? rings.map((ring) => `${pathOf(ring)}Z`).join(' ') : pathOf(path);
  return (
    <a class={`mark mark-${mark}`} href={page.href(entryPath(shape.trace.id))}>
      <title>
        {number}. {title}: {MARK_WORDS[mark]}
      </title>
      {shape.kind === 'point' ? (
        <circle class="shape" cx={path[0]?.[0]} cy={path[0]?.[1]} r={size * 0.45} />
      ) : (
        <>
          <path class="halo" d={d} />
          <path class="shape" d={d} fill-rule="evenodd" />
        </>
      )}
      {mark === 'section-joint' ? <path class="joint-gap" d={d} /> : null}
      {mark === 'cut-edge' ? <path class="ticks" d={ticksOf(path, inside, size)} /> : null}
      <path class="hit" d={d} />
    </a>
  );
}

function PlanNumber({ at: [x, y], number }: { readonly at: Point; readonly number: number }): JSX.Element {
  return (
    <text class="plan-number" x={x} y={y} text-anchor="middle">
      {number}
    </text>
  );
}

/** Short ticks on the side that is lost: away from the middle of the panel. */
function ticksOf(path: Path, [width, height]: Point, size: number): string {
  return path
    .slice(1)
    .map((point, i) => {
      const from = path[i] as Point;
      const [mx, my] = [(from[0] + point[0]) / 2, (from[1] + point[1]) / 2];
      const length = Math.hypot(point[0] - from[0], point[1] - from[1]) || 1;
      let [nx, ny] = [-(point[1] - from[1]) / length, (point[0] - from[0]) / length];
      if (nx * (mx - width / 2) + ny * (my - height / 2) < 0) [nx, ny] = [-nx, -ny];
      return `M${round(mx)} ${round(my)}L${round(mx + nx * size * 0.7)} ${round(my + ny * size * 0.7)}`;
    })
    .join('');
}

function ScaleBar({ y, size }: { readonly y: number; readonly size: number }): JSX.Element {
  const step = 100;
  return (
    <g class="scale">
      {[0, 1, 2, 3, 4].map((i) => (
        <rect class={i % 2 === 0 ? 'scale-dark' : 'scale-light'} x={i * step} y={y} width={step} height={size * 0.35} />
      ))}
      {[0, 10, 30, 50].map((cm) => (
        <text class="plan-label" x={cm * 10} y={y + size * 1.6} text-anchor="middle">
          {cm === 50 ? '50 cm' : cm}
        </text>
      ))}
    </g>
  );
}

function pathOf(path: Path): string {
  return path.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${round(x)} ${round(y)}`).join('');
}

function round(value: number): number {
  return Math.round(value * 100) / 100;
}
