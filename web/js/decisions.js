// Kinds and details that people choose by hand. The service computes the result again with them, in place; the page then takes the new
// numbers and shows what became different.

import {h, say} from './dom.js';
import {set, state, watch, filter} from './state.js';
import {kindText} from './marks.js';
import {index} from './ledger.js';
import {amounts} from './revisions.js';
import * as api from './api.js';
import * as u from './units.js';

const LOOK_EVERY = 15_000;

/** What the rules say of a junction, whoever chose its kind and detail. */
export const byRules = j => j.decided?.byRules ?? {kind: j.kind, detail: j.detail};

/** Whether saving a review changed what is chosen by hand. */
export const decidesAnew = (was, now) => was.kind !== now.kind || was.detail !== now.detail || was.stale === true || (now.kind || now.detail) && was.reason !== now.reason;

/** Waits until the result follows the decision, takes it, and notes what it changed. */
export async function follow(junction) {
  const id = state.analysis.id, before = state.ledger.raw.quantities;
  set({deciding: junction, effect: null});
  let analysis;
  do {
    await api.follow(id, () => {}).end;
    analysis = await api.analysis(id);
  } while (!analysis.decisions.followed && !analysis.decisions.problem);
  if (state.analysis?.id !== id) return;
  if (analysis.decisions.problem) {
    set({deciding: '', effect: {junction, problem: analysis.decisions.problem}});
    return;
  }
  await refresh(analysis);
  set({deciding: '', effect: {junction, quantities: difference(before, state.ledger.raw.quantities)}});
  say('The order is computed with it.');
}

async function refresh(analysis) {
  const [raw, said] = await Promise.all([api.outline(analysis.id), api.reviews(analysis.id)]);
  set({analysis, ledger: index(raw), reviews: new Map(said.reviews.map(r => [r.junction, r])), marks: new Map(said.findings.map(m => [m.place, m])), handChanges: null});
}

/** Numbers of two orders by their path, as the service compares revisions. */
function difference(before, after) {
  const a = numbers(before), b = numbers(after);
  return [...new Set([...Object.keys(a), ...Object.keys(b)])].map(name => ({name, before: a[name] ?? null, after: b[name] ?? null}));
}

function numbers(node, path = '', into = {}) {
  for (const [k, v] of Object.entries(node ?? {})) {
    const name = path ? `${path}.${k}` : k;
    if (typeof v === 'number') into[name] = v;
    else if (v && typeof v === 'object' && !Array.isArray(v)) numbers(v, name, into);
  }
  return into;
}

/** For the slip: what is chosen here, what waits, and what the last decision changed. */
export function handNotes(j, r) {
  const rules = byRules(j), d = j.decided;
  return [
    d && h('p', {class: 'hand'}, `✎ Decided by hand: ${[d.kind && `kind ${kindText(d.kind)} (the rules say ${kindText(rules.kind)})`, d.detail && `detail ${titleOf(d.detail)} (the rules say ${titleOf(rules.detail) || 'none'})`].filter(Boolean).join(', ')}. Reason: ${d.reason}.`),
    r?.stale && h('p', {class: 'hand stale', role: 'status'}, `✎ Needs a new look: before this revision somebody chose ${[r.kind && `kind ${kindText(r.kind)}`, r.detail && `detail ${titleOf(r.detail)}`].filter(Boolean).join(' and ')} (${r.reason}), but the line has changed since. The rules’ choice stands until you save the review again.`),
    state.deciding === j.id && h('p', {class: 'hand', role: 'status'}, 'Computing the order with this decision…'),
    state.effect?.junction === j.id && effect(),
  ];
}

function effect() {
  const e = state.effect;
  if (e.problem) return h('p', {class: 'refused', role: 'alert'}, `The decision is kept, but the result could not be computed with it: ${e.problem}`);
  return h('section', {class: 'changed effect'}, h('h3', {}, 'What your decision changed in the order'), h('div', {class: 'scroll'}, amounts(e) ?? h('p', {}, 'No number of the order changed.')));
}

export const titleOf = id => !id || id === 'none' ? 'none' : state.ledger.details.get(id)?.title ?? state.ledger.choices.get(id) ?? id;

/** Details to choose from: all that the rules know, and none. */
export const detailOptions = () => [...[...state.ledger.choices].sort((a, b) => a[1].localeCompare(b[1], 'en')), ['none', 'None: not part of this job']];

/** For the order: everything that is chosen by hand and what all of it together changes, with the file for the command line. */
export function handSection() {
  const decided = state.ledger.junctions.filter(j => j.decided);
  if (!decided.length && !state.analysis.decisions?.stale) return null;
  if (!state.handChanges) loadChanges();
  return h('section', {class: 'by-hand'}, h('h2', {}, 'Chosen by hand'),
    decided.length > 0 && h('ul', {}, decided.map(j => h('li', {}, h('button', {class: 'link', on: {click: () => set({selected: j.id})}}, `${kindText(j.kind)}, ${u.length(j.lengthM)}`), `: ${j.decided.reason}`))),
    staleCount() > 0 && h('p', {class: 'hand'}, staleLink()),
    decided.length > 0 && h('p', {}, h('a', {href: api.decisionsAt(state.analysis.id), download: 'decisions.json'}, 'Decisions as a file'), ' for ', h('code', {}, 'seamledger analyze MODEL --decisions decisions.json')),
    state.handChanges && h('section', {class: 'changed'}, h('h3', {}, 'What they change against the rules alone'), amounts(state.handChanges) ?? h('p', {}, 'No number of the order.')));
}

async function loadChanges() {
  const id = state.analysis.id, hash = state.analysis.ledgerSha256;
  const changes = await api.changes('rules', id).catch(() => null);
  if (changes && state.analysis?.id === id && state.analysis.ledgerSha256 === hash) set({handChanges: changes});
}

const staleCount = () => [...state.reviews.values()].filter(r => r.stale).length;

/** Leads to the decisions that came over to lines that changed. */
export function staleLink() {
  const n = staleCount();
  return n > 0 && h('button', {class: 'link hand', on: {click: () => { filter('hand', 'stale'); set({tab: 'ledger'}); }}}, `${n} ${n === 1 ? 'decision needs' : 'decisions need'} a new look`);
}

/** Other people decide, too: their numbers are taken as soon as they are there. */
async function lookForOthers() {
  if (document.hidden || !state.ledger || state.deciding) return;
  const id = state.analysis.id, now = await api.analysis(id).catch(() => null);
  if (state.analysis?.id !== id || state.deciding || now?.state !== 'done' || !now.decisions.followed || now.ledgerSha256 === state.analysis.ledgerSha256) return;
  await refresh(now);
  set({news: 'Somebody else decided by hand: these are the new numbers.'});
  say(state.news);
}

setInterval(lookForOthers, LOOK_EVERY);
addEventListener('focus', lookForOthers);
watch(['analysis'], () => { if (state.news && !state.ledger) set({news: ''}); });
