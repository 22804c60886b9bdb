import { describe, expect, it } from 'vitest';
import * as spoken from '../../src/show/quantities.js';

const RAD = Math.PI / 180;

describe('spoken angles', () => {
  it('speaks pitch by the nose and never by a sign', () => {
    expect(spoken.pitchText(3 * RAD)).toBe('nose down 3.0°');
    expect(spoken.pitchText(-2.1 * RAD)).toBe('nose up 2.1°');
    expect(spoken.pitchText(0)).toBe('level');
  });

  it('says level for what rounds to nothing, and only for that', () => {
    expect(spoken.pitchText(-0.049 * RAD)).toBe('level');
    expect(spoken.pitchText(-0.051 * RAD)).toBe('nose up 0.1°');
  });

  it('speaks lean and bands', () => {
    expect(spoken.leanText(1.25 * RAD)).toBe('forward 1.3°');
    expect(spoken.leanText(-4 * RAD)).toBe('back 4.0°');
    expect(spoken.leanText(-0)).toBe('upright');
    expect(spoken.angleText(-0.5 * RAD)).toBe('0.5°');
  });

  it('labels an axis with whole numbers where they are whole', () => {
    expect([4, 2.5, 0, -4].map(spoken.pitchTickText)).toEqual([
      'nose down 4°',
      'nose down 2.5°',
      'level',
      'nose up 4°',
    ]);
  });
});

describe('what a moment of a run is read out in', () => {
  it('speaks pitch rates and slopes by their way', () => {
    expect(spoken.pitchRateText(12 * RAD)).toBe('12.0°/s nose down');
    expect(spoken.pitchRateText(-3.04 * RAD)).toBe('3.0°/s nose up');
    expect(spoken.pitchRateText(-0.04 * RAD)).toBe('steady');
    expect(spoken.slopeText(0.04)).toBe('4.0 % up');
    expect(spoken.slopeText(-0.1234)).toBe('12.3 % down');
    expect(spoken.slopeText(-0.0004)).toBe('level');
    expect([spoken.pitchRateText(NaN), spoken.slopeText(NaN)]).toEqual(['no value', 'no value']);
  });

  it('gives heights, distances and forces their units', () => {
    expect(spoken.heightText(-0.052)).toBe('-0.05 m');
    expect(spoken.distanceText(12.34)).toBe('12.3 m');
    expect(spoken.forceText(912.4)).toBe('912 N');
  });

  it('labels the axes of lean and road', () => {
    expect([4, 0, -2.5].map(spoken.leanTickText)).toEqual(['forward 4°', 'upright', 'back 2.5°']);
    expect([0.05, -0, -0.025, 20].map(spoken.heightTickText)).toEqual([
      'road 0.05 m',
      'road 0 m',
      'road -0.025 m',
      'road 20 m',
    ]);
  });
});

describe('quantities with units', () => {
  it('shows speed in km/h, and in mph on request', () => {
    expect(spoken.speedText(5)).toBe('18.0 km/h');
    // One international mile is 1609.344 m exactly (NIST SP 811, appendix B.8).
    expect(spoken.speedText(1609.344 / 60, 'mph')).toBe('60.0 mph');
  });

  it('shows currents, voltages, torques, times and shares', () => {
    expect(spoken.currentText(-41.26)).toBe('-41.3 A');
    expect(spoken.voltageText(55.08)).toBe('55.1 V');
    expect(spoken.torqueText(25)).toBe('25.0 Nm');
    expect(spoken.timeText(1.9)).toBe('1.90 s');
    expect(spoken.stretchText(0.0354)).toBe('35 ms');
    expect(spoken.shareText(0.125)).toBe('12.5 %');
  });

  it('does not let a small share read as none', () => {
    expect(spoken.shareText(0.0004)).toBe('under 0.1 %');
    expect(spoken.shareText(0)).toBe('0.0 %');
  });

  it('writes a plain hyphen, and none before zero', () => {
    expect(spoken.currentText(-3)).toBe('\u002d3.0 A');
    expect(spoken.currentText(-0.04)).toBe('0.0 A');
    expect(spoken.numberText(-0.004, 'timeS')).toBe('0.00');
    expect(spoken.tickText(-0.01)).toBe('0');
  });

  it('has words for a signal that does not settle and for a number that is none', () => {
    expect(spoken.settlingText(null)).toBe('not settled');
    expect(spoken.settlingText(0.314)).toBe('0.31 s');
    for (const speak of [spoken.pitchText, spoken.speedText, spoken.currentText, spoken.shareText]) {
      expect(speak(NaN)).toBe('no value');
      expect(speak(Infinity)).toBe('no value');
    }
  });
});
