// The pieces to cut, folded away and fetched when somebody unfolds them: the shop takes them from the list.

import {h, put, scrolling, table} from '../dom.js';
import {state} from '../state.js';
import {fetchSheet, noSheet, openSheet} from '../parts/sheet.js';
import * as api from '../api.js';
import {count, degrees, length} from '../units.js';
import {written} from '../units/written.js';

const MOST_CUTS = 300;
const HEADS = {part: 'Part', face: 'Face', junction: 'Line', pieces: 'Pieces', widthM: 'Width', lengthM: 'Length',
  lowBevelDegrees: 'Bevel low', highBevelDegrees: 'Bevel high', note: 'Note', profile: 'Folded profile'};
const isNumber = head => /pieces|(M|Degrees)$/.test(head);

/** Whether it is unfolded: the order may be drawn anew at any moment. */
let unfolded = false;

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
  return h('details', {class: 'cuts', open: unfolded || null, on: {toggle: e => {
    unfolded = e.currentTarget.open;
    if (unfolded) unfold();
  }}},
    h('summary', {}, `Pieces to cut, ${count(q.panelSum.kinds)} kinds of panel and the closures`), body);
}

/** A way to the pictures of the trims as they are folded. */
function folded() {
  const url = api.profilesAt(state.analysis.id, state.units), title = 'Folded trims';
  const show = () => fetchSheet(state.ledger, url).then(text => openSheet(title, url, text)).catch(e => noSheet(note, e));
  const note = h('span', {});
  return h('p', {class: 'doings'}, h('button', {on: {click: show}}, 'Folded trims as pictures'), ' ', note);
}

/** A cell as the page writes it: in one unit, to the millimetre or the eighth of an inch; no bevel says nothing. */
function shortly(head, text) {
  if (head === 'lengthM' || head === 'widthM') return text && length(Number(text));
  if (/Degrees$/.test(head)) return Math.abs(Number(text)) < 0.05 ? '' : degrees(Number(text));
  return written(text);
}

/** Columns that say nothing of the pieces in sight have no room. */
function pieces([heads, ...rows]) {
  const shown = rows.slice(0, MOST_CUTS), texts = shown.map(r => r.map((c, i) => shortly(heads[i], c)));
  const columns = heads.map((name, i) => i).filter(i => HEADS[heads[i]] && texts.some(r => r[i]));
  const row = r => h('tr', {}, columns.map(i => h('td', {class: isNumber(heads[i]) ? 'num' : ''}, r[i])));
  return [scrolling('Pieces to cut', table(columns.map(i => ({text: HEADS[heads[i]], num: isNumber(heads[i])})), texts.map(row))),
    rows.length > MOST_CUTS && h('p', {}, `The first ${MOST_CUTS} of ${count(rows.length)}. The cut list as CSV has them all.`)];
}
