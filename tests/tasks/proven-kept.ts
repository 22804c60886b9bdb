/** Profiles that were really proven in the cells of a small plan, and a folder that has the scenarios of it. */
import { stringify } from 'yaml';
import type { KeptFile } from '../../src/quantity/kept-file.js';
import type { ProfileFile } from '../../src/quantity/profile-file.js';
import { cellsPart, figuresPart, rigPart } from '../../src/tasks/kept-parts.js';
import type { KeptPlan } from '../../src/tasks/kept-plan.js';
import type { Named } from '../../src/tasks/plan.js';
import { rank } from '../../src/tasks/rank.js';
import { putFile, tempFolder } from '../store/temp-folder.js';
import { planWith, profileWith } from './explained-plan.js';
import { keptFixture } from './kept-fixture.js';

/** A kept profile with its plan; the figures are those of the ranking. */
export async function provenKept(
  profile: ProfileFile = profileWith(),
): Promise<KeptPlan & { kept: Named<KeptFile> }> {
  const plan = planWith(profile);
  const [result] = await rank(plan, { threads: 1 });
  const proven = { profile, rig: rigPart(plan), cells: cellsPart(plan), figures: figuresPart(result!) };
  return { plan, hasOtherScenarios: false, kept: { name: 'wool', value: keptFixture(proven) } };
}

/** A folder with the scenarios of the plan and nothing else that a kept profile needs. */
export function folderOfScenarios({ plan }: Pick<KeptPlan, 'plan'>): string {
  const folder = tempFolder();
  for (const { name, value } of plan.scenarios) putFile(folder, `scenarios/${name}.yaml`, stringify(value));
  putFile(folder, 'profiles/README.md', 'A working folder');
  return folder;
}
