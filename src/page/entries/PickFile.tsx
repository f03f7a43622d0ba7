import type { ReactNode, Ref } from 'react';

/** A file to be chosen, opened by a button of its own: unseen, and out of the way of the keyboard. */
export function PickFile(props: {
  readonly ref: Ref<HTMLInputElement>;
  readonly accept: string;
  readonly label: string;
  readonly testId: string;
  readonly onPick: (file: File) => void;
}): ReactNode {
  const { ref, accept, label, testId, onPick } = props;
  return (
    <input
      ref={ref}
      type="file"
      accept={accept}
      className="unseen"
      tabIndex={-1}
      aria-label={label}
      data-testid={testId}
      onChange={(event) => {
        const file = event.currentTarget.files?.[0];
        // The same file may be chosen again.
        event.currentTarget.value = '';
        if (file) onPick(file);
      }}
    />
  );
}
