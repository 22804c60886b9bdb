/**
 * What does a first-ride plan consist of? Sections of lines, each of them for one thing.
 */

/** What a line of a section is for. */
export type PlanItemKind = 'set' | 'check' | 'expect' | 'stop' | 'know';

/** One line of a section. */
export interface PlanItem {
  kind: PlanItemKind;
  text: string;
}

/** A section of the plan. */
export interface PlanSection {
  title: string;
  items: PlanItem[];
}

/** What is to be set. */
export const set = (text: string): PlanItem => ({ kind: 'set', text });
/** What is to be done and ticked off. */
export const check = (text: string): PlanItem => ({ kind: 'check', text });
/** What is to be expected. */
export const expect = (text: string): PlanItem => ({ kind: 'expect', text });
/** What ends it. */
export const stop = (text: string): PlanItem => ({ kind: 'stop', text });
/** What is to be known. */
export const know = (text: string): PlanItem => ({ kind: 'know', text });
