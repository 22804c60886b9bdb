/**
 * How is a cause called, what does it do, and how is it taken away? The words for each; numbers come from the data.
 */

/** The words for a cause: its name at the start of a sentence, what it does to a ride, what it was replaced with. */
export interface CauseWords {
  title: string;
  does: string;
  without: string;
}

const REFERENCE = 'with the number of the reference set';

const WORDS: Readonly<Record<string, CauseWords>> = {
  'too little rate gain': {
    title: 'Too little rate gain',
    does: 'nothing damps the deck, so it swings on after every knock',
    without: REFERENCE,
  },
  'too much rate gain': {
    title: 'Too much rate gain',
    does: 'gyro noise and the delay of the loop go straight into the motor',
    without: REFERENCE,
  },
  'too little proportional gain': {
    title: 'Too little proportional gain',
    does: 'the deck gives way under the feet and comes back late',
    without: REFERENCE,
  },
  'too much proportional gain': {
    title: 'Too much proportional gain',
    does: 'the motor answers small tilts with more than the loop can carry',
    without: REFERENCE,
  },
  'integral wind-up': {
    title: 'The wind-up of the integral',
    does: 'what it gathers while the request is cut or the load lasts comes out too late',
    without: 'without the integral',
  },
  'filter lag': {
    title: 'The lag of the gyro filter',
    does: 'the damping comes too late to damp',
    without: 'without the filter',
  },
  'accelerometer pull': {
    title: 'The pull of the accelerometer',
    does: 'while the board speeds up or slows down, the blend of gyro and accelerometer takes that for a tilt',
    without: 'with the blend time of the reference set',
  },
  'slew limit': {
    title: 'The slew limit',
    does: 'the request may not rise as quickly as the deck falls',
    without: 'without the limit',
  },
  'progressive stiffness': {
    title: 'Progressive stiffness',
    does: 'the further the deck tilts the harder the motor answers',
    without: 'without it',
  },
  "the profile's own ceilings": {
    title: "The profile's own ceilings",
    does: 'they cut what the motor could still give',
    without: "with the board's ceilings alone",
  },
  'load feed-forward': {
    title: 'Load feed-forward',
    does: 'what it adds for a lasting load comes at the wrong moment',
    without: 'without it',
  },
  'headroom lift': {
    title: 'The headroom lift',
    does: 'it raises the nose against a rider who asks for no less',
    without: 'without the lift',
  },
  trim: {
    title: 'The trim',
    does: 'the board aims for a tilt that the rider must work against',
    without: 'with a level set-point',
  },
  'loop delay': {
    title: 'The delay of the loop',
    does: 'reading, computing and the lag of the current make every answer late',
    without: 'with no delay and no lag',
  },
  'noise of the gyro': {
    title: 'The noise of the gyro',
    does: 'the motor follows what is only noise',
    without: 'with a gyro without noise',
  },
  'noise of the accelerometer': {
    title: 'The noise of the accelerometer',
    does: 'the pitch that is believed in wanders with it',
    without: 'with an accelerometer without noise',
  },
  'current ceiling': {
    title: 'The current ceiling of the motor',
    does: 'more is asked than it lets through',
    without: 'with that ceiling far away',
  },
  'voltage ceiling': {
    title: 'The voltage ceiling',
    does: 'at speed the pack has too little voltage left to drive current through the motor',
    without: 'with twice the cells in series',
  },
  'pack ceiling': {
    title: 'The pack ceiling',
    does: 'more is asked of the pack than it may give or take',
    without: 'with that ceiling far away',
  },
  'low pack': {
    title: 'The low pack',
    does: 'an emptier pack has less voltage for the same speed',
    without: 'with a full pack',
  },
  "the rider's delay": {
    title: "The rider's own delay",
    does: 'the body corrects itself so late that it and the board rock each other',
    without: 'with a rider who answers as soon as most do',
  },
  "the rider's stiffness": {
    title: "The rider's own stiffness",
    does: 'the body corrects itself so hard that, late as every body is, it overdoes it',
    without: 'with a rider who corrects himself as softly as most do',
  },
  "the rider's tremor": {
    title: "The rider's tremor",
    does: 'restless feet move the deck all the time',
    without: 'with feet as calm as most',
  },
  grip: { title: 'Grip', does: 'the tyre slips, and the torque goes nowhere', without: 'with grip to spare' },
  'rough road': {
    title: 'The rough road',
    does: 'its unevenness shakes wheel, deck and feet',
    without: 'on a smooth road',
  },
  "the tyre's own frequency": {
    title: "The tyre's own frequency",
    does: 'the road shakes rider, legs and tyre in the time in which they bounce by themselves',
    without: 'with a tyre that does not bounce on',
  },
  slope: {
    title: 'The slope',
    does: 'more is needed to hold the board on it than there is',
    without: 'on the level',
  },
  'bumps and steps': {
    title: 'Bumps and steps',
    does: 'the road throws wheel and feet up more than they can follow',
    without: 'on a road without them',
  },
};

/** The words for a cause; one without words of its own goes by its name. */
export function causeWords(cause: string): CauseWords {
  const title = cause.slice(0, 1).toUpperCase() + cause.slice(1);
  return WORDS[cause] ?? { title, does: 'it costs', without: 'without it' };
}
