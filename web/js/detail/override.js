// What is overridden at the chosen junction, what waits, and what the last override changed.

import {h} from '../dom.js';
import {state} from '../state.js';
import {kindText} from '../ledger/marks.js';
import {byRules, titleOf} from '../ledger/result.js';
import {amounts} from '../parts/differences.js';

/**
 * @param {import('../types.js').Junction} j
 * @param {import('../types.js').Review} [r]
 */
export function overrideNotes(j, r) {
  return [
    j.decided && h('p', {class: 'overridden'}, `✎ Manual override: ${overridden(j)}. Reason: ${j.decided.reason}.`),
    r?.stale && h('p', {class: 'overridden stale', role: 'status'}, `✎ Needs a new look: before this revision a user chose ${chosen(r)} `
      + `(${r.reason}), but the line has changed since. The rules’ choice stands until you save the review again.`),
    state.overriding === j.id && h('p', {class: 'overridden', role: 'status'}, 'Computing the order with this override…'),
  ];
}

/** What the last override of this line changed. */
export const overrideEffect = j => state.effect?.junction === j.id && effect();

function overridden(j) {
  const rules = byRules(j), d = j.decided, title = id => titleOf(state.ledger, id).split(/[:;(]/)[0].trim();
  return [d.kind && `kind ${kindText(d.kind)} (the rules say ${kindText(rules.kind)})`,
    d.detail && `detail ${title(d.detail)} (the rules say ${title(rules.detail) || 'none'})`].filter(Boolean).join(', ');
}

const chosen = r => [r.kind && `kind ${kindText(r.kind)}`, r.detail && `detail ${titleOf(state.ledger, r.detail)}`]
  .filter(Boolean).join(' and ');

function effect() {
  const e = state.effect;
  if (e.problem) {
    return h('p', {class: 'refused', role: 'alert'}, `The override is kept, but the result could not be computed with it: ${e.problem}`);
  }
  return h('section', {class: 'changed effect'}, h('h3', {}, 'What your override changed in the order'),
    h('div', {class: 'scroll'}, amounts(e)));
}
