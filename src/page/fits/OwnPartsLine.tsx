import type { ReactNode } from 'react';
import { usePage, useStoreOfPage } from '../state/use-page.ts';

/** Whether the person's own parts were looked through. */
export function OwnPartsLine(): ReactNode {
  const store = useStoreOfPage();
  const parts = usePage((state) => state.parts);
  return (
    <section>
      <h3 className="why-title">Your own parts</h3>
      <p>
        {parts.length === 0
          ? 'None are listed here yet: what lies in your drawers can’t be looked through.'
          : `Looked through: ${parts.map((one) => one.name).join(', ')}.`}
      </p>
      <div className="entry-row">
        <button type="button" onClick={() => store.show('parts')}>
          My spare parts
        </button>
      </div>
    </section>
  );
}
