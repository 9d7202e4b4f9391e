// Findings as a table: one row a finding, with what names its element in the model; any column sorts.

import {h, link, put, scrolling} from '../dom.js';
import {set, state} from '../state.js';
import {SEVERITY} from '../ledger/marks.js';
import {junctionsOf} from '../ledger/result.js';
import {adviceOf, reasonOf, restOf, titleOf} from '../parts/findingwords.js';
import {markOf, remarks} from '../parts/remarks.js';
import {copied, elementsOfFinding} from './cause.js';
import * as u from '../units.js';

const RANK = {violation: 0, warning: 1, info: 2};
const text = x => String(x ?? '');
const first = f => elementsOfFinding(f)[0] ?? {};

/** The columns: title, what they sort by, whether a first click puts the largest on top. */
const COLUMNS = [
  {id: 'risk', title: 'Risk', num: true, of: f => f.risk ?? 0},
  {id: 'finding', title: 'Finding', of: f => RANK[f.severity] + f.message},
  {id: 'who', title: 'Who acts', of: f => text(f.who)},
  {id: 'places', title: 'Places', num: true, of: f => placesOf(f).length},
  {id: 'element', title: 'Element', of: f => text(first(f).name)},
  {id: 'state', title: 'State', of: f => markOf(f).state + text(markOf(f).assignee)},
];

/** Lines and nodes of a finding that the drawings can show. */
export const placesOf = f => junctionsOf(f).filter(id => state.ledger.byId.has(id) || state.ledger.nodes.has(id));

/** Goes to the places of a finding in plan and 3-D. */
export const showPlaces = f => set({places: {ids: placesOf(f)}, selected: '', face: '', pane: 'roof'});

/** In the order of a column, and as the list was given where that says nothing. */
export function sorted(list, sort) {
  const down = sort.startsWith('-'), column = COLUMNS.find(c => c.id === sort.replace('-', '')) ?? COLUMNS[0];
  const compare = (a, b) => {
    const x = column.of(a), y = column.of(b);
    return typeof x === 'number' ? x - y : x.localeCompare(y, 'en', {numeric: true});
  };
  return list.slice().sort((a, b) => down ? compare(b, a) : compare(a, b));
}

/**
 * @param {[string, object[]][]} groups names and findings
 * @param {{sort: string, picked: Set<number>, open: Set<number>, unfolded: Set<string>}} view
 * @param {{redraw: () => void, most: number}} does
 */
export function findingTable(groups, view, does) {
  const shown = COLUMNS;
  const all = groups.flatMap(([, list]) => list).filter(f => markOf(f).state !== 'accepted');
  const pickAll = h('input', {type: 'checkbox', 'aria-label': 'Pick all that are shown', on: {change: () => {
    all.forEach(f => pickAll.checked ? view.picked.add(f.place) : view.picked.delete(f.place));
    does.redraw();
  }}});
  pickAll.checked = all.length > 0 && all.every(f => view.picked.has(f.place));
  return scrolling('Findings', h('table', {class: 'plain finding-table'},
    h('thead', {}, h('tr', {}, h('th', {scope: 'col'}, pickAll), shown.map(c => head(c, view, does.redraw)))),
    groups.map(([name, list]) => h('tbody', {},
      name && h('tr', {class: 'group'}, h('th', {colspan: shown.length + 1, scope: 'rowgroup'}, `${name} (${u.count(list.length)})`)),
      list.slice(0, view.unfolded.has(name) ? list.length : does.most).map(f => row(f, shown, view, does.redraw)),
      more(name, list, shown.length + 1, view, does)))));
}

function more(name, list, width, view, does) {
  const unfold = () => {
    view.unfolded.add(name);
    does.redraw();
  };
  return list.length > does.most && !view.unfolded.has(name)
    && h('tr', {}, h('td', {colspan: width}, h('button', {on: {click: unfold}}, `Show all ${u.count(list.length)}`)));
}

function head(c, view, redraw) {
  const is = view.sort.replace('-', '') === c.id, isDown = view.sort.startsWith('-');
  const sort = () => {
    view.sort = is ? (isDown ? c.id : '-' + c.id) : (c.num ? '-' : '') + c.id;
    redraw();
  };
  return h('th', {scope: 'col', class: c.num ? 'num' : null, 'aria-sort': is ? (isDown ? 'descending' : 'ascending') : 'none'},
    h('button', {class: 'link plain-link', on: {click: sort}}, c.title, is && (isDown ? ' ↓' : ' ↑')));
}

function row(f, shown, view, redraw) {
  const accepted = markOf(f).state === 'accepted', isOpen = view.open.has(f.place);
  const pick = h('input', {type: 'checkbox', 'aria-label': `Pick: ${titleOf(f)}`, disabled: accepted, on: {change: () => {
    if (pick.checked) view.picked.add(f.place); else view.picked.delete(f.place);
    redraw();
  }}});
  pick.checked = view.picked.has(f.place);
  const unfold = () => {
    if (!view.open.delete(f.place)) view.open.add(f.place);
    redraw();
  };
  const cells = {
    risk: f.risk > 0 ? u.count(f.risk) : '', who: f.who && u.capital(f.who), finding: title(f, isOpen, unfold), places: places(f),
    element: element(f), state: stateOf(f),
  };
  return [h('tr', {class: f.severity + (accepted ? ' accepted' : '')}, h('td', {}, pick),
    shown.map(c => h('td', {class: c.num ? 'num' : c.id}, cells[c.id]))),
  isOpen && h('tr', {class: 'unfolded'}, h('td', {}), h('td', {colspan: shown.length},
    restOf(f) && h('p', {}, restOf(f)),
    adviceOf(f) && h('p', {}, f.who && h('strong', {}, `${u.capital(f.who)}: `), adviceOf(f)),
    f.reason && h('p', {class: 'quiet'}, reasonOf(f)), remarks(f)))];
}

const title = (f, isOpen, unfold) => [h('button', {class: 'link plain-link', 'aria-expanded': String(isOpen), on: {click: unfold}},
  h('span', {class: 'sign-of', title: SEVERITY[f.severity].text}, SEVERITY[f.severity].sign), ' ', titleOf(f)),
h('small', {}, ` ${f.code}`)];

function places(f) {
  const n = placesOf(f).length;
  return n > 0 && link(u.count(n), () => showPlaces(f),
    {'aria-label': `Show on the roof: ${n === 1 ? 'the place' : n + ' places'} of ${titleOf(f)}`, title: 'Show on the roof'});
}

function element(f) {
  const all = elementsOfFinding(f), e = all[0];
  return e && [h('span', {class: 'element-name'}, e.name || '–', all.length > 1 && h('small', {}, ` and ${u.count(all.length - 1)} more`)),
    h('small', {}, [e.class, (state.ledger.raw.models ?? []).length > 1 && e.file].filter(Boolean).join(' · ')), ' ',
    h('small', {class: 'gid'}, copied(e.globalId))];
}

function stateOf(f) {
  const m = markOf(f), root = h('span', {});
  return put(root, m.state === 'accepted' ? h('span', {title: m.reason}, `accepted${m.acceptedBy ? ` by ${m.acceptedBy}` : ''}`) : 'open',
    m.assignee && h('small', {}, ` with ${m.assignee}`), m.comments.length > 0 && h('small', {}, ` ${m.comments.length} ✉`));
}
