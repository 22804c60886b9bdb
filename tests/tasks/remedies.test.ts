/** Are changes tried on every run, ordered by what they do, and kept as a profile that does the same? */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { stringify } from 'yaml';
import { describe, expect, it } from 'vitest';
import { load } from '../../src/store/library.js';
import { findPlaces } from '../../src/store/places.js';
import { applyRemedy } from '../../src/tasks/apply-remedy.js';
import { rank } from '../../src/tasks/rank.js';
import { why } from '../../src/tasks/why.js';
import { putFile } from '../store/temp-folder.js';
import { workingFolder } from '../store/working-folder.js';
import { planWith, profileWith } from './explained-plan.js';

const ringing = profileWith({ rateAPerDegPerS: 0.02 });
const plan = planWith(ringing);
const answer = await why(plan, { threads: 1 });
const { remedies, verdict } = answer.tried!;

describe('remedies', () => {
  it('help against what was spoiled, best first', () => {
    expect(verdict.kind).toBe('one change helps');
    expect(remedies[0]!.helps).toBe(true);
    expect(remedies[0]!.edits.map(({ path }) => path.at(-1))).toContain('rateAPerDegPerS');
    const keys = remedies.map(({ effect }) => effect.failuresAfter * 1000 + effect.scoreAfter);
    expect(keys).toEqual(keys.toSorted((a, b) => a - b));
  });

  it('say what a ranking says of the changed profile', async () => {
    const { profile, effect } = remedies[0]!;
    const [ranked] = await rank(planWith(profile), { threads: 1 });
    expect(effect).toMatchObject({ failuresAfter: ranked!.failures, scoreAfter: ranked!.score });
    expect(effect.scoreBefore).toBe(answer.explanation.result.score);
  });

  it('are steps aside alone where nothing is to blame', async () => {
    const { tried } = await why(planWith(profileWith()), { threads: 1 });
    const singles = tried!.remedies.filter(({ edits }) => edits.length === 1);
    expect(singles).toHaveLength(4);
    expect(tried!.remedies.every(({ causes }) => causes.length === 0)).toBe(true);
  });
});

describe('a remedy that is applied', () => {
  const folderWithProfile = () => {
    const folder = workingFolder();
    putFile(folder, 'profiles/gains/wool.yaml', `# mine\n${stringify(ringing)}`);
    return folder;
  };

  it('becomes a profile with the numbers that were tried, and the reason in its summary', async () => {
    const folder = folderWithProfile();
    const written = await applyRemedy(findPlaces(folder), answer, { remedy: 1, name: 'wool-2' });
    const path = join(folder, 'profiles/gains/wool-2.yaml');
    expect(written).toEqual({ ok: true, value: path });
    const loaded = load(findPlaces(folder), 'profile', 'wool-2');
    if (!loaded.ok) throw new Error(JSON.stringify(loaded.faults));
    const { summary, ...numbers } = loaded.value.value;
    const { summary: _old, ...tried } = remedies[0]!.profile;
    expect(numbers).toEqual(tried);
    expect(summary).toMatch(/^From wool against too little rate gain.*: rate gain from 0\.02 to /is);
    expect(summary).toContain('Was: A profile for tests');
    expect(readFileSync(path, 'utf8')).toMatch(/^# mine/);
  });

  it('is never written over a file, and must be one of those that were tried', async () => {
    const places = findPlaces(folderWithProfile());
    expect(await applyRemedy(places, answer, { remedy: 1, name: 'wool' })).toMatchObject({ ok: false });
    expect(await applyRemedy(places, answer, { remedy: 99, name: 'new' })).toMatchObject({
      ok: false,
      faults: [
        { key: 'apply', received: '99', expected: `the number of a change, from 1 to ${remedies.length}` },
      ],
    });
  });
});
