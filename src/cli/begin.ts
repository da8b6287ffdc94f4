import { mkdir, stat, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { phrase, type Said } from '../base/said.ts';
import { TEMPLATE_TEXTS } from '../model/template-texts.ts';
import { CURRENT_FORMAT } from '../reading/upgrade-text.ts';
import { folderOf, type Options, type RunCommand } from './commands.ts';
import type { Effects } from './effects.ts';
import { Fault } from './fault.ts';

export const begin: RunCommand = async (options, effects) => {
  const folder = folderOf(options, effects);
  const entries = path.join(folder, 'entries');
  if (await stat(path.join(entries, 'workspace.md')).catch(() => null)) {
    throw new Fault(
      phrase('{0} holds a workspace already; it is left as it is. "kerfmark new TYPE" adds an entry.', entries),
    );
  }
  const ask = (flag: string, question: Said, usual: Said) => answerOf(options, effects, flag, question, usual);
  const institution = await ask(
    'institution',
    phrase('Whose research is this (institution)?'),
    phrase('Our institution'),
  );
  const title = await ask('title', phrase('What shall the file be called?'), phrase('Untitled file'));
  const object = await ask('object', phrase('What is the object, in a few words?'), phrase('Detached wall painting'));
  const panels = panelsOf(
    await ask('panels', phrase('Its panels, short names with commas between, such as A,B,C?'), 'A'),
  );
  const files = layout(institution, title, object, panels);
  for (const [file, text] of Object.entries(files)) {
    const full = path.join(entries, file);
    await mkdir(path.dirname(full), { recursive: true });
    await writeFile(full, text, { flag: 'wx' });
  }
  effects.out(
    phrase(
      'Written in {0}:\n{1}\n\nNext: "kerfmark new" asks for an entry and writes it; "kerfmark serve" shows the file as a site while you write.\nNothing is ever overwritten.\n',
      entries,
      Object.keys(files)
        .map((file) => `  ${file}`)
        .join('\n'),
    ),
  );
  return 0;
};

/** Names of panels: letters, digits and hyphens, each once. */
function panelsOf(answer: string): readonly string[] {
  const names = answer
    .split(',')
    .map((one) => one.trim().replace(/\s+/g, '-'))
    .filter((one) => one !== '');
  const wrong = names.find((one) => !/^[A-Za-z0-9-]+$/.test(one));
  if (wrong !== undefined)
    throw new Fault(
      phrase(
        '"{0}" cannot be the name of a panel: letters, digits and hyphens only, such as A or left-half. Nothing was written.',
        wrong,
      ),
    );
  if (new Set(names).size < names.length) throw new Fault(phrase('A panel is named twice. Nothing was written.'));
  return names.length > 0 ? names : ['A'];
}

async function answerOf(
  options: Options,
  effects: Effects,
  flag: string,
  question: Said,
  usual: Said,
): Promise<string> {
  const given = options.flags[flag];
  if (typeof given === 'string') return given;
  const answer = await effects.ask(phrase('{0} (Enter: {1}) ', question, usual));
  return answer === null || answer.trim() === '' ? effects.sayer.say(usual) : answer.trim();
}

function layout(
  institution: string,
  title: string,
  object: string,
  panels: readonly string[],
): Readonly<Record<string, string>> {
  const text = (words: string): string => JSON.stringify(words);
  return {
    'workspace.md': `---
id: workspace
type: workspace
format: ${CURRENT_FORMAT}
title: ${text(title)}
institution: ${text(institution)}
access-default: internal        # public | internal | restricted
circa: { year: 10, decade: 10, century: 25, month: 3, day: 30 }   # years (months, days) either side of "about"; the Object ID guide suggests 10
paperwork-lag: P0D              # how late papers may follow a passage
printed-grade: probable         # the grade printed where only one fits
# contact: name@example.org
# how-to-respond: Letters are welcome.
---

${TEMPLATE_TEXTS.workspace}
`,
    'objects/OB-1.md': `---
id: OB-1
type: object
title: ${text(object)}
panels:
${panels.map((panel) => `  - { id: ${panel} }        # add width, height and thickness in mm`).join('\n')}
key-events: [EV-removal]
care: [not yet asked]   # human remains | sacred | funerary | restricted viewing | none known | not yet asked
---

${TEMPLATE_TEXTS.object}
`,
    'events/EV-removal.md': `---
id: EV-removal
type: event
kind: removal
title: Taken off the wall
objects: [OB-1]
# stated:
#   - { date: "1926", sense: by, source: SO-..., grade: probable, why: ... }
# relations:
#   - { after: EV-..., grade: probable, why: ... }
---

${TEMPLATE_TEXTS.removal}
`,
    'research/QU-not-yet-looked-at.md': `---
id: QU-not-yet-looked-at
type: question
title: What has not been looked at yet
about: [OB-1]
state: open
---

Strike out what is done:

${panels.map((panel) => `- panel ${panel}: front in visible, raking and ultraviolet light; back; the four edges; labels and marks; thickness at each edge`).join('\n')}
- object file, accession register, dealers' cards, photographs with their backs
- archives at the place of origin, nil results included
- the community of origin: has anybody asked?
`,
  };
}
