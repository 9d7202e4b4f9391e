// The panels of a result: a part of its own, fetched once where something shows them.

import {a, call} from '../api.js';

/** Fetches the panels of a result into it, however many ask for them. */
export async function withPanels(ledger, id) {
  ledger.panelsAsked ??= call('GET', a(id) + '/panels').catch(() => []);
  ledger.panels = await ledger.panelsAsked;
}
