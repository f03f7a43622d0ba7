import { useState } from 'react';

/** The value before the last change; undefined until it has changed once. */
export function useBefore<T>(now: T): T | undefined {
  const [kept, keep] = useState<{ readonly now: T; readonly before: T | undefined }>({
    now,
    before: undefined,
  });
  if (kept.now === now) return kept.before;
  keep({ now, before: kept.now });
  return kept.now;
}
