/**
 * How does a tried change become a profile of one's own? A new file, with what was changed and why in its summary.
 */
import type { Checked, Problem } from '../quantity/problem.js';
import { editsText, gainText } from '../show/why-remedies.js';
import type { Places } from '../store/places.js';
import { saveProfile } from './save-profile.js';
import type { Why } from './why.js';

/** Most characters of a summary. */
const SUMMARY_LIMIT = 600;

/** Writes the remedy of this number, counted from 1, as a profile of this name; answers the path written. */
export async function applyRemedy(
  places: Places,
  { explanation, tried }: Why,
  { remedy: number, name }: { remedy: number; name: string },
): Promise<Checked<string, Problem>> {
  const remedies = tried?.remedies ?? [];
  const chosen = remedies[number - 1];
  if (chosen === undefined) {
    const expected = `the number of a change, from 1 to ${remedies.length}`;
    const fault = { file: '', line: null, column: null, key: 'apply', expected, received: String(number) };
    return { ok: false, faults: [fault] };
  }
  const { profile } = explanation;
  const { effect, causes, edits } = chosen;
  const against = causes.length === 0 ? '' : ` against ${causes.join(' and ')}`;
  const reason =
    `From ${profile.name}${against}: ${editsText(edits)}; in ${explanation.result.cells.length} simulated runs ` +
    `${gainText(effect)}.`;
  const before = ` Was: ${profile.value.summary.trim()}`;
  const kept = reason.length + before.length > SUMMARY_LIMIT ? '' : before;
  const summary = `${reason}${kept}`.slice(0, SUMMARY_LIMIT);
  return saveProfile(places, { from: profile.name, name, profile: { ...chosen.profile, summary } });
}
