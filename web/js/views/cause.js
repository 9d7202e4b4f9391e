// Where a finding is: the lines and nodes that it is about, and its elements with what names them in the model.

import {h, link, say} from '../dom.js';
import {set, state} from '../state.js';
import {kindText} from '../ledger/marks.js';
import {kindOf} from '../ledger/result.js';
import * as u from '../units.js';

const FEW = 3, MOST = 200;

/** The lines and nodes of a finding, folded in where there are more than a few. */
export function places(ids) {
  if (!ids.length) return null;
  const list = h('span', {class: 'places'}, ids.slice(0, MOST).map(place),
    ids.length > MOST && h('small', {}, `and ${u.count(ids.length - MOST)} more`));
  return ids.length <= FEW ? list : h('details', {}, h('summary', {}, `${u.count(ids.length)} places`), list);
}

function place(id) {
  const {byId, nodes, nodeKinds} = state.ledger, j = byId.get(id), n = nodes.get(id);
  const text = j ? `${kindText(kindOf(j))}, ${u.length(j.lengthM)}` : u.capital(nodeKinds.get(n.kind)?.label ?? n.kind);
  return [link(text, () => set({selected: id, places: null, pane: 'detail'})), ' '];
}

/** Class, name, storey, model and GlobalId of each element; what names one is copied by a click. */
export function elements(f) {
  const list = elementsOfFinding(f);
  if (!list.length) return null;
  const isOne = (state.ledger.raw.models ?? []).length < 2;
  const item = e => h('li', {}, [e.class, e.name, e.storey, !isOne && e.file].filter(Boolean).join(' · '), ' ',
    copied(e.globalId));
  const title = list.length === 1 ? `1 element: ${list[0].name || list[0].globalId}` : `${u.count(list.length)} elements`;
  return h('details', {}, h('summary', {}, title),
    h('ul', {class: 'elements'}, list.slice(0, MOST).map(item),
      list.length > MOST && h('li', {}, h('small', {}, `and ${u.count(list.length - MOST)} more`))));
}

/** What names the elements of a finding in the model. */
export const elementsOfFinding = f =>
  f.elementDetails ?? (f.elements ?? []).map(id => ({globalId: id, class: state.ledger.elements.get(id)?.ifcClass,
    name: state.ledger.elements.get(id)?.name}));

/** A GlobalId, to copy. */
export function copied(id) {
  const copy = async () => {
    await navigator.clipboard?.writeText(id).catch(() => {});
    say(`${id} is on the clipboard.`);
  };
  return [h('code', {}, id), ' ', link('Copy', copy, {'aria-label': `Copy GlobalId ${id}`})];
}
