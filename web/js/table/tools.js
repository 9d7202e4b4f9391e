// Filters and grouping above the table.

import {choice, h, link, put} from '../dom.js';
import {filter, set, state} from '../state.js';
import {MODELLED} from '../ledger/coverage.js';
import {KINDS, REVIEW, kindText} from '../ledger/marks.js';
import {detailOf, kindOf} from '../ledger/result.js';

const MOST_FACES = 500, TYPING_MS = 120;
const GROUPS = [['kind', 'kind'], ['detail', 'detail'], ['seal', 'seal'], ['face', 'face'], ['review', 'review'], ['none', 'nothing']];
const OVERRIDES = {any: 'Manually overridden', stale: 'Overridden, needs a new look'};

export function drawTools(root) {
  const search = h('input', {type: 'search', placeholder: 'Find: kind, face, name, GlobalId…', 'aria-label': 'Find',
    value: state.filters.text ?? '', on: {input: () => later(() => filter('text', search.value.trim()))}});
  // The field that is being typed in stays.
  const isTyping = root.contains(document.activeElement) && document.activeElement.type === 'search';
  if (isTyping && root.childElementCount) put(root, root.firstElementChild, choices()); else put(root, search, choices());
}

function pick(name, label, values, text = v => v) {
  return choice([['', label], ...values.map(v => [v, text(v)])], state.filters[name] ?? '', v => filter(name, v),
    {'aria-label': label, class: state.filters[name] ? 'set' : ''});
}

function choices() {
  const {junctions, faces} = state.ledger, filters = state.filters;
  const all = f => [...new Set(junctions.flatMap(f))].filter(Boolean).sort();
  const kinds = Object.keys(KINDS).filter(k => junctions.some(j => kindOf(j) === k));
  const isAnyOverridden = filters.override || junctions.some(j => j.decided || state.reviews.get(j.id)?.stale);
  const regroup = v => set({group: v, closed: new Set()});
  return [
    pick('kind', 'Any kind', kinds, kindText),
    pick('detail', 'Any detail', all(j => [detailOf(j)])),
    pick('finding', 'Findings or none', ['any', ...all(j => j.found.map(f => f.code))], v => v === 'any' ? 'Any finding' : v),
    pick('review', 'Any review', Object.keys(REVIEW), v => REVIEW[v].text),
    pick('modelled', 'In the model or not', Object.keys(MODELLED), v => MODELLED[v]),
    isAnyOverridden && pick('override', 'By rules or overridden', Object.keys(OVERRIDES), v => OVERRIDES[v]),
    pick('face', 'Any face', [...faces.keys()].slice(0, MOST_FACES)),
    elementPick(filters.element),
    h('label', {class: 'group-by'}, 'Group by ', choice(GROUPS, state.group, regroup, {'aria-label': 'Group by'})),
    Object.keys(filters).length > 0 && link('Clear', () => set({filters: {}})),
  ];
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
