/** What a page can learn of where it stands and what the browser keeps for it. */
export interface Place {
  readonly framed: boolean;
  /** Writes and reads a value in the page's own storage; throws where there is none. */
  readonly probe: () => boolean;
  /** Whether this page may use what it keeps as a page of its own site (Storage Access API); null: the browser does not say. */
  readonly hasAccess: () => Promise<boolean | null>;
  /** Whether the browser promised not to clear it (Storage Standard). */
  readonly isPersisted: () => Promise<boolean>;
}

const PROBE = 'placeweave-probe';

export const ownPlace = (): Place => ({
  framed: window.self !== window.top,
  probe: () => {
    localStorage.setItem(PROBE, PROBE);
    const kept = localStorage.getItem(PROBE) === PROBE;
    localStorage.removeItem(PROBE);
    return kept;
  },
  hasAccess: async () => (await document.hasStorageAccess?.()) ?? null,
  isPersisted: async () => (await navigator.storage?.persisted?.()) ?? false,
});

/**
 * Whether what this page keeps may vanish because it stands in a frame: the browser gives the frame no storage, or one
 * apart from that of the site, which some browsers clear when they are closed, and promised nothing. What is not known
 * is not claimed; nothing is asked of the child to find it out. In a tab there is no better place to go to.
 */
export const mayForget = async (place: Place): Promise<boolean> => {
  if (!place.framed) return false;
  try {
    if (!place.probe()) return true;
  } catch {
    return true;
  }
  try {
    return (await place.hasAccess()) === false && !(await place.isPersisted());
  } catch {
    return false;
  }
};
