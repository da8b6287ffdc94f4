// Draws the pictures of the demonstration file: panel A (915 x 1480 mm) in visible, raking and
// ultraviolet light. A painted scene of our own; run with "npm run pictures".
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';

const WIDTH = 915;
const HEIGHT = 1480;
const JOINT = 'M0 742 L240 740 L520 744 L915 748';
const folder = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../../entries/figures');

const plaster = (frequency, seed, slope, intercept) => `
  <filter id="plaster" x="0" y="0" width="100%" height="100%">
    <feTurbulence type="fractalNoise" baseFrequency="${frequency}" numOctaves="5" seed="${seed}"/>
    <feColorMatrix values="0 0 0 0 0  0 0 0 0 0  0 0 0 0 0  ${slope} 0 0 0 ${intercept}"/>
  </filter>`;

/** The standing saint: halo, beard to the knees, cloak of leaves; the same lines in every light. */
const saint = ({ ground, flesh, beard, cloak, line, halo }) => `
  <rect width="${WIDTH}" height="${HEIGHT}" fill="${ground}"/>
  <rect x="34" y="34" width="${WIDTH - 68}" height="${HEIGHT - 68}" fill="none" stroke="${cloak}" stroke-width="14"/>
  <circle cx="440" cy="330" r="150" fill="${halo}" stroke="${line}" stroke-width="5"/>
  <path d="M300 560 Q440 470 590 560 L650 1180 Q440 1260 240 1180 Z" fill="${cloak}" stroke="${line}" stroke-width="4"/>
  <path d="M320 600 Q360 820 330 1160 M560 600 Q530 820 560 1160 M440 560 V1200" stroke="${line}" stroke-width="3" fill="none"/>
  <ellipse cx="440" cy="330" rx="86" ry="112" fill="${flesh}" stroke="${line}" stroke-width="4"/>
  <path d="M354 350 Q350 430 372 560 Q400 900 440 1060 Q480 900 508 560 Q530 430 526 350 Q500 430 440 432 Q380 430 354 350 Z" fill="${beard}" stroke="${line}" stroke-width="3"/>
  <path d="M380 480 Q410 760 436 1010 M440 470 V1020 M500 480 Q470 760 444 1010 M404 470 Q424 700 438 900 M476 470 Q456 700 442 900" stroke="${line}" stroke-width="1.6" fill="none"/>
  <path d="M392 318 q18 -14 36 0 M452 318 q18 -14 36 0 M440 318 l-8 54 h16" stroke="${line}" stroke-width="4" fill="none"/>
  <circle cx="410" cy="328" r="6" fill="${line}"/><circle cx="470" cy="328" r="6" fill="${line}"/>
  <path d="M420 392 q20 10 40 0" stroke="${line}" stroke-width="4" fill="none"/>
  <path d="M240 720 q-50 20 -60 90 q60 6 96 -50 Z M640 720 q50 20 60 90 q-60 6 -96 -50 Z" fill="${flesh}" stroke="${line}" stroke-width="3"/>
  <path d="M380 1200 v120 M500 1200 v120" stroke="${flesh}" stroke-width="46"/>
  <path d="M742 0 A175 175 0 0 0 ${WIDTH} 109" fill="none" stroke="${line}" stroke-width="12"/>
  <path d="M770 0 A147 147 0 0 0 ${WIDTH} 82" fill="none" stroke="${halo}" stroke-width="8"/>
  <g fill="${line}" font-family="serif" font-size="44"><path d="M120 250 v70 M150 250 v70 M120 285 h30 M196 285 m-22 0 a22 34 0 1 0 44 0 a22 34 0 1 0 -44 0" stroke="${line}" stroke-width="6" fill="none"/><path d="M690 250 h40 M710 250 v70 M760 250 v70 l38 -70 v70" stroke="${line}" stroke-width="6" fill="none"/></g>`;

const losses = (colour, opacity) => `
  <g fill="${colour}" opacity="${opacity}">
    <path d="M0 1240 q90 -40 130 30 q10 90 -60 150 L0 1440 Z"/>
    <path d="M780 900 q60 -30 135 10 v150 q-90 20 -130 -60 Z"/>
    <path d="M140 120 q40 -20 60 20 q-10 40 -50 30 Z M610 1320 q40 -10 50 30 q-30 40 -60 10 Z"/>
  </g>`;

const visible = `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH}" height="${HEIGHT}">
  <defs>${plaster('0.018 0.03', 7, 0.9, -0.28)}</defs>
  ${saint({ ground: '#7f8a86', flesh: '#b98a5e', beard: '#c9c3b2', cloak: '#7a5a3a', line: '#3a2a20', halo: '#c79a45' })}
  <rect width="100%" height="100%" filter="url(#plaster)" opacity="0.55"/>
  ${losses('#cfc6b2', 0.92)}
  <path d="${JOINT}" stroke="#a9a190" stroke-width="7" fill="none"/>
  <path d="${JOINT}" stroke="#8f8778" stroke-width="2" fill="none" transform="translate(0 3)"/>
  <path d="M180 700 q40 30 90 60" stroke="#8b7a60" stroke-width="30" opacity="0.5" fill="none"/>
</svg>`;

const ultraviolet = `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH}" height="${HEIGHT}">
  <defs>${plaster('0.02 0.03', 11, 0.9, -0.3)}</defs>
  ${saint({ ground: '#3b3f74', flesh: '#6a5a86', beard: '#8f92b8', cloak: '#35284f', line: '#161330', halo: '#5d5890' })}
  <rect width="100%" height="100%" filter="url(#plaster)" opacity="0.5"/>
  ${losses('#8fa4cf', 0.9)}
  <path d="${JOINT}" stroke="#cfd8ee" stroke-width="8" fill="none"/>
  <g fill="#0e0c20" opacity="0.88"><path d="M170 690 q60 -10 110 40 q-30 50 -100 34 Z"/><path d="M520 726 q60 -20 90 20 q-30 40 -80 20 Z"/><path d="M760 880 q40 -10 60 30 q-20 40 -60 10 Z"/></g>
</svg>`;

const raking = `<svg xmlns="http://www.w3.org/2000/svg" width="${WIDTH}" height="${HEIGHT}">
  <defs><filter id="relief" x="0" y="0" width="100%" height="100%">
    <feTurbulence type="fractalNoise" baseFrequency="0.006 0.05" numOctaves="4" seed="3" result="noise"/>
    <feDiffuseLighting in="noise" surfaceScale="9" diffuseConstant="1.05" lighting-color="#f1e2c4"><feDistantLight azimuth="180" elevation="24"/></feDiffuseLighting>
  </filter></defs>
  ${saint({ ground: '#8a8271', flesh: '#a78a67', beard: '#b5ab96', cloak: '#75614a', line: '#4a3b2d', halo: '#a98b56' })}
  <rect width="100%" height="100%" filter="url(#relief)" opacity="0.62"/>
  ${losses('#d5c8ac', 0.55)}
  <path d="${JOINT}" stroke="#2b211a" stroke-width="5" fill="none"/><path d="${JOINT}" stroke="#f6e8cc" stroke-width="3" fill="none" transform="translate(0 5)"/>
  <path d="M742 0 A175 175 0 0 0 ${WIDTH} 109" fill="none" stroke="#2b211a" stroke-width="3" transform="translate(-7 0)"/>
</svg>`;

for (const [name, svg] of Object.entries({ visible, raking, ultraviolet })) {
  await sharp(Buffer.from(svg))
    .jpeg({ quality: 80, mozjpeg: true })
    .toFile(path.join(folder, `panel-A-${name}.jpg`));
}
