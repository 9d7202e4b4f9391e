// Manual overrides of kinds and details. The service computes the result again with them, in place; the page then takes the new numbers
// and shows what became different.

import {say} from '../dom.js';
import {set, state, watch} from '../state.js';
import {index} from '../ledger/result.js';
import {compareQuantities} from '../ledger/amounts.js';
import * as api from '../api.js';

const LOOK_EVERY_MS = 15_000;

/** The state of the page from a result and what was said about it. */
export const resultState = (raw, said) => ({
  ledger: index(raw),
  reviews: new Map(said.reviews.map(r => [r.junction, r])),
  marks: new Map(said.findings.map(m => [m.place, m])),
});

/** Whether saving a review changed what is overridden. */
export const changesOverride = (was, now) =>
  was.kind !== now.kind || was.detail !== now.detail || was.stale === true || (now.kind || now.detail) && was.reason !== now.reason;

/** Waits until the result follows the override of a junction, takes it, and notes what it changed. */
export async function follow(junction) {
  const id = state.analysis.id, before = state.ledger.raw.quantities;
  set({overriding: junction, effect: null});
  let analysis;
  do {
    await api.follow(id, () => {}).end;
    analysis = await api.analysis(id);
  } while (!analysis.decisions.followed && !analysis.decisions.problem);
  if (state.analysis?.id !== id) return;
  if (analysis.decisions.problem) {
    set({overriding: '', effect: {junction, problem: analysis.decisions.problem}});
    return;
  }
  await refresh(analysis);
  set({overriding: '', effect: {junction, quantities: compareQuantities(before, state.ledger.raw.quantities)}});
  say('The order is computed with it.');
}

async function refresh(analysis) {
  const [raw, said] = await Promise.all([api.outline(analysis.id), api.reviews(analysis.id)]);
  set({analysis, ...resultState(raw, said), overrideChanges: null});
}

/** Fetches what all overrides together change against the rules alone. */
export async function loadChanges() {
  const id = state.analysis.id, hash = state.analysis.ledgerSha256;
  const changes = await api.changes('rules', id).catch(() => null);
  if (changes && state.analysis?.id === id && state.analysis.ledgerSha256 === hash) set({overrideChanges: changes});
}

async function lookForOthers() {
  if (document.hidden || !state.ledger || state.overriding) return;
  const id = state.analysis.id, now = await api.analysis(id).catch(() => null);
  const isStillHere = state.analysis?.id === id && !state.overriding && now?.state === 'done';
  if (!isStillHere || !now.decisions.followed || now.ledgerSha256 === state.analysis.ledgerSha256) return;
  await refresh(now);
  set({news: 'Another user changed this; totals are updated.'});
  say(state.news);
}

/** Other users override, too: their numbers are taken as soon as they are there. */
export function watchOthers() {
  setInterval(lookForOthers, LOOK_EVERY_MS);
  addEventListener('focus', lookForOthers);
  watch(['analysis'], () => {
    if (state.news && !state.ledger) set({news: ''});
  });
}
