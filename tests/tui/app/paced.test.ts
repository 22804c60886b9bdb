/** Is the newest news told in the end, and never sooner after the last than it should be? */
import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { paced } from '../../../src/tui/app/paced.js';

beforeEach(() => {
  vi.useFakeTimers();
});

afterEach(() => {
  vi.useRealTimers();
});

/** Paced news 100 ms apart, and what was heard so far. */
function listening() {
  const heard: number[] = [];
  return { news: paced<number>(100, (number) => heard.push(number)), heard };
}

it('tells the first at once, and of those that follow only the newest', () => {
  const { news, heard } = listening();
  [1, 2, 3].forEach((number) => news.tell(number));
  expect(heard).toEqual([1]);
  vi.advanceTimersByTime(99);
  expect(heard).toEqual([1]);
  vi.advanceTimersByTime(1);
  expect(heard).toEqual([1, 3]);
  vi.advanceTimersByTime(1000);
  expect(heard).toEqual([1, 3]);
  news.tell(4);
  expect(heard).toEqual([1, 3, 4]);
});

it('tells at once what cannot wait, and the one before no more', () => {
  const { news, heard } = listening();
  news.tell(1);
  news.tell(2);
  news.tell(3, true);
  vi.advanceTimersByTime(1000);
  expect(heard).toEqual([1, 3]);
});

it('tells nothing after it was stopped', () => {
  const { news, heard } = listening();
  news.tell(1);
  news.tell(2);
  news.stop();
  vi.advanceTimersByTime(1000);
  expect(heard).toEqual([1]);
});
