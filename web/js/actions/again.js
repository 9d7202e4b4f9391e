// Analyses that follow from the one that is open: with other values of the roof system, or with models at other places.

import {put, say} from '../dom.js';
import {set, state} from '../state.js';
import {go} from '../navigate.js';
import * as api from '../api.js';

/** Follows a run to its end and tells how it goes; whether it was done. */
async function finished(id, message) {
  const end = await api.follow(id, p => put(message, p.stage + '…')).end;
  if (end.state === 'done') return true;
  put(message, (await api.analysis(id)).problem?.detail ?? 'It was stopped.');
  return false;
}

/**
 * Computes the next revision with another roof system, opens it and shows what changed.
 * @param {object} system
 * @param {Element} message where its progress and its refusal are shown
 * @returns {Promise<boolean>} whether it was done
 */
export async function recompute(system, message, onDone) {
  put(message, 'Computing…');
  try {
    const from = state.analysis;
    const {id} = await api.recompute(from.id, system);
    if (!await finished(id, message)) return false;
    onDone();
    await go(id, 'order');
    const changes = await api.changes(from.id, id);
    set({changes, against: from.id, tab: 'order'});
    say('Computed again.');
    return true;
  } catch (e) {
    put(message, e.message);
    return false;
  }
}

/**
 * Analyses again with these placements, as the next revision, and shows it.
 * @param {{model: number, movement: string|null}[]} placements
 * @param {Element} message where its progress and its refusal are shown
 */
export async function placeModels(placements, message) {
  put(message, 'Placing…');
  try {
    const {id} = await api.place(state.analysis.id, placements);
    if (!await finished(id, message)) return;
    await go(id, 'findings');
    set({tab: 'findings'});
    say('Placed, and analysed again.');
  } catch (e) {
    put(message, e.message);
  }
}
