// Draws the pictures of the demonstration file into entries/figures: run with "npm run pictures".
// One pixel is one millimetre, but for panel B in visible light, which is drawn larger, as a photograph would be.
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';
import { head, rule, saint, table } from './scenes.mjs';

const folder = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../../entries/figures');

const DAY = {
  ground: '#7f8a86',
  floor: '#7c7a52',
  border: '#7a5a3a',
  line: '#3a2a20',
  halo: '#c79a45',
  flesh: '#b98a5e',
  hair: '#5f4430',
  white: '#c9c3b2',
  wall: '#a39478',
  blue: '#5d7180',
  red: '#94503c',
  green: '#6d7a58',
};
const VIOLET = {
  ground: '#3b3f74',
  floor: '#343463',
  border: '#35284f',
  line: '#161330',
  halo: '#5d5890',
  flesh: '#6a5a86',
  hair: '#2a2147',
  white: '#8f92b8',
  wall: '#5a5c93',
  blue: '#343c78',
  red: '#573a63',
  green: '#1f2346',
};
const LOW = {
  ground: '#8a8271',
  floor: '#7b735c',
  border: '#75614a',
  line: '#4a3b2d',
  halo: '#a98b56',
  flesh: '#a78a67',
  hair: '#65523d',
  white: '#b5ab96',
  wall: '#96896f',
  blue: '#6f6d66',
  red: '#84604c',
  green: '#757158',
};
const PRINT = {
  ground: '#8c8c8c',
  floor: '#777',
  border: '#5e5e5e',
  line: '#242424',
  halo: '#b4b4b4',
  flesh: '#a3a3a3',
  hair: '#4c4c4c',
  white: '#d5d5d5',
  wall: '#9a9a9a',
  blue: '#6f6f6f',
  red: '#5c5c5c',
  green: '#747474',
};

/** Uneven plaster over a drawing. */
const plaster = (seed, opacity, slope = 0.9, intercept = -0.28) => ({
  defs: `<filter id="plaster" x="0" y="0" width="100%" height="100%"><feTurbulence type="fractalNoise" baseFrequency="0.018 0.03" numOctaves="5" seed="${seed}"/><feColorMatrix values="0 0 0 0 0  0 0 0 0 0  0 0 0 0 0  ${slope} 0 0 0 ${intercept}"/></filter>`,
  over: `<rect width="100%" height="100%" filter="url(#plaster)" opacity="${opacity}"/>`,
});

/** Light from the left, low: trowel marks throw shadows. */
const relief = (seed) => ({
  defs: `<filter id="relief" x="0" y="0" width="100%" height="100%"><feTurbulence type="fractalNoise" baseFrequency="0.006 0.05" numOctaves="4" seed="${seed}" result="noise"/><feDiffuseLighting in="noise" surfaceScale="9" diffuseConstant="1.05" lighting-color="#f1e2c4"><feDistantLight azimuth="180" elevation="24"/></feDiffuseLighting></filter>`,
  over: '<rect width="100%" height="100%" filter="url(#relief)" opacity="0.62"/>',
});

/** A bed of gypsum plaster, poured over tow. */
const bed = (seed) => ({
  defs: `<filter id="bed" x="0" y="0" width="100%" height="100%"><feTurbulence type="fractalNoise" baseFrequency="0.012 0.02" numOctaves="5" seed="${seed}" result="noise"/><feDiffuseLighting in="noise" surfaceScale="7" diffuseConstant="1" lighting-color="#ece4d3"><feDistantLight azimuth="225" elevation="52"/></feDiffuseLighting></filter>`,
  over: '',
});

const drawing = (width, height, { defs, over }, under, above = '') =>
  `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}"><defs>${defs}</defs>${under}${over}${above}</svg>`;

const JOINT_A = 'M0 742 L240 740 L520 744 L915 748';
const lossesA = (colour, opacity) => `<g fill="${colour}" opacity="${opacity}">
  <path d="M0 1240 q90 -40 130 30 q10 90 -60 150 L0 1440 Z"/><path d="M780 900 q60 -30 135 10 v150 q-90 20 -130 -60 Z"/>
  <path d="M140 120 q40 -20 60 20 q-10 40 -50 30 Z M610 1320 q40 -10 50 30 q-30 40 -60 10 Z"/></g>`;
const JOINTS_B = 'M0 722 L700 719 L1330 714 M640 1480 L644 718';
const lossesB = (colour, opacity) => `<g fill="${colour}" opacity="${opacity}">
  <path d="M1210 60 q90 -20 120 40 v170 q-70 10 -110 -60 Z"/><path d="M0 1330 q70 -30 120 40 q10 60 -30 110 H0 Z"/>
  <path d="M520 1290 q60 -30 90 20 q-20 60 -80 40 Z"/></g>`;
const CRACK_B = 'M900 0 L884 180 L892 360 L870 520 L874 714';
const lossesC = (colour, opacity) => `<g fill="${colour}" opacity="${opacity}">
  <path d="M905 300 q-70 20 -80 110 q20 80 80 90 Z"/><path d="M380 1230 q90 -30 140 30 q-10 90 -110 70 Z"/><path d="M0 90 q60 -10 80 50 q-20 50 -80 50 Z"/></g>`;

const pale = (d, wide) =>
  `<path d="${d}" stroke="#a9a190" stroke-width="${wide}" fill="none"/><path d="${d}" stroke="#8f8778" stroke-width="2" fill="none" transform="translate(0 3)"/>`;
const glow = (d, wide) => `<path d="${d}" stroke="#cfd8ee" stroke-width="${wide}" fill="none"/>`;
const patches = (...list) => `<g fill="#0e0c20" opacity="0.88">${list.map((d) => `<path d="${d}"/>`).join('')}</g>`;

const bars = (list, colour) =>
  list
    .map(
      ([x1, y, x2]) =>
        `<path d="M${x1} ${y + 16} v-16 H${x2} v16" stroke="${colour}" stroke-width="30" fill="none" opacity="0.9"/>`,
    )
    .join('');

/** A 1961 catalogue plate: grey, with a printer's screen. */
const screen = (
  width,
  height,
  under,
) => `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${width} ${height}" width="${width}" height="${height}">
  <defs><pattern id="dots" width="5" height="5" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><circle cx="2.5" cy="2.5" r="1.5" fill="#fff"/></pattern></defs>
  ${under}<rect width="100%" height="100%" fill="url(#dots)" opacity="0.34"/></svg>`;

const SISTER_EDGE = [
  [1.1, 6],
  [-3.1, 27],
  [1.2, 48],
  [-6.9, 69],
  [-7.3, 90],
  [-15.5, 111],
  [-6.2, 132],
  [-6.4, 153],
  [1.4, 174],
  [0.5, 195],
  [4.1, 216],
  [1, 237],
  [-2.6, 258],
  [1, 279],
  [-4.4, 300],
  [-4.6, 321],
  [0.1, 342],
  [0.9, 363],
  [-0.1, 384],
  [9.3, 405],
  [10.4, 426],
  [7.6, 447],
  [7.2, 468],
  [4.5, 489],
  [3.9, 510],
  [2.5, 531],
  [10.4, 552],
];
const sisterOutline = `M${SISTER_EDGE.map(([x, y]) => `${x + 60} ${60 + 560 - y}`).join(' L')} L840 68 L836 612 Z`;

const pictures = {
  'panel-A-visible': drawing(
    915,
    1480,
    plaster(7, 0.55),
    saint(DAY),
    `${lossesA('#cfc6b2', 0.92)}${pale(JOINT_A, 7)}<path d="M180 700 q40 30 90 60" stroke="#8b7a60" stroke-width="30" opacity="0.5" fill="none"/>`,
  ),
  'panel-A-ultraviolet': drawing(
    915,
    1480,
    plaster(11, 0.5, 0.9, -0.3),
    saint(VIOLET),
    `${lossesA('#8fa4cf', 0.9)}${glow(JOINT_A, 8)}${patches('M170 690 q60 -10 110 40 q-30 50 -100 34 Z', 'M520 726 q60 -20 90 20 q-30 40 -80 20 Z', 'M760 880 q40 -10 60 30 q-20 40 -60 10 Z')}`,
  ),
  'panel-A-raking': drawing(
    915,
    1480,
    relief(3),
    saint(LOW),
    `${lossesA('#d5c8ac', 0.55)}<path d="${JOINT_A}" stroke="#2b211a" stroke-width="5" fill="none"/><path d="${JOINT_A}" stroke="#f6e8cc" stroke-width="3" fill="none" transform="translate(0 5)"/><path d="M742 0 A175 175 0 0 0 915 109" fill="none" stroke="#2b211a" stroke-width="3" transform="translate(-7 0)"/><path d="M0 495 Q230 545 440 542 Q700 536 915 490" fill="none" stroke="#3d3025" stroke-width="3" opacity="0.8"/>`,
  ),
  'panel-A-back': drawing(
    915,
    1480,
    bed(21),
    '<rect width="915" height="1480" filter="url(#bed)"/>',
    `<path d="M0 748 L395 744 L675 740 L915 742" stroke="#8d8371" stroke-width="9" fill="none"/>${bars(
      [
        [28, 190, 888],
        [30, 560, 886],
        [26, 940, 884],
        [30, 1310, 890],
      ],
      '#6d4a36',
    )}
     <g stroke="#a08c66" stroke-width="2.2" fill="none" opacity="0.7">${Array.from({ length: 46 }, (_, i) => `<path d="M${(i * 197) % 900} ${(i * 331) % 1460} q${20 + (i % 5) * 9} ${-12 + (i % 7) * 5} ${44 + (i % 3) * 20} ${(i % 9) * 4 - 16}"/>`).join('')}</g>
     <path d="M330 430 q60 -20 120 6 t110 -2" stroke="#6d4a36" stroke-width="7" opacity="0.25" fill="none"/>`,
  ),
  'panel-B-visible': drawing(
    1330,
    1480,
    plaster(5, 0.5),
    table(DAY),
    `${lossesB('#cfc6b2', 0.92)}${pale(JOINTS_B, 7)}<path d="M641 1470 L644 722" stroke="#e4e0d6" stroke-width="6" fill="none"/><path d="${CRACK_B}" stroke="#2b211a" stroke-width="2.4" fill="none"/>`,
  ),
  'panel-B-ultraviolet': drawing(
    1330,
    1480,
    plaster(13, 0.5, 0.9, -0.3),
    table(VIOLET),
    `${lossesB('#8fa4cf', 0.9)}${glow('M0 722 L700 719 L1330 714', 7)}<path d="M640 1480 L644 718" stroke="#f2f4ff" stroke-width="9" fill="none"/>${patches('M380 690 q60 -20 110 20 q-40 50 -104 30 Z', 'M980 690 q60 -10 80 30 q-40 40 -84 14 Z', 'M610 1130 q40 -20 70 10 q-20 60 -66 40 Z')}`,
  ),
  'panel-B-back': drawing(
    1330,
    1480,
    bed(29),
    '<rect width="1330" height="1480" filter="url(#bed)"/>',
    `<path d="M0 714 L630 719 L1330 722 M690 1480 L686 718" stroke="#8d8371" stroke-width="9" fill="none"/>${bars(
      [
        [28, 220, 1300],
        [30, 610, 1296],
        [26, 1010, 1302],
        [30, 1330, 1298],
      ],
      '#6d4a36',
    )}
     <g transform="translate(880 380) rotate(-3)"><rect width="250" height="104" fill="#d8c79c" stroke="#8a774c" stroke-width="2"/><rect x="9" y="9" width="232" height="86" fill="none" stroke="#5c4a2c" stroke-width="2"/><path d="M28 34 h194 M52 58 h146 M72 80 h104" stroke="#4a3a22" stroke-width="9" stroke-dasharray="16 5 9 4 21 6"/></g>
     <path d="M902 372 l-20 40 h34 M910 388 v50 M954 386 l14 -12 v66 M1000 390 q22 -26 34 2 q2 18 -34 48 h40" stroke="#3f6d9a" stroke-width="9" fill="none" opacity="0.85"/><path d="M874 470 h180 M880 484 h170" stroke="#3f6d9a" stroke-width="6" opacity="0.8"/>`,
  ),
  'panel-C-visible': drawing(
    905,
    1475,
    plaster(17, 0.55),
    rule(DAY),
    `${lossesC('#cfc6b2', 0.92)}${pale('M0 736 L400 733 L905 738', 7)}`,
  ),
  'strip-visible': drawing(
    210,
    640,
    plaster(31, 0.5),
    `<rect width="210" height="640" fill="${DAY.ground}"/><path d="M0 0 h210 v60 H0 Z" fill="${DAY.wall}"/><path d="M20 330 Q96 250 190 330 L220 640 H-10 Z" fill="${DAY.red}" stroke="${DAY.line}" stroke-width="4"/><path d="M70 330 Q90 480 60 640 M140 330 Q126 480 150 640" stroke="${DAY.line}" stroke-width="2.4" fill="none"/>${head(104, 205, 62, 8, DAY, false)}`,
    '<path d="M0 560 q50 -20 70 30 q-10 40 -70 50 Z" fill="#cfc6b2" opacity="0.9"/>',
  ),
  'sister-1961': screen(
    900,
    680,
    `<rect width="900" height="680" fill="#e9e9e6"/><clipPath id="piece"><path d="${sisterOutline}"/></clipPath><g clip-path="url(#piece)"><rect width="900" height="680" fill="${PRINT.ground}"/><path d="M0 150 H900 V440 H0 Z" fill="${PRINT.white}"/><path d="M0 440 h900 v110 H0 Z" fill="#cdcdcd" stroke="${PRINT.line}" stroke-width="4"/><path d="M0 506 h900 M0 522 h900" stroke="${PRINT.red}" stroke-width="6"/>${[140, 320, 500, 680, 860].map((x) => `<path d="M${x} 514 m-9 0 l9 -16 9 16 -9 16 Z" fill="${PRINT.red}"/>`).join('')}${[230, 450, 670].map((x) => `<ellipse cx="${x}" cy="300" rx="70" ry="32" fill="${PRINT.flesh}" stroke="${PRINT.line}" stroke-width="3"/><path d="M${x - 30} 300 h60 M${x} 280 v40" stroke="${PRINT.line}" stroke-width="2.4"/>`).join('')}<path d="M60 550 h840 v100 H60 Z" fill="${PRINT.floor}"/></g><path d="${sisterOutline}" fill="none" stroke="#444" stroke-width="2"/><path d="M700 650 h100 M700 644 v12 M750 646 v8 M800 644 v12" stroke="#222" stroke-width="2.5"/>`,
  ),
};

/** Pixels a millimetre, where it is not one; quality of the JPEG. */
const SIZES = { 'panel-B-visible': { scale: 2, quality: 58 } };

for (const [name, svg] of Object.entries(pictures)) {
  const { scale = 1, quality = 76 } = SIZES[name] ?? {};
  await sharp(Buffer.from(svg), { density: 72 * scale })
    .jpeg({ quality, mozjpeg: true })
    .toFile(path.join(folder, `${name}.jpg`));
}
