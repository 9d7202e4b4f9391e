// Filters and grouping above the table.

import {choice, h, link, put} from '../dom.js';
import {filter, remember, set, state} from '../state.js';
import {MODELLED} from '../ledger/coverage.js';
import {KINDS, REVIEW, kindText} from '../ledger/marks.js';
import {detailOf, kindOf} from '../ledger/result.js';
import {COLUMNS} from './columns.js';
import {layout} from './layout.js';

const MOST_FACES = 500, TYPING_MS = 120;
const GROUPS = [['kind', 'kind'], ['detail', 'detail'], ['seal', 'seal'], ['face', 'face'], ['review', 'review'], ['none', 'nothing']];
const OVERRIDES = {any: 'Manually overridden', stale: 'Overridden, needs a new look'};

export function drawTools(root) {
  const search = h('input', {type: 'search', placeholder: 'Find: kind, face, name, GlobalId…', 'aria-label': 'Find',
    value: state.filters.text ?? '', on: {input: () => later(() => filter('text', search.value.trim()))}});
  // The field that is being typed in stays; another keeps the keyboard.
  const fields = () => [...root.querySelectorAll('input, select, summary, button')], at = fields().indexOf(document.activeElement);
  const isTyping = at >= 0 && document.activeElement.type === 'search';
  if (isTyping) put(root, root.firstElementChild, choices()); else put(root, search, choices());
  fields()[at]?.focus();
}

function pick(name, label, values, text = v => v) {
  return choice([['', label], ...values.map(v => [v, text(v)])], state.filters[name] ?? '', v => filter(name, v),
    {'aria-label': label, class: state.filters[name] ? 'set' : ''});
}

function choices() {
  const {lines, faces} = state.ledger, filters = state.filters;
  const all = f => [...new Set(lines.flatMap(f))].filter(Boolean).sort();
  const kinds = Object.keys(KINDS).filter(k => lines.some(j => kindOf(j) === k));
  const isAnyOverridden = filters.override || lines.some(j => j.decided || state.reviews.get(j.id)?.stale);
  const regroup = v => set({group: v, closed: new Set()});
  const more = [
    pick('detail', 'Any detail', all(j => [detailOf(j)]), id => state.ledger.choices.get(id) ?? id),
    pick('finding', 'Findings or none', ['any', ...all(j => j.found.map(f => f.code))], v => v === 'any' ? 'Any finding' : v),
    pick('review', 'Any review', Object.keys(REVIEW), v => REVIEW[v].text),
    pick('modelled', 'In the model or not', Object.keys(MODELLED), v => MODELLED[v]),
    isAnyOverridden && pick('override', 'By rules or overridden', Object.keys(OVERRIDES), v => OVERRIDES[v]),
    pick('face', 'Any face', [...faces.keys()].slice(0, MOST_FACES)),
  ];
  const hidden = Object.keys(filters).filter(n => !['kind', 'text', 'element', 'seal'].includes(n)).length;
  return [
    pick('kind', 'Any kind', kinds, kindText),
    menu(hidden ? `Filters: ${hidden} set` : 'Filters', more, hidden > 0),
    menu('Columns', columnBoxes(), Boolean(state.columns)),
    elementPick(filters.element),
    h('label', {class: 'group-by'}, 'Group by ', choice(GROUPS, state.group, regroup, {'aria-label': 'Group by'})),
    Object.keys(filters).length > 0 && link('Clear', () => set({filters: {}})),
  ];
}

/**
 * What is seldom needed unfolds over the table; which one is open outlives the drawing anew. It is noted at the click: the event
 * "toggle" comes later, and may come after the next drawing.
 */
let unfolded = '';
function menu(title, content, isSet) {
  const name = title.split(':')[0];
  const click = () => { unfolded = el.open ? '' : name; };
  const keydown = e => {
    if (e.key !== 'Escape' || !el.open) return;
    e.stopPropagation();
    el.open = false;
    unfolded = '';
    el.firstElementChild.focus();
  };
  const el = h('details', {class: 'menu', open: unfolded === name || null, on: {keydown}},
    h('summary', {class: isSet ? 'set' : '', on: {click}}, title), h('div', {class: 'menu-content'}, content));
  return el;
}

/** A browser remembers which columns its user wants; "As many as fit" forgets it. */
function columnBoxes() {
  const take = columns => {
    remember('columns', columns ? columns.join(' ') : '');
    set({columns});
  };
  const shown = layout.columns.map(c => c.id);
  const toggle = (id, on) => take(COLUMNS.map(c => c.id).filter(x => x === id ? on : shown.includes(x)));
  return [COLUMNS.filter(c => c.rank > 1).map(c => {
    const box = h('input', {type: 'checkbox', on: {change: () => toggle(c.id, box.checked)}});
    box.checked = shown.includes(c.id);
    return h('label', {class: 'check'}, box, ' ', c.title);
  }), h('button', {on: {click: () => take(null)}}, 'As many as fit')];
}

function elementPick(e) {
  const clear = () => filter('element', '');
  return e && h('button', {class: 'chip', title: 'Stop filtering by this element', on: {click: clear}},
    `${state.ledger.elements.get(e)?.name ?? e} ×`);
}

let timer;
function later(fn) {
  clearTimeout(timer);
  timer = setTimeout(fn, TYPING_MS);
}
