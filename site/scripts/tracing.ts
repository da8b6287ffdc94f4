import { distance, type Point, pathLength } from '../../src/geometry/point.ts';
import { applyMap } from '../../src/geometry/registration.ts';
import { findRingFault, signedArea } from '../../src/geometry/ring.ts';
import { formatShape, type ShapeKind } from '../../src/geometry/shape-text.ts';
import { told } from './told.ts';
import { draftOf, fieldsIn, KeptDraft, restore, type TraceFields } from './trace-draft.ts';

/** Makes the tracing page live: points by mouse or by keyboard on a photograph, the shape as text to copy. Only the preview on this computer offers to save it. */
interface TracingData {
  readonly figure: string;
  /** Pixels of the picture shown a pixel of the file. */
  readonly scale: number;
  /** Row by row, pixels of the file to millimetres; null where the figure has no control points. */
  readonly matrix: readonly number[] | null;
}

const SVG = 'http://www.w3.org/2000/svg';
const place = document.getElementById('tracing');
const data = document.getElementById('tracing-data');
const picture = place?.querySelector('img');
if (place && data && picture) {
  const start = (): void => begin(place, JSON.parse(data.textContent ?? '') as TracingData);
  // Only a picture that has arrived has a size.
  if (picture.complete) start();
  else picture.addEventListener('load', start);
}

function begin(root: HTMLElement, { figure, scale, matrix }: TracingData): void {
  const image = root.querySelector('img') as HTMLImageElement;
  const board = root.querySelector('svg') as SVGSVGElement;
  const output = root.querySelector('textarea') as HTMLTextAreaElement;
  const status = root.querySelector('[role=status]') as HTMLElement;
  const fields = fieldsIn(root);
  const kept = new KeptDraft(figure);
  const before = kept.read();
  if (before) restore(fields, before);
  const points: Point[] = [...(before?.points ?? [])];
  // Steps that can be taken back, the oldest first.
  const past: (readonly Point[])[] = [];
  const kindOf = (): ShapeKind => draftOf(fields, points).kind;
  const { error } = fields;
  let cursor: Point = [image.naturalWidth / 2, image.naturalHeight / 2];
  root.classList.add('live');
  board.setAttribute('viewBox', `0 0 ${image.naturalWidth} ${image.naturalHeight}`);

  const inFile = ([x, y]: Point): Point => [x / scale, y / scale];
  const measured = (): string => {
    if (!matrix || points.length === 0) return '';
    const mm = points.map((point) => applyMap(matrix, inFile(point)));
    const [x, y] = mm.at(-1) as Point;
    const here = told('The last at ({0}, {1}) mm.', x.toFixed(1), y.toFixed(1));
    if (kindOf() === 'area' && mm.length >= 3) {
      const ring = findRingFault(mm);
      if (ring?.kind === 'crossing') return `${here} ${told('Its sides cross; that cannot be used.')}`;
      return `${here} ${told('Area {0} cm².', (Math.abs(signedArea(mm)) / 100).toFixed(1))}`;
    }
    return mm.length > 1 ? `${here} ${told('Length {0} mm.', pathLength(mm).toFixed(1))}` : here;
  };
  const draw = (): void => {
    const step = image.naturalWidth / Math.max(1, board.clientWidth);
    const text = points.map(([x, y]) => `${x},${y}`).join(' ');
    const line = document.createElementNS(SVG, kindOf() === 'area' ? 'polygon' : 'polyline');
    line.setAttribute('points', text);
    const marks = points.map(([x, y]) => mark('circle', { cx: x, cy: y, r: 4 * step }));
    const [x, y] = cursor;
    const cross = mark('path', {
      d: `M${x - 12 * step} ${y}H${x + 12 * step}M${x} ${y - 12 * step}V${y + 12 * step}`,
      class: 'cursor',
    });
    board.replaceChildren(line, ...marks, cross);
    output.value = formatShape(kindOf(), points.map(inFile), figure, Number(error.value) || 2);
    kept.write(draftOf(fields, points));
    status.textContent = `${told('Points: {0}.', points.length)} ${measured()}`.trim();
  };
  const become = (next: readonly Point[]): void => {
    past.push([...points]);
    points.splice(0, points.length, ...next);
    draw();
  };
  const undo = (): void => {
    const last = past.pop();
    if (last) points.splice(0, points.length, ...last);
    draw();
  };
  const clear = (): void => {
    if (points.length === 0) {
      undo();
      return;
    }
    become([]);
    status.textContent = told('All points are taken away. Escape brings them back.');
  };
  const add = (point: Point): void => {
    const last = points.at(-1);
    if (last && distance(last, point) === 0) return;
    become(kindOf() === 'point' ? [point] : [...points, point]);
  };
  const takeBack = (): void => {
    if (points.length > 0) become(points.slice(0, -1));
  };
  board.addEventListener('click', (event) => {
    const box = board.getBoundingClientRect();
    cursor = [
      ((event.clientX - box.left) / box.width) * image.naturalWidth,
      ((event.clientY - box.top) / box.height) * image.naturalHeight,
    ];
    add(cursor);
  });
  board.addEventListener('keydown', (event) => {
    const step = (event.shiftKey ? 25 : 1) * Math.max(1, image.naturalWidth / Math.max(1, board.clientWidth));
    const moves: Readonly<Record<string, Point>> = {
      ArrowLeft: [-step, 0],
      ArrowRight: [step, 0],
      ArrowUp: [0, -step],
      ArrowDown: [0, step],
    };
    const move = moves[event.key];
    if (move) {
      cursor = [
        Math.max(0, Math.min(image.naturalWidth, cursor[0] + move[0])),
        Math.max(0, Math.min(image.naturalHeight, cursor[1] + move[1])),
      ];
      draw();
    } else if (event.key === 'Enter') add(cursor);
    else if (event.key === 'Backspace') takeBack();
    else if (event.key === 'Escape') clear();
    else if (event.key === 'z' && (event.ctrlKey || event.metaKey)) undo();
    else return;
    event.preventDefault();
  });
  for (const input of root.querySelectorAll('input, select')) input.addEventListener('input', draw);
  root.querySelector('button[name=back]')?.addEventListener('click', takeBack);
  root.querySelector('button[name=clear]')?.addEventListener('click', clear);
  root.querySelector('button[name=copy]')?.addEventListener('click', () => {
    output.select();
    // The clipboard is not open to pages from a disk everywhere; the text stays selected then.
    navigator.clipboard?.writeText(output.value).then(
      () => {
        status.textContent = told('Copied.');
      },
      () => undefined,
    );
  });
  const forget = (): void => {
    fields.title.value = '';
    past.length = 0;
    points.length = 0;
    draw();
    // The site may have been built anew before the answer came.
    if (document.querySelector('.changed-meanwhile')) location.reload();
  };
  offerSaving(root, status, fields, forget, () => ({
    figure,
    kind: kindOf(),
    points: points.map(inFile),
    error: Number(error.value) || 2,
  }));
  draw();
}

interface Trace {
  readonly figure: string;
  readonly kind: ShapeKind;
  readonly points: readonly Point[];
  readonly error: number;
}

/** Shows the fields for saving where the page comes from a preview on this computer; sends the trace there and nowhere else. */
function offerSaving(
  root: HTMLElement,
  status: HTMLElement,
  { into, title, is }: TraceFields,
  saved: () => void,
  trace: () => Trace,
): void {
  if (!['127.0.0.1', 'localhost'].includes(location.hostname)) return;
  const said = sessionStorage.getItem('kerfmark-saved');
  if (said) status.before(paragraph(said));
  // The page may be loaded twice, when saved and when built; the message outlives both.
  setTimeout(() => sessionStorage.removeItem('kerfmark-saved'), 10_000);
  for (const part of root.querySelectorAll<HTMLElement>('.save')) part.hidden = false;
  const showFields = (): void => {
    for (const field of root.querySelectorAll<HTMLElement>('.of-new')) field.hidden = into.value !== '';
  };
  into.addEventListener('change', showFields);
  showFields();
  root.querySelector('button[name=save]')?.addEventListener('click', async () => {
    const sent = trace();
    if (into.value === '' && title.value.trim() === '') {
      status.textContent = told('Write a title for the new trace first.');
      title.focus();
      return;
    }
    const target = into.value === '' ? { title: title.value, is: is.value } : { entry: into.value };
    const answer = await fetch('/_preview/trace', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ ...sent, into: target }),
    }).catch(() => null);
    const body = (await answer?.json().catch(() => null)) as { message?: string } | null;
    const message = body?.message ?? told('The preview does not answer; copy the line instead.');
    // The page is loaded again as soon as the site is built; the message is to be there then.
    if (answer?.ok) {
      sessionStorage.setItem('kerfmark-saved', message);
      saved();
    }
    status.textContent = message;
  });
}
function paragraph(text: string): HTMLElement {
  const element = document.createElement('p');
  element.className = 'saved';
  element.textContent = text;
  return element;
}

function mark(name: string, attributes: Readonly<Record<string, string | number>>): SVGElement {
  const element = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, String(value));
  return element;
}
