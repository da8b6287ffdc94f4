import { sayStatement } from '../statements/say-statement.ts';
import type { CaseFile } from './case-file.ts';
import { findChains } from './custody-chains.ts';
import { datesReport } from './dates-report.ts';
import { panelsReport } from './panels-report.ts';
import { lineOfChain } from './provenance-line.ts';

/** The whole file for other programs: entries as this audience may see them, statements, dates, contradictions, chains, panels. */
export function caseFileReport(file: CaseFile): unknown {
  const { catalogue, settings, sayer } = file;
  return {
    format: 'kerfmark-case-file/1',
    audience: catalogue.audience,
    holdsMore: catalogue.holdsMore,
    languages: settings.languages,
    printedGrade: settings.printedGrade,
    entries: catalogue.entries.map((entry) => ({
      ...entry.keys,
      access: entry.access,
      file: entry.standsIn ? undefined : entry.file,
      withheld: entry.withheld,
    })),
    links: catalogue.links,
    statements: file.statements.all.map(({ id, entry, kind, grade, statedGrade, source, why, says, notUsed }) => ({
      id,
      entry,
      kind,
      grade,
      statedGrade,
      source,
      why,
      text: sayer.say(sayStatement(says)),
      notUsed: notUsed === null ? null : sayer.say(notUsed),
    })),
    dates: datesReport(file),
    chains: findChains(file).map((chain) => ({
      object: chain.object.id,
      panels: chain.panels,
      holdings: chain.holdings.map((one) => one.holding.id),
      meanwhile: chain.meanwhile.map((one) => one.holding.id),
      gaps: chain.gaps.map((gap) => ({
        before: gap.before.id,
        after: gap.after.id,
        leastDays: gap.least,
        mostDays: gap.most,
      })),
      line: lineOfChain(file, chain),
    })),
    panels: panelsReport(file),
  };
}
