/**
 * What will the controller act on? What was typed, read back into our numbers under the sheet's own way of counting: a sign that
 * contradicts it comes back wrong, and no schema keeps it from being simulated.
 */
import { PROFILE_FIELDS } from './profile-fields.js';
import type { ProfileFile } from './profile-file.js';
import type { SheetFile, SheetRow } from './sheet-file.js';
import { sheetQuantity } from './sheet-quantities.js';
import { takenSign } from './sheet-signs.js';
import { UNITS_OF, type SheetUnitLaw, type UnitGround } from './sheet-units.js';

/** What the units of a sheet are reckoned with. */
export function groundOf({ loopRateHz, currentLimitA }: SheetFile): UnitGround {
  return { tickS: 1 / loopRateHz, limitA: currentLimitA ?? NaN };
}

/** The law of the unit of a row; throws where the unit does not measure its quantity, which no checked sheet has. */
export function unitLaw({ quantity, unit }: Pick<SheetRow, 'quantity' | 'unit'>): SheetUnitLaw {
  const law = UNITS_OF[sheetQuantity(quantity).dimension][unit];
  if (law === undefined) throw new Error(`${quantity} is not counted in ${unit}`);
  return law;
}

/** The number of ours that the controller acts on when this is typed, in the unit of the profile. */
export function readBack(sheet: SheetFile, row: SheetRow, typed: number): number {
  const { sign, least = -Infinity, most = Infinity } = sheetQuantity(row.quantity);
  const counted = (takenSign(sheet, row) * typed) / row.scale;
  const ours = unitLaw(row).back(sign === 'size' ? Math.max(0, counted) : counted, groundOf(sheet));
  return Math.min(most, Math.max(least, ours));
}

/** A change of one number of a profile: null leaves it out. */
export interface NumberChange {
  key: string;
  value: number | null;
}

/**
 * The profile with numbers changed as they are, were they such as no file may hold: negative gains, no limit. A section is made
 * only for a number, and goes with `upToDeg` or when its last number does.
 */
export function withPlainNumbers(profile: ProfileFile, changes: readonly NumberChange[]): ProfileFile {
  const changed = structuredClone(profile);
  for (const { key, value } of changes) {
    const field = PROFILE_FIELDS.find((one) => one.key === key);
    if (field !== undefined) putNumber(changed as unknown as Section, field.path, value);
  }
  const { shaping } = changed;
  if (shaping.headroomLift !== undefined && !('upToDeg' in shaping.headroomLift)) delete shaping.headroomLift;
  if (shaping.loadFeedForward !== undefined && !('filterTimeS' in shaping.loadFeedForward)) {
    delete shaping.loadFeedForward;
  }
  return changed;
}

type Section = Record<string, unknown>;

function putNumber(profile: Section, path: readonly string[], value: number | null): void {
  let section: Section | undefined = profile;
  for (const key of path.slice(0, -1)) {
    if (value !== null) section[key] ??= {};
    section = section[key] as Section | undefined;
    if (section === undefined) return;
  }
  const last = path.at(-1)!;
  if (value === null) delete section[last];
  else section[last] = value;
}
