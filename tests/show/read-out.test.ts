import { describe, expect, it } from 'vitest';
import { readOut } from '../../src/show/read-out.js';
import { CEILINGS } from '../../src/simulate/tape.js';
import { sampleTrace } from './sample-trace.js';

const RAD = Math.PI / 180;

/** The read-out of row 1600 (2 s) as a record of its names, after changes to that row. */
function readAt(
  changes: Partial<Record<keyof ReturnType<typeof sampleTrace>['tape']['columns'], number>> = {},
) {
  const view = sampleTrace();
  const { columns } = view.tape;
  for (const [name, value] of Object.entries(changes)) columns[name as keyof typeof columns][1600] = value;
  return Object.fromEntries(readOut(view, 1600, 'km/h').map(({ name, text }) => [name, text]));
}

describe('the read-out', () => {
  it('says every value in words, with units', () => {
    const read = readAt({
      pitchRad: 3.1 * RAD,
      pitchRateRadPerS: -12 * RAD,
      setPointRad: -0.5 * RAD,
      leanRad: 2 * RAD,
      speedMPerS: 12.3 / 3.6,
      askedCurrentA: 41.23,
      requestedCurrentA: 41.23,
      currentA: 40.9,
      upperCeilingA: 74,
      bindingCeiling: 0,
      feetAccelerationMPerS2: -1.234,
    });
    expect(read).toEqual({
      time: '2.00 s',
      pitch: 'nose down 3.1°',
      lean: 'forward 2.0°',
      speed: '12.3 km/h',
      current: '40.9 A',
      request: '41.2 A',
      'cut by': 'nothing',
      headroom: '50.0 %',
      event: 'kerb 1.00 s ago',
      'set-point': 'nose up 0.5°',
      road: '-0.05 m, level',
      'pitch rate': '12.0°/s nose up',
      pack: '60.2 V, 12.3 A out',
      'feet push': '4.5 Nm, nose down',
      feet: 'both carry',
      'feet shake': '1.23 m/s2 down',
      'wheel load': '912 N',
      charge: '80.0 %',
      ceilings: '-80.0 to 74.0 A',
      place: '8.4 m',
    });
  });

  it('names the ceiling that cut the request, and to what', () => {
    const cut = { askedCurrentA: 95, requestedCurrentA: 38.2, bindingCeiling: CEILINGS.indexOf('pack out') };
    const read = readAt(cut);
    expect([read['request'], read['cut by']]).toEqual(['95.0 A', 'pack out to 38.2 A']);
  });

  it('tells the way of what has a way, and none for nothing', () => {
    expect(readAt({ packCurrentA: -3 })['pack']).toBe('60.2 V, 3.0 A in');
    expect(readAt({ packCurrentA: 0.01 })['pack']).toBe('60.2 V, 0.0 A');
    expect(readAt({ riderTorqueNm: 12 })['feet push']).toBe('12.0 Nm, nose up');
    expect(readAt({ riderTorqueNm: 0 })['feet push']).toBe('0.0 Nm');
    expect(readAt({ riderTorqueNm: -80 })['feet']).toBe('one is light');
    expect(readAt({ pitchRateRadPerS: 5 * RAD })['pitch rate']).toBe('5.0°/s nose down');
    expect(readAt({ pitchRateRadPerS: 0 })['pitch rate']).toBe('steady');
    expect(readAt({ wheelLoadN: 0 })['wheel load']).toBe('none, in the air');
  });

  it('counts from the last event, and knows that there was none', () => {
    const view = sampleTrace();
    const eventAt = (row: number) => readOut(view, row, 'km/h').find(({ name }) => name === 'event')?.text;
    expect(eventAt(0)).toBe('none yet');
    expect(eventAt(799)).toBe('none yet');
    expect(eventAt(800)).toBe('kerb 0.00 s ago');
    expect(eventAt(1000)).toBe('kerb 0.25 s ago');
  });

  it('has the most telling first, and nothing off the tape', () => {
    const view = sampleTrace();
    expect(
      readOut(view, 0, 'mph')
        .slice(0, 5)
        .map(({ name }) => name),
    ).toEqual(['time', 'pitch', 'lean', 'speed', 'current']);
    expect(readOut(view, 0, 'mph')[3]?.text).toBe('9.4 mph');
    expect(readOut(view, -1, 'km/h')).toEqual([]);
    expect(readOut(view, view.tape.length, 'km/h')).toEqual([]);
  });

  it('has words for what is no number', () => {
    const read = readAt({ pitchRad: NaN, packCurrentA: NaN, riderTorqueNm: NaN, positionM: NaN });
    expect(Object.values(read).join(' ')).not.toMatch(/NaN|undefined|Infinity/);
    expect(read['pitch']).toBe('no value');
  });
});
