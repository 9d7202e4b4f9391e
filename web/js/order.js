// What to order, and the values of the roof system that it follows from. A changed value is computed by the same program as everything
// else, as the next revision of the project; the page then shows what changed.

import {h, put, say} from './dom.js';
import {set, state, watch} from './state.js';
import * as api from './api.js';
import * as u from './units.js';
import {open} from './main.js';
import {amounts} from './revisions.js';
import {handSection} from './decisions.js';

const TITLES = {tape: 'Sealant tape', bead: 'Gun-grade sealant', inSeam: 'Seam sealant', lapSealant: 'Sealant in laps and seam ends', fasteners: 'Fasteners', closures: 'Closures', caps: 'Caps', plugs: 'Plugs',
  panels: 'Panels to cut', parts: 'Metal parts', boots: 'Pipe boots', curbs: 'Curbs', metalFirst: 'Length where metal alone still leads the water off'};
const edits = new Map();

export function mountOrder(root) {
  const draw = () => state.ledger && root.isConnected && put(root, content());
  watch(['ledger', 'units', 'changes', 'handChanges'], draw);
  root.addEventListener('shown', draw);
  function content() {
    const q = state.ledger.raw.quantities, system = state.ledger.raw.system;
    return [h('h2', {}, 'Order'), q && Object.keys(q).length ? quantities(q) : h('p', {class: 'empty'}, 'This result holds no quantities.'),
      handSection(), changed(), system && h('section', {}, h('h2', {}, 'Roof system in force'), h('p', {}, 'Change a value, with its unit, and compute again: the result becomes the next revision, and what changed is shown.'), editor(system, draw))];
  }
}

function quantities(q) {
  const items = Object.entries(q).filter(([, v]) => v && typeof v === 'object' && !Array.isArray(v));
  const rest = Object.entries(q).filter(([, v]) => typeof v === 'number');
  return h('div', {class: 'scroll'}, h('table', {class: 'plain order-table'},
    h('thead', {}, h('tr', {}, h('th', {scope: 'col'}, 'What'), h('th', {scope: 'col', class: 'num'}, 'Net'), h('th', {scope: 'col', class: 'num'}, 'With waste'), h('th', {scope: 'col', class: 'num'}, 'To order'), h('th', {scope: 'col'}, 'Also'))),
    h('tbody', {}, items.map(([name, v]) => h('tr', {}, h('th', {scope: 'row'}, TITLES[name] ?? u.words(name)), cells(v))),
      rest.map(([name, v]) => h('tr', {}, h('th', {scope: 'row'}, u.words(name)), h('td', {class: 'num'}, u.byName(name, v)), h('td'), h('td'), h('td'))))), lists(q));
}

const PACKS = {rolls: 'rolls', cartridges: 'cartridges', sausages: 'sausages', boxes: 'boxes', order: '', pieces: 'pieces'};

function cells(v) {
  const entries = Object.entries(v).filter(([, x]) => typeof x === 'number');
  const net = entries.find(([k]) => k === 'netM' || k === 'net' || k === 'lengthM') , waste = entries.find(([k]) => /^order(M|Ml)$/.test(k)), pack = entries.find(([k]) => k in PACKS);
  const used = new Set([net?.[0], waste?.[0], pack?.[0]]);
  const show = e => e ? u.byName(e[0], e[1]) : '';
  return [h('td', {class: 'num'}, show(net)), h('td', {class: 'num'}, show(waste)), h('td', {class: 'num strong'}, pack ? `${u.count(pack[1])} ${PACKS[pack[0]]}`.trim() : ''),
    h('td', {}, [...entries.filter(([k]) => !used.has(k)).map(([k, x]) => `${u.words(k)} ${k === 'share' ? u.percent(x) : u.byName(k, x)}`), ...inner(v)].join(', '))];
}

/** Parts of a quantity: "of which exposed 4 cartridges", or counts by place. */
function inner(v) {
  return Object.entries(v).filter(([, x]) => x && typeof x === 'object' && !Array.isArray(x)).flatMap(([name, x]) => Object.entries(x).filter(([, n]) => typeof n === 'number' && n > 0)
    .filter(([k], _, all) => all.length < 4 || k === 'cartridges' || name === 'byPlace').map(([k, n]) => name === 'byPlace' ? `${k} ${u.count(n)}` : `${u.words(name).toLowerCase()} ${u.byName(k, n)} ${k in PACKS ? PACKS[k] : ''}`.trim()));
}

/** Lists in the quantities, such as parts to cut: shown as tables as they stand. */
function lists(q) {
  return Object.entries(q).filter(([, v]) => Array.isArray(v) && v.length && typeof v[0] === 'object').map(([name, v]) => h('section', {}, h('h3', {}, TITLES[name] ?? u.words(name)), h('table', {class: 'plain'},
    h('thead', {}, h('tr', {}, Object.keys(v[0]).map(k => h('th', {scope: 'col', class: typeof v[0][k] === 'number' ? 'num' : ''}, u.words(k))))),
    h('tbody', {}, v.slice(0, 500).map(row => h('tr', {}, Object.entries(row).map(([k, x]) => h('td', {class: typeof x === 'number' ? 'num' : ''}, typeof x === 'boolean' ? (x ? 'yes' : '') : u.byName(k, x ?? '')))))))));
}

function changed() {
  return state.changes && h('section', {class: 'changed'}, h('h3', {}, `What changed since revision ${state.changes.fromRevision ?? 'before'}`), amounts(state.changes) ?? h('p', {}, 'No number of the order changed.'));
}

/** Leaves of the system as rows: a name path, its value as text. A value is "16 in" or {"value": 16, "unit": "in"}. */
function leaves(node, path = []) {
  if (node === null || typeof node !== 'object') return [{path, text: String(node), was: node}];
  if ('value' in node && Object.keys(node).every(k => k === 'value' || k === 'unit' || k === 'note')) return [{path, text: `${node.value} ${node.unit ?? ''}`.trim(), was: node}];
  if (Array.isArray(node)) return [];
  return Object.entries(node).flatMap(([k, v]) => k === 'note' || k === 'name' ? [] : leaves(v, [...path, k]));
}

function editor(system, draw) {
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
      set({changes: {...changes, fromRevision: from.revision}, against: from.id, tab: 'order'});
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
