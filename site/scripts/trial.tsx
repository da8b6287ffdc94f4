import { render } from 'preact';
import type { Grade } from '../../src/base/grade.ts';
import { NO_CHANGE, openTrialFile, type TrialFile, type TrialState } from '../../src/findings/run-trial.ts';
import { ENGLISH, type Language } from '../../src/language/language.ts';
import { type Sayer, sayerIn } from '../../src/language/sayer.ts';
import { Speech } from '../say.ts';
import { AS_PUBLISHED, formatTrial, readTrial } from '../trial/trial-state.ts';
import { rulingOf, TrialView } from '../trial/trial-view.tsx';

/** Makes the page of trials live. The state lives in the address alone; nothing is stored and nothing is sent. */
const root = document.getElementById('trial');
const data = document.getElementById('trial-file');
if (root && data) {
  const file = JSON.parse(data.textContent ?? '') as TrialFile;
  open(root, file, sayerIn(languageOfPage()));
}

/** The language of the page with its texts, which a page in another language than English brings with it. */
function languageOfPage(): Language {
  const texts = document.getElementById('trial-language');
  return texts ? (JSON.parse(texts.textContent ?? '') as Language) : ENGLISH;
}

function open(place: HTMLElement, file: TrialFile, sayer: Sayer): void {
  const trials = openTrialFile(file);
  const standing = trials.run(NO_CHANGE);
  const ruling = rulingOf(file, standing);
  const plainTitle = document.title;
  let shown: TrialState = NO_CHANGE;

  const go = (state: TrialState): void => {
    location.hash = formatTrial(state);
  };
  const actions = {
    withdraw(id: string, withdrawn: boolean) {
      const rest = shown.withdrawn.filter((one) => one !== id);
      go({ ...shown, withdrawn: withdrawn ? [...rest, id] : rest });
    },
    regrade(id: string, grade: Grade) {
      const { [id]: _, ...rest } = shown.grades;
      const own = file.statements.find((one) => one.id === id)?.grade;
      go({ ...shown, grades: grade === own ? rest : { ...rest, [id]: grade } });
    },
    restoreAll() {
      go(NO_CHANGE);
    },
  };
  // A link to a place on the page took the trial out of the address; it is put back.
  const keepInAddress = (): void => {
    try {
      history.replaceState(null, '', formatTrial(shown));
    } catch {
      // Some browsers forbid this for files on a disk; the trial goes on, the address shows the place.
    }
  };
  const show = (): void => {
    const addressed = readTrial(location.hash, file);
    if (!addressed) {
      keepInAddress();
      return;
    }
    performance.mark('kerfmark-trial-begins');
    shown = addressed.state;
    const result = trials.run(shown);
    document.title =
      location.hash === '' || location.hash === AS_PUBLISHED ? plainTitle : sayer.words('Trial: {0}', plainTitle);
    document.documentElement.classList.toggle('altered', formatTrial(shown) !== AS_PUBLISHED);
    render(
      <Speech.Provider value={sayer}>
        <TrialView
          file={file}
          state={shown}
          standing={standing}
          result={result}
          ruling={ruling}
          unknown={addressed.unknown}
          actions={actions}
        />
      </Speech.Provider>,
      place,
    );
    performance.measure('kerfmark-trial', 'kerfmark-trial-begins');
  };
  place.replaceChildren();
  window.addEventListener('hashchange', show);
  if (!readTrial(location.hash, file)) keepInAddress();
  show();
  for (const id of [...shown.withdrawn, ...Object.keys(shown.grades)]) openAround(id);
}

/** Opens the list that a statement of the address stands in. */
function openAround(id: string): void {
  const box = document.querySelector(`[data-statement="${CSS.escape(id)}"]`);
  const list = box?.closest('details');
  if (list) list.open = true;
}
