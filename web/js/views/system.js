// The values of the current roof system, to change in place. A changed value is computed by the same program as everything else, as the
// next revision of the project; the page then shows what changed.

import {h} from '../dom.js';
import {recompute} from '../actions/again.js';
import {fileName, saveText} from '../parts/save.js';
import * as u from '../units.js';

/** Typed texts by the path of their value. */
const edits = new Map();

const isMeasure = node => 'value' in node && Object.keys(node).every(k => k === 'value' || k === 'unit' || k === 'note');

/** Leaves of the system as rows: a name path, its value as text. A value is "16 in" or {"value": 16, "unit": "in"}. */
function leaves(node, path = []) {
  if (node === null || typeof node !== 'object') return [{path, text: String(node)}];
  if (isMeasure(node)) return [{path, text: `${node.value} ${node.unit ?? ''}`.trim()}];
  if (Array.isArray(node)) return [];
  return Object.entries(node).flatMap(([k, v]) => k === 'note' || k === 'name' ? [] : leaves(v, [...path, k]));
}

/**
 * @param {object} system
 * @param {() => void} draw draws the editor anew, without what was typed
 */
export function editor(system, draw) {
  const message = h('p', {role: 'alert', class: 'refused'});
  const button = h('button', {class: 'main', disabled: edits.size === 0, on: {click: send}}, 'Compute again');
  async function send() {
    const next = structuredClone(system);
    for (const [key, text] of edits) putValue(next, key.split('/'), text);
    button.disabled = true;
    button.disabled = await recompute(next, message, () => edits.clear());
  }
  const reset = () => {
    edits.clear();
    draw();
  };
  let group = '';
  const body = leaves(system).map(r => {
    const head = r.path.length > 1 ? r.path[0] : '', isNew = head !== group;
    group = head;
    return [isNew && h('h4', {}, u.words(head)), value(r, () => { button.disabled = edits.size === 0; }, send)];
  });
  return h('div', {class: 'system'}, h('div', {class: 'values'}, body),
    h('p', {}, button, ' ', h('button', {on: {click: reset}}, 'Take back'), ' ',
      h('button', {on: {click: () => saveText(fileName('system', 'json'), JSON.stringify(system, null, 2) + '\n', 'application/json')},
        title: 'For --system of the command line, or to drop beside a model'}, 'Save the system as a file')), message);
}

function value(r, changed, send) {
  const key = r.path.join('/');
  const note = () => {
    if (input.value.trim() === r.text) edits.delete(key); else edits.set(key, input.value.trim());
    input.classList.toggle('edited', edits.has(key));
    changed();
  };
  const input = h('input', {'aria-label': r.path.map(u.words).join(', '), value: edits.get(key) ?? r.text, maxlength: 100,
    class: edits.has(key) ? 'edited' : '', on: {input: note, keydown: e => { if (e.key === 'Enter' && edits.size) send(); }}});
  return h('div', {class: 'value'}, h('span', {}, u.words(r.path[r.path.length - 1])), input);
}

/** Puts a typed text where the value was, in the form that it had there. */
function putValue(system, path, text) {
  const last = path.pop(), node = path.reduce((n, k) => n[k], system), was = node[last];
  if (was && typeof was === 'object') {
    const m = /^(-?[\d.]+(?:\s+\d+\/\d+)?)\s*(.*)$/.exec(text);
    node[last] = m ? {...was, value: Number(m[1]), unit: m[2] || was.unit} : {...was, value: text};
  } else if (typeof was === 'boolean') node[last] = /^(true|yes|1)$/i.test(text);
  else if (typeof was === 'number') node[last] = Number.isFinite(Number(text)) && text !== '' ? Number(text) : text;
  else node[last] = text;
}
