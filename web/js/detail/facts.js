// Facts as pairs of name and value, and the elements of the model behind them.

import {h, link, say} from '../dom.js';
import {filter, set, state} from '../state.js';
import {modelOf} from '../ledger/result.js';
import * as u from '../units.js';

/** @param {([string, *]|false|undefined)[]} rows */
export const facts = rows => h('dl', {class: 'facts'}, rows.filter(Boolean).map(([k, v]) => [h('dt', {}, k), h('dd', {}, v)]));

/** Facts whose names say too little to those who never saw a rule. */
const CALLED = {against: 'Ends at', faceCount: 'Faces', inclinationDegrees: 'Slope of the line', lowRiseDegrees: 'Least rise from the line',
  highRiseDegrees: 'Greatest rise from the line', foldDegrees: 'Fold between the faces', obliquityDegrees: 'Plan angle to the fall',
  otherObliquityDegrees: 'The same, other face', otherSlopeDegrees: 'Slope, other face', minSlopeDegrees: 'Flattest slope',
  widthAcrossFallM: 'Width across the fall', depthAlongFallM: 'Depth along the fall', neighbourClass: 'IFC class there',
  roofHole: 'Hole in the roof model', service: 'Part of the services', oblique: 'Runs askew', gapM: 'Gap in the model'};
const ENDS_AT = {face: 'another face', nothing: 'nothing: a free edge', round: 'a round penetration', opening: 'an opening', wall: 'a wall',
  penetration: 'a penetration'};

/** What was measured along a junction. */
export function measured(j) {
  const known = Object.entries(j.facts ?? {});
  const text = (k, v) => typeof v === 'boolean' ? (v ? 'yes' : 'no') : k === 'against' ? ENDS_AT[v] ?? v : u.byName(k, v);
  return known.length > 0
    && h('section', {}, h('h3', {}, 'Measured'), facts(known.map(([k, v]) => [CALLED[k] ?? u.words(k), text(k, v)])));
}

/** @param {string[]} ids GlobalIds */
export const elementsOf = ids => ids.length > 0
  && h('section', {}, h('h3', {}, 'In the model'), h('ul', {class: 'elements'}, ids.map(element)));

function element(id) {
  const e = state.ledger.elements.get(id), model = modelOf(state.ledger, e);
  const copy = async () => {
    await navigator.clipboard?.writeText(id);
    say(`${id} is on the clipboard.`);
  };
  const show = () => {
    filter('element', id);
    set({tab: 'ledger', pane: 'book'});
  };
  return h('li', {}, h('span', {}, e ? `${e.ifcClass} ${e.name}` : ''), ' ', model && [h('small', {class: 'of'}, model), ' '],
    h('code', {}, id), ' ', link('Copy', copy, {'aria-label': `Copy GlobalId ${id}`}), ' ',
    link('Its junctions', show, {'aria-label': `Show junctions of ${id}`}));
}
