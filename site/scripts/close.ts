import OpenSeadragon from 'openseadragon';
import { told } from './told.ts';

/** Shows a tiled figure closely: static tiles, read from the site's own folder; nothing is asked of another host. */
interface CloseData {
  readonly address: string;
  readonly width: number;
  readonly height: number;
  readonly tileSize: number;
  readonly scaleFactors: readonly number[];
}

const data = document.getElementById('close-data');
const board = document.getElementById('close');
const view = board?.querySelector<HTMLElement>('.close-view');
const tools = board?.querySelector<HTMLElement>('.close-tools');
if (data && view && tools) begin(JSON.parse(data.textContent ?? '') as CloseData, view, tools);

function begin(
  { address, width, height, tileSize, scaleFactors }: CloseData,
  element: HTMLElement,
  buttons: HTMLElement,
): void {
  const alternative = element.querySelector('img')?.alt ?? '';
  element.replaceChildren();
  element.classList.add('live');
  // The library would put a rule of its own into the page, which the page's policy forbids; a mark keeps it from trying.
  const mark = document.createElementNS('urn:kerfmark', 'style');
  mark.setAttribute('data-openseadragon-mobile-css', 'true');
  document.head.append(mark);
  const viewer = OpenSeadragon({
    element,
    drawer: 'canvas',
    showNavigationControl: false,
    animationTime: window.matchMedia('(prefers-reduced-motion: reduce)').matches ? 0 : 0.6,
    visibilityRatio: 0.6,
    maxZoomPixelRatio: 3,
    // The description of the tiles is handed over, not fetched, so that the page works from a disk.
    tileSources: [
      {
        '@context': 'http://iiif.io/api/image/3/context.json',
        id: new URL(address, document.baseURI).href,
        type: 'ImageService3',
        protocol: 'http://iiif.io/api/image',
        profile: 'level0',
        width,
        height,
        tiles: [{ width: tileSize, height: tileSize, scaleFactors }],
      } as unknown as string,
    ],
  });
  const canvas = element.querySelector<HTMLElement>('.openseadragon-canvas');
  canvas?.setAttribute('role', 'application');
  canvas?.setAttribute(
    'aria-label',
    told('{0} Arrow keys move, plus and minus come nearer and go back, 0 shows the whole.', alternative ?? ''),
  );
  buttons.hidden = false;
  const act = (name: string, action: () => void): void =>
    buttons.querySelector(`button[name=${name}]`)?.addEventListener('click', action);
  act('nearer', () => viewer.viewport.zoomBy(1.6));
  act('farther', () => viewer.viewport.zoomBy(1 / 1.6));
  act('whole', () => viewer.viewport.goHome());
  viewer.addHandler('tile-load-failed', () => element.classList.add('failed'));
  viewer.addHandler('tile-drawn', () => element.classList.add('drawn'));
}
