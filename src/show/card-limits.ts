/**
 * Up to which speed, slope and bump does a kept profile hold out in the simulation, and what raises its nose when headroom is short? In few words, for a
 * card: each limit with the rider who comes to it first.
 */
import { BUMP_LENGTH_M, STATED_PUSH_NS } from '../explain/edge-scenarios.js';
import type { KeptFile } from '../quantity/kept-file.js';
import type { ProfileFile } from '../quantity/profile-file.js';
import { grouped } from './margin-view.js';

type Limit = KeptFile['limits'][number];

/** Limits that a card tells, in this order. */
const TOLD = ['speed', 'climb', 'descent', 'bump'] as const;

const THING: Readonly<Record<(typeof TOLD)[number], string>> = {
  speed: 'speed',
  climb: 'climb',
  descent: 'descent',
  bump: `bump (${BUMP_LENGTH_M} m long)`,
};

function isTold(what: string): what is (typeof TOLD)[number] {
  return (TOLD as readonly string[]).includes(what);
}

function circumstances({ what, speedKmPerH, chargePercent }: Limit): string {
  if (what === 'speed') return `met by a push of ${STATED_PUSH_NS} N s`;
  return `${speedKmPerH === null ? '' : `at ${speedKmPerH} km/h, `}pack ${chargePercent} %`;
}

function limitText({ what, unit, chargePercent, survived, failed }: Limit): string {
  const thing = isTold(what) ? THING[what] : what;
  const pack = what === 'speed' ? ` (pack ${chargePercent} %)` : '';
  if (survived === null) return `${thing} ${failed === null ? 'not known' : 'none at all'}${pack}`;
  return `${thing} ${Number(survived.toFixed(1))} ${unit}${failed === null ? ' and more' : ''}${pack}`;
}

/** The limits under the same circumstances, with the rider who falls first: behind each where it is not the same one. */
function limitsText(limits: readonly Limit[]): string {
  const [first, ...others] = limits.map(({ rider }) => rider);
  if (others.every((rider) => rider === first))
    return `${limits.map(limitText).join(', ')}; ${first} falls first.`;
  return `${limits.map((limit) => `${limitText(limit)} (${limit.rider} falls first)`).join(', ')}.`;
}

/** What a card says of speed, climb, descent and bump: a sentence for each circumstance under which some were searched for. */
export function limitsSentences({ limits }: Pick<KeptFile, 'limits'>): string[] {
  const told = TOLD.flatMap((what) => limits.filter((limit) => limit.what === what));
  if (told.length === 0) return ['speed, slope and bumps: no limit was searched for.'];
  return [
    ...grouped(told, circumstances).map(([where, those]) => `${where}: ${limitsText(those)}`),
    STAY_INSIDE,
  ];
}

/** So that no limit is taken for something to ride at. */
const STAY_INSIDE = 'beyond, the simulation falls: keep well inside.';

/** What the headroom lift of a profile does, or that it has none. */
export function liftSentence({ shaping }: Pick<ProfileFile, 'shaping'>): string {
  const { headroomLift: lift } = shaping;
  if (lift === undefined) return 'none: the nose does not rise when headroom is short.';
  const { belowPercent, upToDeg, rateDegPerS } = lift;
  return `below ${belowPercent} % of headroom the nose rises by up to ${upToDeg}°, at ${rateDegPerS}°/s.`;
}
