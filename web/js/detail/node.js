// The detail panel of a point where lines meet: what it is, its drawing, its pieces in their order.

import {h, link, put} from '../dom.js';
import {set, state} from '../state.js';
import {kindText} from '../ledger/marks.js';
import {kindOf} from '../ledger/result.js';
import {fetchSheet, nodeDrawing, noSheet, openSheet} from '../parts/sheet.js';
import {hold, requirements} from './requirements.js';
import * as api from '../api.js';
import * as u from '../units.js';
import {written} from '../units/written.js';

/**
 * @param {import('../types.js').RoofNode} n
 * @param {Element|false} findings what there is to say about it
 */
export function nodePanel(n, findings) {
  const kind = state.ledger.nodeKinds.get(n.kind) ?? {label: n.kind};
  return [
    h('header', {class: 'detail-head'}, h('h2', {}, u.capital(kind.label)),
      link('×', () => set({selected: '', pane: 'book'}), {title: 'Close', 'aria-label': 'Close the node'})),
    h('p', {class: 'lead'}, kind.title, ' · faces ',
      n.faces.map((id, i) => [i ? ', ' : '', link(id, () => set({face: id, selected: ''}))])),
    findings, drawing(n),
    kind.note && h('section', {}, h('h3', {}, 'Order of work'), h('p', {}, written(kind.note))),
    lines(n), fetched(n), hold(kind),
    kind.source && h('p', {class: 'quiet'}, `Source: ${written(kind.source)}`)];
}

function lines(n) {
  const known = n.junctions.map(id => state.ledger.byId.get(id)).filter(Boolean);
  return h('section', {}, h('h3', {}, 'Lines that meet here'), h('ul', {}, known.map(j =>
    h('li', {}, link(`${kindText(kindOf(j))}, ${u.length(j.lengthM)}`, () => set({selected: j.id}))))));
}

function drawing(n) {
  const url = `${api.sectionAt(state.analysis.id, n.id)}?result=${(state.analysis.ledgerSha256 ?? '').slice(0, 12)}&units=${state.units}`;
  const title = `Node ${n.id}`, root = h('div', {class: 'section-figure'}, h('p', {class: 'quiet'}, 'Drawing the node…'));
  fetchSheet(state.ledger, url).then(text => {
    const host = h('div', {class: 'drawing-section', role: 'img', 'aria-label': `${title}, plan and oblique view`});
    const enlarge = () => openSheet(title, url, text);
    // For a pointer alone: keys have the button.
    host.addEventListener('click', enlarge);
    put(root, host, h('p', {class: 'doings'}, h('button', {on: {click: enlarge}}, 'Enlarge'), ' ',
      h('a', {href: url, target: '_blank', rel: 'noopener'}, 'The sheet to print, to scale')));
    nodeDrawing(host, text);
  }).catch(e => noSheet(root, e));
  return h('section', {'aria-label': 'Plan and oblique view'}, root);
}

function fetched(n) {
  const root = h('div', {}), known = state.ledger.whole.get(n.id);
  const fill = whole => put(root, requirements({...n, ...whole, facts: {}}));
  if (known) fill(known);
  else {
    api.junction(state.analysis.id, n.id).then(whole => {
      state.ledger.whole.set(n.id, whole);
      fill(whole);
    }).catch(e => put(root, h('p', {class: 'quiet'}, e.message)));
  }
  return root;
}
