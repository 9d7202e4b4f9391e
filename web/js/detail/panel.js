// The detail panel of the chosen junction: what it is, why, what it requires, how each number came about, and what a user says about it.

import {h, link, put} from '../dom.js';
import {filter, set, state, watch} from '../state.js';
import {SEALS, SEVERITY, kindText} from '../ledger/marks.js';
import {detailOf, junctionsOf, kindOf, titleOf} from '../ledger/result.js';
import {alongLine} from '../parts/bars.js';
import {adviceOf, reasonOf, restOf, titleOf as findingTitle} from '../parts/findingwords.js';
import {swatch} from '../parts/legend.js';
import {remarks} from '../parts/remarks.js';
import {elementsOf, facts} from './facts.js';
import {nodePanel} from './node.js';
import {overrideEffect, overrideNotes} from './override.js';
import {hold, requirements} from './requirements.js';
import {review} from './review.js';
import {section} from './section.js';
import * as api from '../api.js';
import * as u from '../units.js';

export function mountDetailPanel(root) {
  const draw = () => state.ledger && put(root, content());
  watch(['selected', 'ledger', 'units', 'reviews', 'marks', 'face', 'overriding', 'effect'], changed => {
    if (!root.isConnected) return;
    // A note that is being written stays: only what stands around it would be drawn anew.
    const isWriting = root.contains(document.activeElement) && document.activeElement.matches('textarea, input');
    if (isWriting && !changed.has('selected') && !changed.has('units')) return;
    draw();
    if (changed.has('selected')) root.scrollTop = 0;
  });
  draw();
}

function content() {
  const j = state.ledger.byId.get(state.selected), f = state.ledger.faces.get(state.face);
  const n = state.ledger.nodes.get(state.selected);
  return j ? junction(j) : n ? nodePanel(n, findingsOf(n)) : f ? face(f) : nothing();
}

function nothing() {
  const all = state.ledger.junctions;
  const longest = all.length > 0 && all.reduce((a, b) => b.lengthM > a.lengthM ? b : a);
  return h('div', {class: 'empty'}, h('h2', {}, 'No junction chosen'),
    h('p', {}, 'Pick a line in the plan or in 3-D, or a row of the ledger. Its drawing, its reasons and everything that it requires '
      + 'appear here.'),
    longest && h('p', {}, h('button', {on: {click: () => set({selected: longest.id})}},
      `Begin with the longest: ${kindText(longest.kind).toLowerCase()}, ${u.length(longest.lengthM)}`)));
}

const compass = az => `${['N', 'NE', 'E', 'SE', 'S', 'SW', 'W', 'NW'][Math.round(az / 45) % 8]} (${u.degrees(az)})`;

/** @param {import('../types.js').Face} f */
function face(f) {
  const close = link('×', () => set({face: '', pane: 'book'}), {title: 'Close', 'aria-label': 'Close the face'});
  const rows = [['Slope', `${u.degrees(f.slopeDegrees)} · ${f.risePer12?.toFixed(2)}:12`], ['Falls towards', compass(f.fallAzimuthDegrees)],
    ['Area', u.area(f.areaM2)], ['Plan area', u.area(f.planAreaM2)], ['Perimeter', u.run(f.perimeterM)],
    f.seams && ['Seams', `${u.count(f.seams.count)}, ${u.run(f.seams.lengthM)}`], f.curved && ['Form', 'Curved']];
  const show = () => {
    filter('face', f.id);
    set({tab: 'ledger', pane: 'book'});
  };
  return [h('header', {class: 'detail-head'}, h('h2', {}, `Roof face ${f.id}`), close), facts(rows),
    h('p', {}, h('button', {on: {click: show}}, 'Show its junctions')),
    elementsOf(f.elements)];
}

/** @param {import('../types.js').Junction} j */
function junction(j) {
  const r = state.reviews.get(j.id), detail = detailOf(j);
  const close = () => set({selected: '', pane: 'book'});
  return [
    h('header', {class: 'detail-head'}, swatch(j.seal),
      h('h2', {}, kindText(kindOf(j)), ' ', h('span', {class: 'length'}, u.length(j.lengthM))),
      link('×', close, {title: 'Close', 'aria-label': 'Close the junction'})),
    !j.isJoint && overrideNotes(j, r),
    h('p', {class: 'lead'}, SEALS[j.seal].text, detail && [' · ', h('b', {title: detail}, titleOf(state.ledger, detail))],
      j.isJoint ? ' · within face ' : ' · faces ', j.faces.map((id, i) => [i ? ', ' : '', link(id, () => set({face: id, selected: ''}))])),
    section(j),
    !j.isJoint && overrideEffect(j),
    findingsOf(j),
    fetched(j), hold(j), !j.isJoint && alongLine(j), elementsOf(j.elements), !j.isJoint && review(j, r)];
}

/** What a junction requires comes when it is looked at; only its own place is filled then, so that what is written below stays. */
function fetched(j) {
  const ledger = state.ledger, root = h('div', {}), known = ledger.whole.get(j.id);
  const fill = whole => put(root, requirements({...j, ...whole}));
  if (known) {
    fill(known);
    return root;
  }
  put(root, h('p', {class: 'quiet'}, 'Fetching what it requires…'));
  api.junction(state.analysis.id, j.id).then(whole => {
    ledger.whole.set(j.id, whole);
    fill(whole);
  }).catch(e => put(root, h('p', {class: 'quiet'}, e.message)));
  return root;
}

const findingsOf = j => j.found.length > 0 && [h('ul', {class: 'notes'}, j.found.map(f => finding(f, j.id))),
  h('p', {}, link('In the list of findings', () => set({tab: 'findings', findingsAt: j.id, pane: 'book'})))];

/**
 * @param {import('../types.js').Finding} f
 * @param {string} id of the line or node whose panel this is
 */
function finding(f, id) {
  const all = junctionsOf(f), isElsewhere = all.length > 1 && all[0] !== id && /\d/.test(f.message);
  const isAccepted = state.marks.get(f.place)?.state === 'accepted';
  return h('li', {class: f.severity + (isAccepted ? ' accepted' : '')},
    h('b', {}, `${SEVERITY[f.severity]?.sign ?? ''} ${findingTitle(f)}`),
    h('p', {}, [restOf(f), adviceOf(f)].filter(Boolean).join(' '), f.reason && h('small', {}, ` ${reasonOf(f)}`),
      isElsewhere && h('small', {}, ` Its numbers are those of another of its ${u.count(all.length)} places.`),
      h('small', {}, ` ${f.code}`)), remarks(f));
}
