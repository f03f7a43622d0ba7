import type { ReactNode } from 'react';

/** No gear yet, or none worked out yet. */
export function EmptyTrain({ isWorking }: { readonly isWorking: boolean }): ReactNode {
  return (
    <div className="frame-empty" aria-busy={isWorking}>
      <p>
        {isWorking
          ? 'The train is being worked out …'
          : 'No gear stands here yet. Add one: its post is drawn first.'}
      </p>
    </div>
  );
}
