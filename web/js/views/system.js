// The values of the current roof system, to change in place. A changed value is computed by the same program as everything else, as the
// next revision of the project; the page then shows what changed. What the values are, the service says.

import {h, put} from '../dom.js';
import {recompute} from '../actions/again.js';
import {fileName, saveText} from '../parts/save.js';
import {control, fieldName, help} from '../parts/values.js';
import * as api from '../api/systems.js';
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

/** The system with what was typed. */
function edited(system) {
  const next = structuredClone(system);
  for (const [key, text] of edits) putValue(next, key.split('/'), text);
  return next;
}

/**
 * @param {object} system
 * @param {() => void} draw draws the editor anew, without what was typed
 */
export function editor(system, draw) {
  const message = h('p', {role: 'alert', class: 'refused'});
  const button = h('button', {class: 'main', disabled: edits.size === 0, on: {click: () => send(edited(system))}}, 'Compute again');
  async function send(next) {
    button.disabled = true;
    button.disabled = await recompute(next, message, () => edits.clear());
    markWrong(values, message.textContent);
  }
  const reset = () => {
    edits.clear();
    draw();
  };
  const changed = () => { button.disabled = edits.size === 0; };
  const values = h('div', {class: 'values'}), rows = leaves(system);
  const fill = fields => put(values, body(rows, new Map(fields.map(f => [f.path, f])), changed, () => edits.size && send(edited(system))));
  // Drawn once, when it is known what the values are: whoever types meanwhile would lose it.
  api.systemForm().catch(() => []).then(fill);
  return h('div', {class: 'system'}, values,
    h('p', {class: 'doings'}, button, ' ', h('button', {on: {click: reset}}, 'Take back'), ' ', saving(system), ' ', taking(send, message)),
    message);
}

const saving = system => h('button', {title: 'For --system of the command line, or to drop beside a model',
  on: {click: () => saveText(fileName('system', 'json'), JSON.stringify(edited(system), null, 2) + '\n', 'application/json')}},
'Save the system as a file');

/** A file as the command line takes it, back on the page. */
function taking(send, message) {
  const take = async e => {
    const file = e.currentTarget.files[0];
    if (!file) return;
    try {
      await send(JSON.parse(await file.text()));
    } catch (error) {
      put(message, `${file.name}: expected a roof system as JSON, found ${error.message}`);
    }
  };
  const input = h('input', {type: 'file', accept: '.json,application/json', class: 'unseen', 'aria-label': 'Roof system',
    on: {change: take}});
  return [h('button', {on: {click: () => input.click()}}, 'Compute with a system from a file…'), input];
}

function body(rows, fields, changed, enter) {
  let group = '';
  return rows.map(r => {
    const head = r.path.slice(0, -1).join(', ').replace(/^purchase, /, ''), isNew = head !== group;
    group = head;
    return [isNew && h('h4', {}, head.split(', ').map(u.words).join(', ')), value(r, fields.get(r.path.join('.')), changed, enter)];
  });
}

function value(r, field, changed, enter) {
  const key = r.path.join('/');
  const note = text => {
    if (text === r.text) edits.delete(key); else edits.set(key, text);
    input.classList.toggle('edited', edits.has(key));
    changed();
  };
  const input = control(field, edits.get(key) ?? r.text, note, {'aria-label': fieldName(r.path.join('.')),
    data: {path: r.path.join('.')}, class: edits.has(key) ? 'edited' : '', on: {keydown: e => { if (e.key === 'Enter') enter(); }}});
  return h('div', {class: 'value'}, h('span', {}, u.words(r.path[r.path.length - 1])), input, field && help(field));
}

/** Marks the fields that a refusal names. */
function markWrong(values, text) {
  for (const input of values.querySelectorAll('[data-path]')) {
    const isWrong = text.includes(`: ${input.dataset.path}: expected`);
    if (isWrong) input.setAttribute('aria-invalid', 'true'); else input.removeAttribute('aria-invalid');
  }
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
