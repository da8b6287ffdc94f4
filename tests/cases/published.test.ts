import { describe, expect, it } from 'vitest';
import { findChains } from '../../src/findings/custody-chains.ts';
import { datesReport } from '../../src/findings/dates-report.ts';
import { disputeOf } from '../../src/findings/dispute.ts';
import { testReferences } from '../../src/findings/reference-tests.ts';
import { composeFile } from '../../src/reports/provenance-file.ts';
import { behindOf } from '../../src/reports/source-book.ts';
import { documentMarkdown } from '../../src/typeset/markdown.ts';
import { computeFiles, entries } from '../workspace.ts';

// Cases of public record, by the second set of checks/cases-2.md, which names the sources of every fact (A: journal page, museum record,
// court or gazette text; B: press, institution page). Each is written as a small file; what must follow is computed, and what must not be said is
// looked for in its provenance file. No person is named. The last two cases are invented.

type Files = Readonly<Record<string, string>>;

const WORKSPACE =
  'type: workspace\ntitle: A case\ninstitution: Test cases\naccess-default: public\ncirca: { year: 10 }';

function caseOf(list: Files, references = '') {
  const files = {
    ...entries({ ...list }),
    'entries/workspace.md': `---\nid: workspace\n${WORKSPACE}${references === '' ? '' : `\nreference-dates: [${references}]`}\n---\n`,
  };
  const { file, problems } = computeFiles(files);
  expect(problems.filter((one) => one.severity === 'error').map((one) => `${one.place.file} ${one.code}`)).toEqual([]);
  const [object] = file.catalogue.ofType('object');
  if (!object) throw new Error('no object');
  const document = composeFile(file, object, { chronology: null, chains: null, plates: [] }, { built: '2024-06-01', version: '0' });
  const { moments } = datesReport(file);
  return {
    file,
    text: documentMarkdown(document, behindOf(file)),
    chains: findChains(file),
    range: (entry: string, edge: string, rank = 1) => {
      const range = moments.find((one) => one.entry === entry && one.edge === edge)?.ranges[rank];
      return [range?.earliest ?? null, range?.latest ?? null];
    },
    order: (reference: string, event: string) =>
      testReferences(file)
        .find((one) => one.reference.id === reference)
        ?.events.find((one) => one.event.id === event)?.answers[1]?.order ?? 'left out',
  };
}

const event = (kind: string, title: string, more: string): string => `type: event\nkind: ${kind}\ntitle: ${title}\n${more}`;
const on = (date: string, grade = 'established', more = ''): string => `stated: [{ date: "${date}", grade: ${grade}${more} }]`;
const holding = (title: string, more: string, capacity = 'possessor'): string =>
  `type: holding\ntitle: ${title}\ncapacity: ${capacity}\n${more}`;
const party = (title: string, is = 'institution'): string => `type: party\ntitle: ${title}\nis: ${is}`;
const source = (title: string, more = ''): string => `type: source\nkind: other\ntitle: ${title}${more}`;
const place = (title: string, rule: string): string => `type: place\ntitle: ${title}\nrule: [${rule}]`;
const ruled = (power: string, jurisdiction: string, more = ''): string =>
  `{ power: ${power}, kind: sovereign, jurisdiction: ${jurisdiction}${more} }`;
const OBJ = 'objects: [OB-x]';

describe('C. A hunt pavement: a concession, a shipment, sizes', () => {
  const found = caseOf({
    'OB-x': 'type: object\ntitle: A hunt pavement\npanels: [{ id: A, width: 7162, height: 6258 }]\nmeasurements: [{ what: whole, as-written: 625.8 x 716.2 cm }]',
    'SO-concession': 'type: source\nkind: permit\ntitle: The concession\nauthorises: { act: excavation, from: "1931-01-01", to: "1936-12-31", covers: by description }',
    'EV-term': event('permit', 'The first term', 'stated: [{ date: "1931-01-01/1936-12-31", grade: established }]'),
    'EV-work': event('excavation', 'Fieldwork', `${OBJ}\nauthorised-by: SO-concession\n${on('1932-03-04', 'established', ', sense: began')}`),
    'EV-ship-1936': event('export', 'The shipment of 1936', `${OBJ}\n${on('1936')}`),
    'EV-ship-1939': event('export', 'The shipment of 1939', on('1939')),
    'PA-museum': party('The museum that has it'),
    'HO-museum': holding('At the museum', `holder: PA-museum\n${OBJ}\nbegins: [{ date: "1936", sense: not-before, grade: established }]\nheld: [{ date: "2001-10", grade: established }]`),
  });

  it('the work and the shipment of 1936 lie inside the first term, that of 1939 does not', () => {
    expect(found.range('EV-term', 'end')).toEqual(['1936-12-31', '1936-12-31']);
    expect(found.range('EV-work', 'start')).toEqual(['1932-03-04', '1932-03-04']);
    expect(found.range('EV-ship-1936', 'end')[1]).toBe('1936-12-31');
    expect((found.range('EV-ship-1939', 'start')[0] ?? '') > '1936-12-31').toBe(true);
    expect(found.text).toContain('authorised by “The concession”');
  });

  it('is 44.82 square metres, and no day of lifting is said', () => {
    const [panel] = found.file.physical.panels;
    expect(((panel?.geometry.outline.length ?? 0) > 0 && 6.258 * 7.162).toString()).toMatch(/^44\.8/);
    expect(found.text).not.toMatch(/lifted|5 October 1936/);
  });
});

describe('E. Four apse mosaics: five wordings of one removal', () => {
  const claim = (about: string, sourceId: string, says: string): string =>
    `type: claim\ntitle: ${about}\nabout: EV-removal\nsays: { ${says} }\nsource: ${sourceId}\ngrade: possible`;
  const found = caseOf({
    'OB-x': 'type: object\ntitle: Four apse mosaics',
    'EV-invasion': event('damage', 'The invasion', on('1974-07/1974-08')),
    'EV-removal': event('removal', 'The removal', `${OBJ}\nrelations: [{ after: EV-invasion, grade: established }]`),
    'SO-court': source('The court, 1989'),
    'SO-platform': source('An art-law platform'),
    'SO-journal': source('A conservation journal, 1997'),
    'SO-press': source('Local press'),
    'SO-embassy': source('The embassy'),
    'CL-court': claim('Some point in the latter 1970s', 'SO-court', 'date: "[1975..1979]"'),
    'CL-platform': claim('August to October 1976', 'SO-platform', 'date: "1976-08/1976-10"'),
    'CL-journal': claim('After the invasion but before 1976', 'SO-journal', 'date: "1975", sense: by'),
    'CL-press': claim('Between 1978 and 1979', 'SO-press', 'date: "[1978..1979]"'),
    'CL-embassy': claim('Looted in 1979', 'SO-embassy', 'date: "1979"'),
    'EV-sale': event('sale', 'Bought', `${OBJ}\n${on('1988')}`),
  });

  it('journal and platform cannot both be right; platform and court can, press and court can', () => {
    const pairs = found.file.contradictions.map((one) => one.statements.map((s) => s.id).sort().join(' '));
    const names = (one: string): readonly string[] => pairs.filter((pair) => pair.includes(one));
    expect(names('CL-journal').some((pair) => pair.includes('CL-platform'))).toBe(true);
    expect(pairs.some((pair) => pair === 'CL-court CL-platform' || pair === 'CL-court CL-press')).toBe(false);
  });

  it('is told as what cannot all be right by five origins, not as two sides; no date wins', () => {
    const dispute = disputeOf(found.file, found.file.contradictions);
    expect(dispute.sides).toBe(null);
    expect(dispute.groups.length).toBeGreaterThanOrEqual(4);
    expect(found.range('EV-removal', 'start', 2)).toEqual(['1975-01-01', '1979-12-31']);
    expect(found.text).not.toMatch(/removed in 1974|The removal: 1976|The removal: 1979/);
  });
});

describe('F. A mural cut from a wall: covered in time, not in scope', () => {
  const found = caseOf({
    'OB-x': 'type: object\ntitle: A mural',
    'PA-landlord': party('The landlord', 'firm'),
    'PA-tenant': party('The tenant', 'firm'),
    'PA-trust': party('The assignee'),
    'EV-lease': event('permit', 'The lease', 'stated: [{ date: "2002-06-24/2022-06-23", grade: established }]'),
    'EV-painted': event('making', 'Painted', `${OBJ}\n${on('2014-09-28')}`),
    'EV-removal': event('removal', 'Cut from the wall', `${OBJ}\ncircumstance: { is: without permit, why: "the lease allowed no such thing, as the court held" }\n${on('2014-11-01', 'probable')}`),
    'EV-flown': event('export', 'Sent abroad', `${OBJ}\n${on('2014-11-27', 'probable')}`),
    'EV-offer': event('offered unsold', 'Offered', `${OBJ}\n${on('2014-12')}`),
    'TI-landlord': `type: title\ntitle: The landlord’s title\n${OBJ}\nasserted-by: PA-landlord\ninterest: ownership\nground: long possession\nends: "2015-03"`,
    'TI-trust': `type: title\ntitle: By assignment\n${OBJ}\nasserted-by: PA-trust\ninterest: ownership\nground: purchase\nbegins: "2015-03"`,
    'HO-tenant': holding('With the tenant', `holder: PA-tenant\n${OBJ}\nbegins: [{ date: "2014-11-01", grade: probable }]`),
  });

  it('the removal lies inside the term of the lease, and the two titles follow each other without a dispute', () => {
    const [start] = found.range('EV-removal', 'start');
    expect((start ?? '') > '2002-06-24' && (start ?? '') < '2022-06-23').toBe(true);
    expect(found.chains[0]?.titles.length).toBe(2);
    expect(found.chains[0]?.disputes).toEqual([]);
    expect(found.file.doubts.filter((one) => one.code === 'titles-for-one-time')).toEqual([]);
  });

  it('does not say that it was sold, that the tenant owned it, or that it was public property', () => {
    expect(found.text).not.toMatch(/\bsold\b|Ownership, asserted by The tenant|public property/i);
    expect(found.text).toContain('circumstance: without permit');
  });
});

describe('H. Chapter-house paintings: payment is no removal, deposit no title', () => {
  const found = caseOf(
    {
      'OB-x': 'type: object\ntitle: Chapter-house paintings\nof: PL-house',
      'PL-house': place('The chapter house', ruled('Spain', 'spain')),
      'PA-convent': party('The convent', 'community'),
      'PA-museum': party('The museum'),
      'EV-fire': event('damage', 'The fire', on('1936-08')),
      'EV-removal': event('removal', 'Detached', `${OBJ}\nplace: PL-house\nstated: [{ date: "1936", grade: probable }]\nrelations: [{ after: EV-fire, grade: established }]`),
      'EV-paid': event('treatment', 'Paid for the work', `payment: "1937-01"\nprice: { amount: "4,000", currency: pesetas }\n${on('1937-01')}`),
      'EV-deposit': event('deposit', 'Left with the museum', `${OBJ}\nplace: PL-house\nparties: [{ party: PA-convent, role: gives }, { party: PA-museum, role: gets }]\n${on('1940')}`),
      'RF-order': 'type: reference-date\ntitle: Order that declares a national monument\njurisdiction: spain\nmade: "1923-03-28"\nkind: immovable\ntests: removal\nstanding: looked-up\nhow-sure: high',
    },
  );

  it('the detachment lies in 1936, after the fire and after the order of 1923', () => {
    expect(found.range('EV-removal', 'start')).toEqual(['1936-08-01', '1936-12-31']);
    expect(found.order('RF-order', 'EV-removal')).toBe('after');
  });

  it('the deposit gives custody and no title: the convent goes on possessing, the museum has it meanwhile', () => {
    const [chain] = found.chains;
    expect(chain?.holdings.map((one) => one.holding.keys.holder)).toEqual(['PA-convent']);
    expect(chain?.meanwhile.map((one) => [one.holding.keys.holder, one.holding.keys.capacity])).toEqual([['PA-museum', 'depositary']]);
    expect(chain?.titles).toEqual([]);
    expect(found.text).not.toMatch(/bought|purchase/i);
  });
});

describe('L. A peristyle: sold as a lot, brought back, sold again', () => {
  const dealer = 'PA-dealer';
  const found = caseOf({
    'OB-x': 'type: object\ntitle: A peristyle',
    [dealer]: party('The dealer', 'firm'),
    'PA-owner': party('The finder', 'person').concat('\nliving: no'),
    'PA-buyer': party('The buyer of 1927', 'firm'),
    'PA-museum': party('The museum'),
    'EV-found': event('excavation', 'Excavated', `${OBJ}\n${on('1901/1902')}`),
    'EV-sale-1': event('sale', 'Sold', `${OBJ}\nparties: [{ party: PA-owner, role: gives }, { party: ${dealer}, role: gets }]\nstated: [{ date: "[1925-10..1926-03]", grade: established }]`),
    'EV-sale-2': event('sale', 'Sold as a lot of 53', `${OBJ}\nparties: [{ party: ${dealer}, role: gives }, { party: PA-buyer, role: gets }]\n${on('1927-05-25')}`),
    'EV-back': event('return', 'Returned', `${OBJ}\nparties: [{ party: PA-buyer, role: gives }, { party: ${dealer}, role: gets }]\n${on('1929-12-30')}`),
    'EV-sale-3': event('sale', 'Sold to the museum', `${OBJ}\nparties: [{ party: ${dealer}, role: gives, holding: HO-again }, { party: PA-museum, role: gets }]\n${on('1933-06-01')}`),
    'HO-first': holding('With the dealer, at first', `holder: ${dealer}\n${OBJ}\nfrom: HO-owner`),
    'HO-again': holding('With the dealer, once more', `holder: ${dealer}\n${OBJ}\nfrom: HO-buyer`),
    'HO-owner': holding('With the finder', `holder: PA-owner\n${OBJ}`),
    'HO-buyer': holding('With the buyer', `holder: PA-buyer\n${OBJ}\nfrom: HO-first`),
  });

  it('goes back to the dealer on 30 December 1929, and on to the museum; no gap, no contradiction', () => {
    const [chain] = found.chains;
    expect(chain?.holdings.map((one) => one.holding.keys.holder)).toEqual(['PA-owner', dealer, 'PA-buyer', dealer, 'PA-museum']);
    expect(chain?.gaps).toEqual([]);
    expect(found.file.contradictions).toEqual([]);
    expect(found.range('HO-again', 'begins')).toEqual(['1929-12-29', '1929-12-31']);
    expect(found.range('HO-first', 'begins')).toEqual(['1925-09-30', '1926-04-01']);
  });

  it('dates no detachment, and names no licence', () => {
    expect(found.file.catalogue.ofType('event').some((one) => one.keys.kind === 'removal')).toBe(false);
    expect(found.text.split('## Conventions')[0]).not.toMatch(/detached|licen[cs]e|removal/i);
  });
});

describe('M. Two frescoes from a villa: two accounts of who owned them', () => {
  const found = caseOf({
    'OB-x': 'type: object\ntitle: Two frescoes',
    'SO-1882': source('A journal, 1882'),
    'SO-label': source('A label copied later'),
    'SO-1881': source('An article, 1881'),
    'EV-found': event('uncovering', 'Found', OBJ),
    'CL-1882': 'type: claim\ntitle: September 1873\nabout: EV-found\nsays: { date: "1873-09" }\nsource: SO-1882\ngrade: probable',
    'CL-label': 'type: claim\ntitle: "1863"\nabout: EV-found\nsays: { date: "1863" }\nsource: SO-label\ngrade: probable',
    'EV-seen': event('recorded in place', 'Described on the wall', `${OBJ}\nstated: [{ date: "1881", source: SO-1881, grade: established }]`),
    'EV-removal': event('removal', 'Detached', `${OBJ}\nstated: [{ date: "1882", sense: by, grade: probable }]\nrelations: [{ after: EV-seen, grade: probable }]`),
    'EV-export': event('export', 'Taken abroad', `${OBJ}\ncircumstance: { is: without permit, why: an export was refused before }\nrelations: [{ after: EV-removal, grade: probable }]`),
    'PA-owner': party('The owner of the villa', 'person').concat('\nliving: no'),
    'PA-dealer': party('A dealer', 'firm'),
    'TI-owner': `type: title\ntitle: By the text of 1884\n${OBJ}\nasserted-by: PA-owner\ninterest: ownership\nground: inheritance\nends: "1882"`,
    'TI-dealer': `type: title\ntitle: By later research\n${OBJ}\nasserted-by: PA-dealer\ninterest: ownership\nground: purchase\nbegins: "1881-09"\nends: "1882"`,
  });

  it('the two years of the find contradict each other, told as two sides', () => {
    const { sides } = disputeOf(found.file, found.file.contradictions);
    expect(found.file.contradictions.map((one) => one.statements.map((s) => s.id))).toEqual([['CL-1882', 'CL-label']]);
    expect(sides?.map((side) => side.groups.flatMap((group) => group.origins))).toEqual([['SO-1882'], ['SO-label']]);
  });

  it('the detachment lies from 1881 to 1882; the titles stand side by side, and none is called disputed', () => {
    expect(found.range('EV-removal', 'start')).toEqual(['1881-01-01', '1882-12-31']);
    expect(found.chains[0]?.titles.length ?? 0).toBe(0);
    expect(found.text).not.toMatch(/Title disputed|straw/i);
    expect(found.text).toContain('circumstance: without permit');
  });
});

describe('invented: a floor lifted in a rescue, divided, and lent before it was given', () => {
  const found = caseOf(
    {
      'OB-x': 'type: object\ntitle: A pavement of a villa\npanels: [{ id: A, width: 1200, height: 900 }, { id: B, width: 1000, height: 900 }]',
      'PL-site': place('A field', ruled('Italy', 'italy')),
      'PA-state': party('The state office'),
      'PA-landowner': party('The landowner', 'person').concat('\nliving: no\ndied: { date: "1961-02-11", grade: established }'),
      'PA-house': party('A provincial museum'),
      'EV-lifted': event('removal', 'Lifted before the road', `${OBJ}\nplace: PL-site\n${on('1954-05/1954-06')}`),
      'EV-divided': event('division of finds', 'Divided', `objects: [OB-x/B]\nplace: PL-site\nparties: [{ party: PA-state, role: gives }, { party: PA-landowner, role: gets }]\n${on('1954-10-02')}`),
      'EV-deposit': event('deposit', 'Left with the museum', `objects: [OB-x/B]\nplace: PL-site\nparties: [{ party: PA-landowner, role: gives }, { party: PA-house, role: gets }]\n${on('1957-03')}`),
      'EV-will': event('bequest', 'Bequeathed to the museum', `objects: [OB-x/B]\nplace: PL-site\nparties: [{ party: PA-landowner, role: gives }, { party: PA-house, role: gets }]\n${on('1961-09-30')}`),
    },
    'period-1933-1945, greece-1932-export',
  );

  it('panel B went from the office to the landowner and to the museum, with the estate between; A did not', () => {
    const [chain] = found.chains;
    expect(found.chains.map((one) => one.panels.join())).toEqual(['B']);
    expect(chain?.holdings.map((one) => one.holding.keys.holder)).toEqual(['PA-state', 'PA-landowner', 'PA-house']);
    expect(chain?.meanwhile.map((one) => one.holding.keys.capacity)).toEqual(['depositary']);
    expect(chain?.gaps.map((gap) => gap.passedOn?.atDeath)).toEqual([true]);
    expect(found.file.contradictions).toEqual([]);
    expect(found.text).toContain('estate');
  });

  it('another land’s law and another time’s rule are left out', () => {
    expect(found.text).not.toMatch(/National Socialist|5351/);
  });
});

describe('invented: a relief pledged, taken and brought back', () => {
  const found = caseOf({
    'OB-x': 'type: object\ntitle: A relief',
    'PA-family': party('A family', 'community'),
    'PA-lender': party('A lender of money', 'firm'),
    'PA-office': party('A sequestration office'),
    'EV-pledge': event('pledge', 'Pledged', `${OBJ}\nparties: [{ party: PA-family, role: gives }, { party: PA-lender, role: gets }]\n${on('1937-04')}`),
    'EV-taken': event('confiscation', 'Taken', `${OBJ}\ncircumstance: { is: under occupation, why: by an order that names no reason }\nparties: [{ party: PA-family, role: gives, holding: HO-family }, { party: PA-office, role: gets }]\n${on('1942-08')}`),
    'EV-back': event('return', 'Brought back', `${OBJ}\nparties: [{ party: PA-office, role: gives }, { party: PA-family, role: gets }]\n${on('1948-01-15')}`),
    'HO-family': holding('With the family', `holder: PA-family\n${OBJ}`),
    'TI-family': `type: title\ntitle: The family’s title\n${OBJ}\nasserted-by: PA-family\ninterest: ownership\nground: inheritance`,
    'TI-lender': `type: title\ntitle: The pledge\n${OBJ}\nasserted-by: PA-lender\ninterest: pledge\nground: none stated\nbegins: "1937-04"`,
  });

  it('the pledge ends no possession; taken from and returned to are two holdings, with the office between', () => {
    const [chain] = found.chains;
    expect(chain?.holdings.map((one) => one.holding.keys.holder)).toEqual(['PA-family', 'PA-office', 'PA-family']);
    expect(chain?.meanwhile.map((one) => one.holding.keys.holder)).toEqual(['PA-lender']);
    expect(chain?.gaps).toEqual([]);
    expect(found.file.contradictions).toEqual([]);
    expect(found.range('HO-family', 'ends')[1]).toBe('1942-09-01');
  });

  it('a pledge beside ownership is no dispute, and nothing accuses', () => {
    expect(found.chains[0]?.disputes).toEqual([]);
    expect(found.text).not.toMatch(/Title disputed|stolen|looted|unlawful(?!\.)/i);
  });
});
