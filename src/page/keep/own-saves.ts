interface Chain {
  readonly from: number;
  readonly to: number;
}

/** Which revisions of each job are this window's own, one straight after the other. */
export interface OwnSaves {
  /**
   * The newest revision that a window's job stands on. A window goes on typing while a save is under way, so the
   * revision that it knows may be one of its own that it has saved over already.
   */
  readonly baseOf: (id: string, revision: number) => number;
  readonly note: (id: string, base: number, saved: number) => void;
}

export function createOwnSaves(): OwnSaves {
  const chains = new Map<string, Chain>();
  return {
    baseOf(id, revision) {
      const chain = chains.get(id);
      return chain && revision >= chain.from && revision <= chain.to ? chain.to : revision;
    },
    note(id, base, saved) {
      const chain = chains.get(id);
      chains.set(id, { from: chain?.to === base ? chain.from : base, to: saved });
    },
  };
}
