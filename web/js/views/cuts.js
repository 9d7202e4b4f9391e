// The pieces to cut, folded away and fetched when somebody unfolds them: the shop takes them from the list.

import {h, put, scrolling, table} from '../dom.js';
import {state} from '../state.js';
import {fetchSheet, noSheet, openSheet} from '../parts/sheet.js';
import * as api from '../api.js';
import {count} from '../units.js';

const MOST_CUTS = 300;
const HEADS = {part: 'Part', face: 'Face', junction: 'Junction', pieces: 'Pieces', widthM: 'Width, m', widthIn: 'Width, in',
  lengthM: 'Length, m', lengthIn: 'Length, in', lowBevelDegrees: 'Bevel low, °', highBevelDegrees: 'Bevel high, °', note: 'Note',
  profile: 'Folded profile, legs and bends'};
const isNumber = head => /pieces|(M|In|Degrees)$/.test(head);

/** @param {object} q quantities of the result; nothing where they have no panels */
export function cutList(q) {
  if (!q.panelSum?.count) return null;
  const body = h('div', {}, h('p', {class: 'quiet'}, 'Fetching the cut list…'));
  const unfold = async () => {
    try {
      put(body, folded(), pieces(await api.cuts(state.analysis.id)));
    } catch (e) {
      put(body, h('p', {}, e.message));
    }
  };
  return h('details', {class: 'cuts', on: {toggle: e => e.currentTarget.open && unfold()}},
    h('summary', {}, `Pieces to cut, ${count(q.panelSum.kinds)} kinds of panel and the closures`), body);
}

/** A way to the pictures of the trims as they are folded. */
function folded() {
  const url = api.profilesAt(state.analysis.id, state.units), title = 'Folded trims';
  const show = () => fetchSheet(state.ledger, url).then(text => openSheet(title, url, text)).catch(e => noSheet(note, e));
  const note = h('span', {});
  return h('p', {class: 'doings'}, h('button', {on: {click: show}}, 'Folded trims as pictures'), ' ', note);
}

function pieces([heads, ...rows]) {
  const row = r => h('tr', {}, r.map((c, i) => h('td', {class: isNumber(heads[i]) ? 'num' : ''}, c)));
  return [scrolling('Pieces to cut', table(heads.map(t => ({text: HEADS[t] ?? t, num: isNumber(t)})), rows.slice(0, MOST_CUTS).map(row))),
    rows.length > MOST_CUTS && h('p', {}, `The first ${MOST_CUTS} of ${count(rows.length)}. The cut list as CSV has them all.`)];
}
