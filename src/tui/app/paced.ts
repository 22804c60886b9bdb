/**
 * How does news that comes faster than anyone reads stay out of the way of keys? Only the newest is told, and not too often.
 */

/** News on its way to a listener. */
export interface Paced<T> {
  /** Tells the news: now, if the last was told long enough ago or `atOnce` says so, else as soon as it was. */
  tell: (news: T, atOnce?: boolean) => void;
  /** Tells nothing more. */
  stop: () => void;
}

/** Tells `hear` the newest news, `gapMs` apart at least. */
export function paced<T>(gapMs: number, hear: (news: T) => void): Paced<T> {
  let timer: NodeJS.Timeout | undefined;
  let newest: { news: T } | null = null;
  let toldMs = -Infinity;
  const tellNewest = () => {
    clearTimeout(timer);
    timer = undefined;
    const { news } = newest!;
    newest = null;
    hear(news);
    toldMs = performance.now(); // after the hearing, which may take long
  };
  return {
    tell: (news, atOnce = false) => {
      newest = { news };
      const waitMs = toldMs + gapMs - performance.now();
      if (atOnce || waitMs <= 0) tellNewest();
      else timer ??= setTimeout(tellNewest, waitMs);
    },
    stop: () => {
      clearTimeout(timer);
      timer = undefined;
      newest = null;
    },
  };
}
