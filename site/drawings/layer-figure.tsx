import type { JSX } from 'preact';
import type { LayerDrawing } from '../../src/publish/layer-drawing.ts';
import { said, words } from '../say.ts';

/** The layer diagram: boxes without fill, the earliest at the foot, each unit a link. */
export function LayerFigure({
  drawing,
  panel,
  link,
}: {
  readonly drawing: LayerDrawing;
  readonly panel: string;
  readonly link: (unit: string) => string;
}): JSX.Element {
  return (
    <svg
      class="layers"
      viewBox={`-2 -2 ${drawing.width + 4} ${drawing.height + 4}`}
      width={drawing.width + 4}
      role="group"
      aria-label={words('Layers of panel {0}, the earliest at the foot; the list below says the same', panel)}
    >
      {drawing.lines.map(({ points, words: relation }) => (
        <path
          class="layer-line"
          d={points.map(([x, y], i) => `${i === 0 ? 'M' : 'L'}${round(x)} ${round(y)}`).join('')}
        >
          <title>{said(relation)}</title>
        </path>
      ))}
      {drawing.boxes.map((box) => (
        <g>
          <rect
            class={box.onLoop ? 'layer-box on-loop' : 'layer-box'}
            x={round(box.x)}
            y={round(box.y)}
            width={box.width}
            height={box.height}
          />
          {box.units.map((unit, i) => (
            <a href={link(unit)}>
              <text x={round(box.x + box.width / 2)} y={round(box.y + 17 + i * 34)} text-anchor="middle">
                {box.titles[i]}
              </text>
              <text
                class="layer-id"
                x={round(box.x + box.width / 2)}
                y={round(box.y + 33 + i * 34)}
                text-anchor="middle"
              >
                {unit}
              </text>
            </a>
          ))}
        </g>
      ))}
    </svg>
  );
}

function round(value: number): number {
  return Math.round(value * 10) / 10;
}
