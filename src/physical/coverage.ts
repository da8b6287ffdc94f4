import type { Catalogue } from '../model/catalogue.ts';
import type { Entry } from '../model/entry.ts';

/** Faces of a panel in the order of a coverage plan. */
export const FACES = ['front', 'back', 'top', 'right', 'bottom', 'left'] as const;

export type Face = (typeof FACES)[number];

/** What an examination did with a face: looked at it, could not reach it, did not look, or did not say which faces it looked at. */
export type FaceState = 'looked at' | 'not accessible' | 'not looked at' | 'face not recorded';

/** One examination of one panel, face by face. */
export interface ExaminationCoverage {
  readonly examination: Entry<'examination'>;
  readonly faces: Readonly<Record<Face, FaceState>>;
  /** Traces that were looked for and not seen, and those that could not be reached. */
  readonly notSeen: readonly Entry<'evidence'>[];
  readonly notAccessible: readonly Entry<'evidence'>[];
  /** The same in the examination's own words; they may concern other panels too. */
  readonly notSeenWords: readonly string[];
  readonly notAccessibleWords: readonly string[];
}

/**
 * What each examination of a panel looked at. A face counts as not accessible where the examination records such a trace on it, even if
 * another part of the face was looked at. Examinations of the object that leave the panel out are listed too, as not looked at. Of several objects
 * with panels of one name only the object that is named counts.
 */
export function coverageOf(catalogue: Catalogue, object: string, panel: string): readonly ExaminationCoverage[] {
  const traces = catalogue
    .ofType('evidence')
    .filter((trace) => trace.keys.object === object && trace.keys.panel === panel);
  return catalogue
    .ofType('examination')
    .filter((one) => one.keys.objects.some((id) => id === object || id === `${object}/${panel}`))
    .map((examination) => {
      const mine = traces.filter((trace) => trace.keys.examination === examination.id);
      const notAccessible = mine.filter((trace) => trace.keys.seen === 'not accessible');
      const several = examination.keys.objects.length > 1;
      const covered = (examination.keys.covered ?? []).filter(
        (one) => one.panel === panel && (one.object === undefined ? !several : one.object === object),
      );
      const state = (face: Face): FaceState => {
        if (notAccessible.some((trace) => trace.keys.face === face)) return 'not accessible';
        if (covered.some((one) => one.faces?.includes(face))) return 'looked at';
        return covered.some((one) => one.faces === undefined) ? 'face not recorded' : 'not looked at';
      };
      return {
        examination,
        faces: Object.fromEntries(FACES.map((face) => [face, state(face)])) as Record<Face, FaceState>,
        notSeen: mine.filter((trace) => trace.keys.seen === 'looked for, not seen'),
        notAccessible,
        notSeenWords: examination.keys['looked-for-not-seen'] ?? [],
        notAccessibleWords: examination.keys['not-accessible'] ?? [],
      };
    });
}
