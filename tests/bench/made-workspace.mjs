import { mkdir, writeFile } from 'node:fs/promises';
import path from 'node:path';

/** Numbers from 0 to below 1, the same for the same seed (Park and Miller 1988, with their multiplier of 1993). */
function seededRandom(seed) {
  let state = ((seed + 1) * 69621) % 2147483647;
  return () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
}

/** Entries of one dossier: an object, its wall, who had it, what happened, what is seen, what papers say. */
export const ENTRIES_OF_DOSSIER = 25;

const WORDS =
  'the wall was taken down in sections and carried to the harbour where a clerk noted crates and weights but no name of a seller; plaster beds and iron bars were laid behind them, fills were toned and joints painted over, and a later hand retouched what the saw had lost; nobody says when, and the letters that survive name neither price nor carrier'.split(
    ' ',
  );

/**
 * An invented workspace of so many entries, about 1.5 KB each: dossiers of 25 that hang together (events in order with
 * dates of several grades and calendars, holdings, traces with layers, claims, sources that copy each other, searches,
 * questions) and share a few parties and places. Every tenth dossier holds a contradiction. The same number gives the same files.
 *
 * @param {number} entries
 * @returns {ReadonlyMap<string, string>} texts by file name below the workspace
 */
export function madeWorkspace(entries) {
  const files = new Map();
  files.set(
    'entries/workspace.md',
    entry(
      {
        id: 'workspace',
        type: 'workspace',
        title: 'A made workspace',
        institution: 'A made museum',
        'access-default': 'public',
        circa: '{ year: 5, decade: 10, century: 25, month: 1, day: 10 }',
      },
      'Made by a program, to be measured.',
    ),
  );
  const shared = Math.max(2, Math.floor(entries / 100));
  for (let i = 0; i < shared; i += 1)
    files.set(
      `entries/parties/PA-${i}.md`,
      entry({ id: `PA-${i}`, type: 'party', title: `Firm number ${i}`, is: 'firm' }, prose(seededRandom(i), [], 900)),
    );
  for (let dossier = 0; files.size < entries; dossier += 1) addDossier(files, dossier, shared, entries);
  return files;
}

/** Writes the files below a folder. */
export async function writeWorkspace(folder, files) {
  for (const name of new Set([...files.keys()].map((one) => path.dirname(one))))
    await mkdir(path.join(folder, name), { recursive: true });
  for (const [name, text] of files) await writeFile(path.join(folder, name), text);
}

function addDossier(files, d, shared, most) {
  const random = seededRandom(1000 + d);
  const year = 1880 + Math.floor(random() * 40);
  const add = (folder, id, keys, links) => {
    if (files.size < most)
      files.set(`entries/${folder}/d${d}/${id}.md`, entry({ id, ...keys }, prose(random, links, 1250)));
  };
  const [object, wall] = [`OB-${d}`, `PL-${d}`];
  const events = [`EV-${d}-made`, `EV-${d}-seen`, `EV-${d}-taken`, `EV-${d}-carried`, `EV-${d}-sold`];
  const sources = [`SO-${d}-list`, `SO-${d}-copy`, `SO-${d}-letter`, `SO-${d}-book`];
  const holdings = [`HO-${d}-a`, `HO-${d}-b`, `HO-${d}-c`, `HO-${d}-d`];
  add(
    'objects',
    object,
    {
      type: 'object',
      title: `Panel of wall ${d}`,
      'object-type': 'wall painting',
      of: wall,
      panels: '[{ id: A, width: 1200, height: 900 }]',
      'key-events': `[EV-${d}-taken]`,
    },
    [events[2], wall],
  );
  add('places', wall, { type: 'place', title: `North wall ${d}`, kind: 'wall' }, [object]);
  for (const [i, id] of sources.entries())
    add(
      'sources',
      id,
      {
        type: 'source',
        title: `Paper ${i} of dossier ${d}`,
        kind: ['report', 'report', 'letter', 'book'][i],
        'date-on-it': `"${year + 10 + i}"`,
        ...(i === 1 ? { 'derives-from': `[${sources[0]}]` } : {}),
      },
      [events[2]],
    );
  const dates = [
    `"${year - 500}~"`,
    `"${year}-05-0${1 + (d % 9)}"`,
    `"${year + 8}/${year + 12}"`,
    `"${year + 14}"`,
    `"${year + 20}-03"`,
  ];
  const kinds = ['making', 'recorded in place', 'removal', 'transport', 'sale'];
  for (const [i, id] of events.entries())
    add(
      'events',
      id,
      {
        type: 'event',
        title: `${['Painted', 'Seen in place', 'Taken down', 'Carried', 'Sold'][i]} ${d}`,
        kind: kinds[i],
        objects: `[${object}]`,
        ...(i === 2
          ? {}
          : {
              stated: `\n  - { date: ${dates[i]}, grade: ${['probable', 'established', 'probable', 'possible', 'probable'][i]}, source: ${sources[i % 4]}${i === 1 ? ', calendar: julian' : ''}${i === 3 ? ', sense: by' : ''} }`,
            }),
        ...(i > 0 ? { relations: `\n  - { after: ${events[i - 1]}, grade: probable, why: order of the papers }` } : {}),
      },
      [sources[i % 4], object],
    );
  for (const [i, kind] of ['plaster-layer', 'paint-layer', 'backing', 'fill', 'cut-edge'].entries())
    add(
      'evidence',
      `PE-${d}-${i}`,
      {
        type: 'evidence',
        title: `${kind} of panel ${d}`,
        kind,
        object,
        panel: 'A',
        observed: '{ text: seen in raking light, grade: probable }',
        ...(i === 1 ? { over: `[PE-${d}-0]` } : {}),
        ...(i === 3 ? { fills: `[PE-${d}-4]` } : {}),
        ...(i === 4 ? { 'left-by': `[${events[2]}]`, cuts: `[PE-${d}-1]` } : {}),
        ...(i < 3 ? { thickness: `${4 + i} mm`, density: '1500-1900 kg/m3' } : {}),
      },
      [events[2]],
    );
  const said = [
    `[${year + 8}..${year + 13}]`,
    `[${year + 9}..${year + 15}]`,
    d % 10 === 0 ? `${year - 3}` : `${year + 10}`,
  ];
  for (const [i, stated] of said.entries())
    add(
      'claims',
      `CL-${d}-${i}`,
      {
        type: 'claim',
        title: `Claim ${i} of dossier ${d}`,
        about: events[2],
        says: `{ date: "${stated}" }`,
        source: sources[i],
        grade: ['possible', 'possible', 'conjectural'][i],
        basis: 'reported',
        why: 'as the paper says',
      },
      [sources[i]],
    );
  for (const [i, id] of holdings.entries())
    add(
      'holdings',
      id,
      {
        type: 'holding',
        title: `Holding ${i} of panel ${d}`,
        objects: `[${object}]`,
        holder: `PA-${(d + i) % shared}`,
        capacity: i === 1 ? 'agent or dealer' : 'possessor',
        begins: `\n  - { date: "${year + 5 * i}", sense: by, grade: probable, source: ${sources[i]} }`,
        ...(i > 0 ? { from: holdings[i - 1], passage: i === 3 ? 'direct' : 'unknown' } : {}),
      },
      [events[Math.min(4, i + 1)]],
    );
  add(
    'research',
    `SE-${d}`,
    {
      type: 'search',
      title: `Search ${d}`,
      repository: `Archive ${d % 50}`,
      for: 'a permit',
      about: `[${events[2]}]`,
      outcome: 'not found in what was searched',
      scope: `{ series: permits, from: "${year}", to: "${year + 20}" }`,
    },
    [events[2]],
  );
  add(
    'research',
    `QU-${d}`,
    { type: 'question', title: `When was panel ${d} taken down?`, state: 'open', about: `[${events[2]}]` },
    [events[2], holdings[1]],
  );
}

function entry(keys, body) {
  const lines = Object.entries(keys).map(([key, value]) => `${key}: ${value}`);
  return `---\n${lines.join('\n')}\n---\n${body}\n`;
}

/** Paragraphs of about so many bytes, with links to entries, a list and a word in italics. */
function prose(random, links, bytes) {
  const parts = [];
  let length = 0;
  for (let i = 0; length < bytes; i += 1) {
    const start = Math.floor(random() * 20);
    const words = WORDS.slice(start, start + 20 + Math.floor(random() * 20));
    const link = links[i];
    const said = `${words.join(' ')}${link ? `, see [${link}](${link})` : ''}.`;
    const text = i % 3 === 2 ? `- *${words[0]}* ${said}\n- ${words.slice(5, 12).join(' ')}` : said;
    parts.push(text);
    length += text.length;
  }
  return parts.join('\n\n');
}
