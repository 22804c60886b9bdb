/**
 * Do the sentences of a run say what was measured, and say so where nothing was?
 */
import { describe, expect, it } from 'vitest';
import { currentSentence, pitchSentence } from '../../src/show/run-sentences.js';
import { sampleView } from './sample-run.js';

const { facts } = sampleView();

describe('a run that never came to its event', () => {
  const missed = { ...facts, isMeasured: false, eventName: 'root' };

  it('is said to have measured nothing, whatever the numbers say', () => {
    expect(pitchSentence(missed, { kind: 'nose strike', atS: 1.2 })).toBe(
      'The run never came to the root, from which pitch is measured; outcome: nose strike.',
    );
    expect(currentSentence(missed)).toBe('Current was not measured.');
  });

  it('is told apart from one that did', () => {
    expect(pitchSentence({ ...facts, eventName: 'root' }, { kind: 'nose strike', atS: 1.2 })).toContain(
      'after the root; outcome: nose strike',
    );
    expect(currentSentence(facts)).toContain('Current peaks at');
  });
});
