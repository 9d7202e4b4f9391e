// The ways from one analysis to another. Views ask for them here; the program's beginning says how they are done.

let ways = {open: async () => {}, home: async () => {}};

/**
 * Sets how an analysis is opened and how the start page is shown.
 * @param {{open: (id: string) => Promise<void>, home: () => Promise<void>}} handlers
 */
export function onNavigate(handlers) {
  ways = handlers;
}

/** Opens an analysis at the address that stands there already. */
export const open = id => ways.open(id);

/** Goes to the start page. */
export const home = () => ways.home();

/**
 * Opens an analysis as a new step of the browser's history.
 * @param {string} id
 * @param {string} [tab] the page of the ledger to open it at
 */
export function go(id, tab) {
  history.pushState(null, '', '?analysis=' + encodeURIComponent(id) + (tab ? '&tab=' + tab : ''));
  return ways.open(id);
}
