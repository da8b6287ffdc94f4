// The painted scenes of the demonstration file, of our own design: line drawings filled with the
// colours of one light. Units are millimetres of the panel, y downwards.

/** A head with halo, seen from the front; `turn` moves the face towards one side. */
export const head = (x, y, r, turn, c, halo = true) => `
  ${halo ? `<circle cx="${x}" cy="${y}" r="${r * 1.72}" fill="${c.halo}" stroke="${c.line}" stroke-width="4"/>` : ''}
  <path d="M${x - r} ${y - r * 0.2} Q${x - r * 1.02} ${y - r * 1.16} ${x} ${y - r * 1.18} Q${x + r * 1.02} ${y - r * 1.16} ${x + r} ${y - r * 0.2} Q${x + r * 1.06} ${y + r * 0.6} ${x + r * 0.6} ${y + r * 0.9} L${x - r * 0.6} ${y + r * 0.9} Q${x - r * 1.06} ${y + r * 0.6} ${x - r} ${y - r * 0.2} Z" fill="${c.hair}" stroke="${c.line}" stroke-width="3"/>
  <ellipse cx="${x + turn}" cy="${y + r * 0.12}" rx="${r * 0.64}" ry="${r * 0.88}" fill="${c.flesh}" stroke="${c.line}" stroke-width="3"/>
  <path d="M${x + turn * 1.6 - r * 0.4} ${y - r * 0.12} q${r * 0.16} ${-r * 0.14} ${r * 0.32} 0 M${x + turn * 1.6 + r * 0.1} ${y - r * 0.12} q${r * 0.16} ${-r * 0.14} ${r * 0.32} 0 M${x + turn * 1.7} ${y - r * 0.1} l${-r * 0.08 + turn * 0.2} ${r * 0.5} h${r * 0.18} M${x + turn * 1.6 - r * 0.16} ${y + r * 0.62} q${r * 0.16} ${r * 0.08} ${r * 0.34} 0" stroke="${c.line}" stroke-width="3.4" fill="none"/>
  <circle cx="${x + turn * 1.6 - r * 0.24}" cy="${y - r * 0.02}" r="${r * 0.065}" fill="${c.line}"/><circle cx="${x + turn * 1.6 + r * 0.26}" cy="${y - r * 0.02}" r="${r * 0.065}" fill="${c.line}"/>`;

const frame = (width, height, c) =>
  `<rect width="${width}" height="${height}" fill="${c.ground}"/><rect x="0" y="${height * 0.7}" width="${width}" height="${height * 0.3}" fill="${c.floor}"/><rect x="34" y="34" width="${width - 68}" height="${height - 68}" fill="none" stroke="${c.border}" stroke-width="14"/>`;

/** Panel A: the standing saint with a beard to the knees and a cloak of leaves; a ring cut by the top right corner. */
export const saint = (c) => `
  <rect width="915" height="1480" fill="${c.ground}"/>
  <rect x="34" y="34" width="847" height="1412" fill="none" stroke="${c.border}" stroke-width="14"/>
  <circle cx="440" cy="330" r="150" fill="${c.halo}" stroke="${c.line}" stroke-width="5"/>
  <path d="M300 560 Q440 470 590 560 L650 1180 Q440 1260 240 1180 Z" fill="${c.border}" stroke="${c.line}" stroke-width="4"/>
  <path d="M320 600 Q360 820 330 1160 M560 600 Q530 820 560 1160 M440 560 V1200" stroke="${c.line}" stroke-width="3" fill="none"/>
  <ellipse cx="440" cy="330" rx="86" ry="112" fill="${c.flesh}" stroke="${c.line}" stroke-width="4"/>
  <path d="M354 350 Q350 430 372 560 Q400 900 440 1060 Q480 900 508 560 Q530 430 526 350 Q500 430 440 432 Q380 430 354 350 Z" fill="${c.white}" stroke="${c.line}" stroke-width="3"/>
  <path d="M380 480 Q410 760 436 1010 M440 470 V1020 M500 480 Q470 760 444 1010 M404 470 Q424 700 438 900 M476 470 Q456 700 442 900" stroke="${c.line}" stroke-width="1.6" fill="none"/>
  <path d="M392 318 q18 -14 36 0 M452 318 q18 -14 36 0 M440 318 l-8 54 h16" stroke="${c.line}" stroke-width="4" fill="none"/>
  <circle cx="410" cy="328" r="6" fill="${c.line}"/><circle cx="470" cy="328" r="6" fill="${c.line}"/>
  <path d="M420 392 q20 10 40 0" stroke="${c.line}" stroke-width="4" fill="none"/>
  <path d="M240 720 q-50 20 -60 90 q60 6 96 -50 Z M640 720 q50 20 60 90 q-60 6 -96 -50 Z" fill="${c.flesh}" stroke="${c.line}" stroke-width="3"/>
  <path d="M380 1200 v120 M500 1200 v120" stroke="${c.flesh}" stroke-width="46"/>
  <path d="M742 0 A175 175 0 0 0 915 109" fill="none" stroke="${c.line}" stroke-width="12"/>
  <path d="M770 0 A147 147 0 0 0 915 82" fill="none" stroke="${c.halo}" stroke-width="8"/>
  <path d="M120 250 v70 M150 250 v70 M120 285 h30 M196 285 m-22 0 a22 34 0 1 0 44 0 a22 34 0 1 0 -44 0 M690 250 h40 M710 250 v70 M760 250 v70 l38 -70 v70" stroke="${c.line}" stroke-width="6" fill="none"/>`;

const wing = (x, y, side, c) =>
  `<path d="M${x} ${y} q${side * 60} -120 ${side * 130} -40 q${side * 40} 160 ${side * 10} 420 q${-side * 60} -180 ${-side * 140} -240 Z" fill="${c.border}" stroke="${c.line}" stroke-width="3"/><path d="M${x + side * 40} ${y - 20} q${side * 60} 110 ${side * 84} 330 M${x + side * 76} ${y - 42} q${side * 46} 120 ${side * 58} 320" stroke="${c.line}" stroke-width="2" fill="none"/>`;

const robe = (x, y, w, h, colour, c) =>
  `<path d="M${x - w * 0.32} ${y} Q${x} ${y - 46} ${x + w * 0.32} ${y} L${x + w * 0.5} ${y + h} H${x - w * 0.5} Z" fill="${colour}" stroke="${c.line}" stroke-width="4"/><path d="M${x - w * 0.2} ${y + 20} Q${x - w * 0.05} ${y + h * 0.5} ${x - w * 0.26} ${y + h} M${x + w * 0.16} ${y + 10} Q${x + w * 0.04} ${y + h * 0.5} ${x + w * 0.22} ${y + h} M${x - w * 0.02} ${y + 40} Q${x + w * 0.06} ${y + h * 0.6} ${x - w * 0.04} ${y + h}" stroke="${c.line}" stroke-width="2.4" fill="none"/>`;

/** Panel B: three angels at a table with loaves; two hosts below, smaller. */
export const table = (c) => `
  ${frame(1330, 1480, c)}
  <path d="M90 640 V300 l120 -70 120 70 v340 Z M1060 640 V330 h180 v310 Z" fill="${c.wall}" stroke="${c.line}" stroke-width="4"/>
  <path d="M160 640 v-190 q50 -60 100 0 v190 Z M1110 420 h80 v90 h-80 Z" fill="${c.line}" opacity="0.55"/>
  ${wing(350, 560, -1, c)}${wing(470, 560, 1, c)}${wing(610, 470, -1, c)}${wing(730, 470, 1, c)}${wing(870, 560, -1, c)}${wing(990, 560, 1, c)}
  ${robe(410, 560, 330, 400, c.blue, c)}${robe(670, 470, 350, 480, c.red, c)}${robe(930, 560, 330, 400, c.green, c)}
  ${head(410, 450, 74, 12, c)}${head(670, 350, 80, -6, c)}${head(930, 450, 74, -12, c)}
  <path d="M240 900 H1100 L1190 1130 H150 Z" fill="${c.white}" stroke="${c.line}" stroke-width="5"/>
  <path d="M150 1130 h1040 v96 H150 Z" fill="${c.white}" stroke="${c.line}" stroke-width="4"/>
  <path d="M156 1188 h1028 M156 1204 h1028" stroke="${c.red}" stroke-width="6"/>
  ${[220, 400, 580, 760, 940, 1120].map((x) => `<path d="M${x} 1196 m-9 0 l9 -16 9 16 -9 16 Z" fill="${c.red}"/>`).join('')}
  ${[330, 520, 830, 1000].map((x) => `<ellipse cx="${x}" cy="1040" rx="58" ry="26" fill="${c.flesh}" stroke="${c.line}" stroke-width="3"/><path d="M${x - 26} 1040 h52 M${x} 1022 v36" stroke="${c.line}" stroke-width="2.4"/>`).join('')}
  <path d="M626 1080 q44 30 88 0 l-30 -70 q30 -60 -14 -74 q-44 14 -14 74 Z" fill="${c.halo}" stroke="${c.line}" stroke-width="4"/>
  ${robe(200, 1060, 190, 330, c.floor === c.red ? c.blue : c.red, c)}${head(200, 1000, 52, 8, c)}
  ${robe(1150, 1060, 190, 330, c.border, c)}${head(1150, 1000, 52, -8, c)}
  <path d="M560 1226 l-30 170 M780 1226 l30 170" stroke="${c.line}" stroke-width="16"/>`;

/** Panel C: the rule-giver, left, and an angel in a monk's hood, right, who points upwards; a scroll between them. */
export const rule = (c) => `
  ${frame(905, 1475, c)}
  ${robe(270, 560, 360, 800, c.border, c)}${robe(640, 540, 350, 820, c.floor, c)}
  <path d="M480 470 q60 -40 150 -60 q110 10 160 90 q-30 130 -60 150 q-90 40 -180 0 q-50 -90 -70 -180 Z" fill="${c.line}" opacity="0.82"/>
  ${head(270, 400, 88, 12, c)}${head(636, 420, 84, -14, c)}
  <path d="M214 470 Q230 660 280 720 Q320 640 330 470 Q280 520 214 470 Z" fill="${c.white}" stroke="${c.line}" stroke-width="3"/>
  <path d="M236 520 Q256 640 280 700 M276 520 V706 M310 520 Q298 640 284 700" stroke="${c.line}" stroke-width="1.6" fill="none"/>
  <path d="M770 640 q60 -120 40 -300 l24 -90 q14 -6 12 20 l-8 90 q20 180 -30 320 Z" fill="${c.flesh}" stroke="${c.line}" stroke-width="3"/>
  <path d="M356 800 q60 30 130 -10 l40 360 q-70 40 -140 6 Z" fill="${c.white}" stroke="${c.line}" stroke-width="4"/>
  ${[850, 892, 934, 976, 1018, 1060, 1102].map((y, i) => `<path d="M${372 + i * 5} ${y} q20 6 34 -2 t34 -2 t34 -4" stroke="${c.line}" stroke-width="5" stroke-dasharray="12 6 20 5 8 7" fill="none"/>`).join('')}
  <path d="M120 250 v64 M120 250 h36 v64 M180 314 l22 -64 22 64 M520 214 l20 60 20 -60 M588 214 v60 M612 274 v-60 h30 v60" stroke="${c.line}" stroke-width="6" fill="none"/>`;
