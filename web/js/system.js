// The values of the roof system in force, to change in place. A changed value is computed by the same program as everything else, as the
// next revision of the project; the page then shows what changed.

import {h, put, say} from './dom.js';
import {set, state} from './state.js';
import * as api from './api.js';
import * as u from './units.js';
import {open} from './main.js';

const edits = new Map();

/** Leaves of the system as rows: a name path, its value as text. A value is "16 in" or {"value": 16, "unit": "in"}. */
function leaves(node, path = []) {
  if (node === null || typeof node !== 'object') return [{path, text: String(node), was: node}];
  if ('value' in node && Object.keys(node).every(k => k === 'value' || k === 'unit' || k === 'note')) return [{path, text: `${node.value} ${node.unit ?? ''}`.trim(), was: node}];
  if (Array.isArray(node)) return [];
  return Object.entries(node).flatMap(([k, v]) => k === 'note' || k === 'name' ? [] : leaves(v, [...path, k]));
}

export function editor(system, draw) {
  const rows = leaves(system);
  const message = h('p', {role: 'alert', class: 'refused'});
  const button = h('button', {class: 'main', disabled: edits.size === 0, on: {click: send}}, 'Compute again');
  async function send() {
    const next = structuredClone(system);
    for (const [key, text] of edits) place(next, key.split('/'), text);
    button.disabled = true;
    put(message, 'Computing…');
    try {
      const from = state.analysis;
      const {id} = await api.recompute(from.id, next);
      const end = await api.follow(id, p => put(message, p.stage + '…')).end;
      if (end.state !== 'done') {
        put(message, (await api.analysis(id)).problem?.detail ?? 'It was stopped.');
        button.disabled = false;
        return;
      }
      edits.clear();
      history.pushState(null, '', '?analysis=' + id + '&tab=order');
      await open(id);
      const changes = await api.changes(from.id, id);
      set({changes, against: from.id, tab: 'order'});
      say('Computed again.');
    } catch (e) {
      put(message, e.message);
      button.disabled = false;
    }
  }
  let group = '';
  const body = rows.map(r => {
    const key = r.path.join('/'), head = r.path.length > 1 ? r.path[0] : '';
    const input = h('input', {'aria-label': r.path.map(u.words).join(', '), value: edits.get(key) ?? r.text, maxlength: 100, class: edits.has(key) ? 'edited' : '', on: {
      input: () => { if (input.value.trim() === r.text) edits.delete(key); else edits.set(key, input.value.trim()); input.classList.toggle('edited', edits.has(key)); button.disabled = edits.size === 0; },
      keydown: e => { if (e.key === 'Enter' && edits.size) send(); }}});
    const heading = head !== group ? h('h4', {}, u.words(head)) : null;
    group = head;
    return [heading, h('div', {class: 'value'}, h('span', {}, u.words(r.path[r.path.length - 1])), input)];
  });
  return h('div', {class: 'system'}, h('div', {class: 'values'}, body), h('p', {}, button, ' ', h('button', {on: {click: () => { edits.clear(); draw(); }}}, 'Take back')), message);
}

/** Puts a typed text where the value was, in the form that it had there. */
function place(system, path, text) {
  const last = path.pop(), node = path.reduce((n, k) => n[k], system), was = node[last];
  if (was && typeof was === 'object') {
    const m = /^(-?[\d.]+(?:\s+\d+\/\d+)?)\s*(.*)$/.exec(text);
    node[last] = m ? {...was, value: Number(m[1]), unit: m[2] || was.unit} : {...was, value: text};
  } else if (typeof was === 'boolean') node[last] = /^(true|yes|1)$/i.test(text);
  else if (typeof was === 'number') node[last] = Number.isFinite(Number(text)) && text !== '' ? Number(text) : text;
  else node[last] = text;
}
