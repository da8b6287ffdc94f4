import { told } from './told.ts';

/** Makes "Two lights compared" live: the right photograph lies over the left one and is cut at the border. Nothing is stored or sent. */
for (const part of document.querySelectorAll<HTMLElement>('.compare')) begin(part);

function begin(part: HTMLElement): void {
  const choices = part.querySelector<HTMLElement>('.compare-choices');
  const board = part.querySelector<HTMLElement>('.compare-board');
  const border = part.querySelector<HTMLInputElement>('input[type=range]');
  const [left, right] = part.querySelectorAll<HTMLImageElement>('.compare-board img');
  if (!choices || !board || !border || !left || !right) return;
  choices.hidden = false;
  board.classList.add('live');
  const show = (): void => {
    board.style.setProperty('--border', `${border.value}%`);
    border.setAttribute('aria-valuetext', told('{0} per cent from the left', border.value));
  };
  border.addEventListener('input', show);
  for (const [name, image] of [
    ['left', left],
    ['right', right],
  ] as const) {
    const select = choices.querySelector<HTMLSelectElement>(`select[name=${name}]`);
    select?.addEventListener('change', () => {
      image.src = select.value;
      tell();
      image.alt = image.alt.replace(/, .*$/, `, ${select.selectedOptions[0]?.textContent ?? ''}`);
    });
  }
  function tell(): void {
    const words = part.querySelector('.compare-told');
    const [a, b] = [...(choices?.querySelectorAll('select') ?? [])].map(
      (one) => one.selectedOptions[0]?.textContent ?? '',
    );
    if (words) words.textContent = told('Left: {0}; right: {1}.', a ?? '', b ?? '');
  }
  // The border can be dragged on the picture too; the slider is its keyboard.
  const drag = (event: PointerEvent): void => {
    const box = board.getBoundingClientRect();
    border.value = String(Math.round((100 * (event.clientX - box.left)) / box.width));
    show();
  };
  board.addEventListener('pointerdown', (event) => {
    board.setPointerCapture(event.pointerId);
    drag(event);
  });
  board.addEventListener('pointermove', (event) => {
    if (event.buttons > 0) drag(event);
  });
  show();
}
