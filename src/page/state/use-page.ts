import { createContext, useContext } from 'react';
import { useStore } from 'zustand';
import type { PageState } from './page-state.ts';
import type { PageStore } from './page-store.ts';

export const PageContext = createContext<PageStore | undefined>(undefined);

/** The page's store. Throws outside the page: a programmer's mistake. */
export function useStoreOfPage(): PageStore {
  const store = useContext(PageContext);
  if (!store) throw new Error('no page store');
  return store;
}

/** A part of the page's state; the component is drawn again when that part changes. */
export function usePage<T>(select: (state: PageState) => T): T {
  return useStore(useStoreOfPage().state, select);
}
