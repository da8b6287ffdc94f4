import path from 'node:path';
import { expect, it } from 'vitest';
import { computeFiles, filesOf, ROOT } from '../workspace.ts';

const base = filesOf(path.join(ROOT, 'tests/messages/base'));
const survey = '---\nid: SV-wall\ntype: survey\ntitle: A survey\nobject: OB-wall\ntable: wall.csv\n---\n';

it('a table may have the headings of the printed sheet; a thickness without a unit is in millimetres', () => {
  const table =
    'ID,"What, in a few words",kind,where,Seen under,Observed,Grade,thickness\nPE-w1,Upper plaster,plaster-layer,top,raking,smooth,probable,"4-6"\nPE-w2,Bed,backing,all,visible,grey,possible,"12,5"\n';
  const { file, problems } = computeFiles({ ...base, 'entries/survey.md': survey, 'entries/wall.csv': table });
  expect(problems.filter((one) => one.place.file === 'entries/wall.csv')).toEqual([]);
  expect(file.catalogue.get('PE-w1')?.keys).toMatchObject({
    title: 'Upper plaster',
    'seen-under': ['raking'],
    observed: { text: 'smooth', grade: 'probable' },
    thickness: '4-6 mm',
  });
  expect(file.catalogue.get('PE-w2')?.keys).toMatchObject({ thickness: '12.5 mm' });
});
