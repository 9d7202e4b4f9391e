// The ledger table. Only the rows in sight are in the document, so twenty thousand are as quick as twenty.

import {h, put, choice, say} from './dom.js';
import {set, state, watch, filter, address} from './state.js';
import {rows, kindOf, detailOf, reviewOf} from './ledger.js';
import {kindText, KINDS, SEALS, REVIEW} from './marks.js';
import {swatch} from './legend.js';
import {MODELLED} from './coverage.js';
import {save} from './save.js';
import * as u from './units.js';

/** A finger needs more room than a pointer. */
const ROW = matchMedia('(pointer: coarse)').matches ? 42 : 30;
const worst = j => ['violation', 'warning', 'info'].find(s => j.found.some(f => f.severity === s && state.marks.get(f.place)?.state !== 'accepted'));

/** A value that is zero says nothing in a ledger: the cell stays empty. */
const some = (value, text) => value > 0 ? text(value) : '';

const COLUMNS = [
  {id: 'review', title: 'Review', width: 78, cell: j => h('span', {class: 'state ' + reviewOf(j, state.reviews), title: REVIEW[reviewOf(j, state.reviews)].text}, REVIEW[reviewOf(j, state.reviews)].sign, h('span', {class: 'unseen'}, REVIEW[reviewOf(j, state.reviews)].text))},
  {id: 'kind', title: 'Kind', width: 160, cell: j => [kindText(kindOf(j, state.reviews)), byHand(j)]},
  {id: 'length', title: 'Length', width: 124, num: true, cell: j => u.length(j.lengthM)},
  {id: 'slope', title: 'Slope', width: 66, num: true, cell: j => u.slope(j.slope)},
  {id: 'faces', title: 'Faces', width: 86, cell: j => j.faces.join(' · ')},
  {id: 'seal', title: 'Sealed by', width: 226, cell: j => [swatch(j.seal), ' ', SEALS[j.seal].text]},
  {id: 'detail', title: 'Detail', width: 180, cell: j => state.ledger.choices.get(detailOf(j)) ?? detailOf(j)},
  {id: 'tape', title: 'Tape', width: 90, num: true, sum: t => some(t.tapeM, u.run), cell: j => some(j.tapeM, u.run)},
  {id: 'bead', title: 'Bead', width: 90, num: true, sum: t => some(t.beadM, u.run), cell: j => some(j.beadM, u.run)},
  {id: 'inseam', title: 'In-seam', width: 90, num: true, sum: t => some(t.inSeamM, u.run), cell: j => some(j.inSeamM, u.run)},
  {id: 'screws', title: 'Fasteners', width: 84, num: true, sum: t => some(t.screws, u.count), cell: j => some(j.screws, u.count)},
  {id: 'modelled', title: 'In model', width: 92, num: true, sum: t => some(t.modelledM, u.run), cell: j => [some(j.modelledM, u.run), j.gutterM > 0 && h('span', {title: `Gutter along ${u.run(j.gutterM)}`}, ' ⊔', h('span', {class: 'unseen'}, ' gutter'))]},
  {id: 'findings', title: 'Findings', width: 190, sum: t => some(t.findings, u.count), cell: j => j.found.length ? h('span', {class: 'found ' + (worst(j) ?? 'accepted')}, j.found.map(f => f.code).join(', ')) : ''},
];
const TEMPLATE = COLUMNS.map(c => c.width + 'px').join(' ');
const WIDTH = COLUMNS.reduce((t, c) => t + c.width, 0);

function byHand(j) {
  if (state.reviews.get(j.id)?.stale) return h('span', {class: 'hand stale', title: 'Decided by hand before the line changed'}, ' ✎ look again');
  return j.decided ? h('span', {class: 'hand', title: `By hand; the rules say ${kindText(j.decided.byRules.kind)}. ${j.decided.reason}`}, ' ✎ by hand') : '';
}

export function mountTable(root) {
  const tools = h('div', {class: 'tools'});
  const canvas = h('div', {class: 'canvas', role: 'rowgroup', style: {width: WIDTH + 'px'}});
  const header = h('div', {class: 'header', role: 'rowgroup', style: {width: WIDTH + 'px'}});
  const grid = h('div', {class: 'rows', role: 'treegrid', tabindex: 0, 'aria-label': 'Junctions', 'aria-colcount': COLUMNS.length}, header, canvas);
  const totals = h('div', {class: 'totals'});
  root.style.setProperty('--row-height', ROW + 'px');
  put(root, tools, grid, totals);
  const view = {data: {list: [], rows: [], totals: {}}, active: 0};

  const compute = () => {
    const was = view.data.rows[view.active]?.group;
    view.data = rows(state.ledger, state);
    const at = view.data.rows.findIndex(was === undefined ? r => r.j?.id === state.selected : r => r.group === was);
    view.active = at >= 0 ? at : Math.max(0, Math.min(view.active, view.data.rows.length - 1));
    canvas.style.height = view.data.rows.length * ROW + 'px';
    grid.setAttribute('aria-rowcount', view.data.rows.length + 1);
    edition++;
    drawHeader(header);
    drawTotals(totals, view.data);
    if (view.data.rows.length) {
      canvas.querySelector('.empty')?.remove();
      draw();
    } else {
      shown.clear();
      drawEmpty();
    }
  };

  // Rows that are in the document already stay as they are: a row must not vanish under a pointer that is pressing it.
  const shown = new Map();
  let edition = 0;
  const draw = () => {
    const first = Math.max(0, Math.floor(grid.scrollTop / ROW) - 8);
    const last = Math.min(view.data.rows.length, Math.ceil((grid.scrollTop + grid.clientHeight) / ROW) + 8);
    for (const [i, x] of shown) if (i < first || i >= last || x.edition !== edition) { x.el.remove(); shown.delete(i); }
    const fresh = document.createDocumentFragment();
    for (let i = first; i < last; i++) {
      if (!shown.has(i)) {
        const el = line(view.data.rows[i], i);
        shown.set(i, {el, edition});
        fresh.append(el);
      }
      mark(shown.get(i).el, view.data.rows[i], i === view.active);
    }
    canvas.append(fresh);
    if (shown.has(view.active)) grid.setAttribute('aria-activedescendant', 'row' + view.active); else grid.removeAttribute('aria-activedescendant');
  };

  const drawEmpty = () => {
    put(canvas, h('div', {class: 'empty', role: 'row'}, h('span', {role: 'gridcell'}, state.ledger.junctions.length
      ? ['No junction matches. ', h('button', {class: 'link', on: {click: () => set({filters: {}})}}, 'Show all of them')]
      : 'No junction was found in this model. The findings say why.')));
    canvas.style.height = '4em';
  };

  const reveal = i => {
    const top = i * ROW, room = grid.clientHeight - header.offsetHeight;
    if (top < grid.scrollTop) grid.scrollTop = top;
    else if (top + ROW > grid.scrollTop + room) grid.scrollTop = top + ROW - room;
  };

  const moveTo = i => {
    view.active = Math.max(0, Math.min(view.data.rows.length - 1, i));
    const r = view.data.rows[view.active];
    reveal(view.active);
    if (r?.j) set({selected: r.j.id}); else { draw(); if (r) say(`${groupText(r.group)}, ${r.totals.count} junctions`); }
  };

  const fold = r => {
    const closed = new Set(state.closed);
    if (!closed.delete(r.group)) closed.add(r.group);
    set({closed});
  };

  grid.addEventListener('scroll', () => requestAnimationFrame(draw), {passive: true});
  grid.addEventListener('click', e => {
    const at = e.target.closest('[data-at]');
    if (!at) return;
    const r = view.data.rows[at.dataset.at];
    view.active = Number(at.dataset.at);
    if (r.j) set({selected: r.j.id, face: '', pane: 'slip'}); else fold(r);
  });
  grid.addEventListener('keydown', e => {
    if (e.target !== grid || e.ctrlKey || e.metaKey || e.altKey) return;
    const page = Math.max(1, Math.floor(grid.clientHeight / ROW) - 2);
    const r = view.data.rows[view.active];
    const step = {ArrowDown: 1, ArrowUp: -1, PageDown: page, PageUp: -page, Home: -1e9, End: 1e9}[e.key];
    if (step) moveTo(view.active + step);
    else if ((e.key === 'Enter' || e.key === ' ') && r?.group !== undefined) fold(r);
    else if (e.key === 'ArrowLeft' && r?.group !== undefined && !r.closed) fold(r);
    else if (e.key === 'ArrowRight' && r?.group !== undefined && r.closed) fold(r);
    else if (e.key === 'Enter' && r?.j) document.querySelector('.slip')?.focus();
    else return;
    e.preventDefault();
  });

  drawTools(tools);
  watch(['filters', 'sort', 'group', 'closed', 'reviews', 'marks', 'units', 'ledger'], changed => {
    if (!state.ledger || !root.isConnected) return;
    compute();
    if (changed.has('filters') || changed.has('ledger')) drawTools(tools);
  });
  watch(['selected'], () => {
    if (!state.ledger || !root.isConnected) return;
    const at = view.data.rows.findIndex(r => r.j?.id === state.selected);
    if (at < 0 && state.selected) unfold(state.selected);
    else if (at >= 0) { view.active = at; reveal(at); draw(); }
  });
  root.addEventListener('shown', () => { view.active = -1; compute(); reveal(view.active); });
  new ResizeObserver(() => draw()).observe(grid);
  beforePrint(root, () => view.data);
}

/** A junction picked elsewhere shows, even where its group was folded away. */
function unfold(id) {
  const j = state.ledger.byId.get(id);
  if (j && state.closed.size) set({closed: new Set()});
}

const groupText = k => state.group === 'kind' ? kindText(k) : state.group === 'seal' ? SEALS[k]?.text ?? k : state.group === 'review' ? REVIEW[k]?.text ?? k : k;

function mark(el, r, active) {
  el.classList.toggle('active', active);
  if (r.j) el.setAttribute('aria-selected', String(r.j.id === state.selected));
}

function line(r, i) {
  const cells = r.j
    ? COLUMNS.map(c => h('div', {role: 'gridcell', class: c.num ? 'num' : ''}, c.cell(r.j)))
    : [h('div', {role: 'gridcell', class: 'group-name'}, r.closed ? '▸ ' : '▾ ', groupText(r.group), h('small', {}, ` ${u.count(r.totals.count)}`)),
      h('div', {role: 'gridcell', class: 'num'}, u.run(r.totals.lengthM)),
      ...COLUMNS.slice(3).map(c => h('div', {role: 'gridcell', class: c.num ? 'num' : ''}, c.sum?.(r.totals)))];
  return h('div', {
    role: 'row', id: 'row' + i, class: `line${r.j ? '' : ' group'}`, data: {at: i}, 'aria-rowindex': i + 2,
    'aria-expanded': r.j ? null : String(!r.closed),
    style: {top: i * ROW + 'px', 'grid-template-columns': r.j ? TEMPLATE : TEMPLATE.replace('78px 160px', '238px')},
  }, cells);
}

function drawHeader(header) {
  const sorted = state.sort.replace('-', '');
  put(header, h('div', {class: 'line head', role: 'row', 'aria-rowindex': 1, style: {'grid-template-columns': TEMPLATE}}, COLUMNS.map(c =>
    h('div', {role: 'columnheader', class: c.num ? 'num' : '', 'aria-sort': sorted === c.id ? (state.sort[0] === '-' ? 'descending' : 'ascending') : 'none'},
      h('button', {tabindex: 0, on: {click: e => { e.stopPropagation(); set({sort: nextSort(c)}); }}}, c.title, sorted === c.id ? (state.sort[0] === '-' ? ' ↓' : ' ↑') : '')))));
}

/** Numbers begin with the largest, words with the first; a third click goes back to the longest first. */
function nextSort(c) {
  const [one, two] = c.num || c.id === 'findings' ? ['-' + c.id, c.id] : [c.id, '-' + c.id];
  return state.sort === one ? two : state.sort === two ? '-length' : one;
}

function drawTotals(root, data) {
  const t = data.totals;
  put(root, h('span', {}, `${u.count(t.count)} of ${u.count(state.ledger.junctions.length)} junctions`), h('span', {}, u.run(t.lengthM)),
    t.tapeM > 0 && h('span', {}, `Tape ${u.run(t.tapeM)}`), t.beadM > 0 && h('span', {}, `Bead ${u.run(t.beadM)}`),
    t.screws > 0 && h('span', {}, `Fasteners ${u.count(t.screws)}`),
    h('button', {class: 'link', title: 'A link that shows this table again', on: {click: copyLink}}, 'Copy link'),
    h('button', {class: 'link', on: {click: () => download(data)}}, 'Save as CSV'));
}

async function copyLink() {
  await navigator.clipboard?.writeText(location.origin + '/' + address());
  say('The link is on the clipboard.');
}

function drawTools(root) {
  const all = f => [...new Set(state.ledger.junctions.flatMap(f))].filter(Boolean);
  const pick = (name, label, values, text = v => v) => choice([['', label], ...values.map(v => [v, text(v)])], state.filters[name] ?? '', v => filter(name, v),
    {'aria-label': label, class: state.filters[name] ? 'set' : ''});
  const search = h('input', {type: 'search', placeholder: 'Find: kind, face, name, GlobalId…', 'aria-label': 'Find', value: state.filters.text ?? '', on: {input: () => later(() => filter('text', search.value.trim()))}});
  const kinds = Object.keys(KINDS).filter(k => state.ledger.junctions.some(j => kindOf(j, state.reviews) === k));
  const focused = root.contains(document.activeElement) && document.activeElement.type === 'search';
  if (focused && root.childElementCount) {
    root.replaceChildren(root.firstElementChild, ...rest());
  } else {
    put(root, search, rest());
  }
  function rest() {
    return [
      pick('kind', 'Any kind', kinds, kindText),
      pick('detail', 'Any detail', all(j => [detailOf(j, state.reviews)]).sort()),
      pick('finding', 'Findings or none', ['any', ...all(j => j.found.map(f => f.code)).sort()], v => v === 'any' ? 'Any finding' : v),
      pick('review', 'Any review', Object.keys(REVIEW), v => REVIEW[v].text),
      pick('modelled', 'In the model or not', Object.keys(MODELLED), v => MODELLED[v]),
      (state.filters.hand || state.ledger.junctions.some(j => j.decided || state.reviews.get(j.id)?.stale)) && pick('hand', 'By rules or hand', ['any', 'stale'], v => v === 'any' ? 'Chosen by hand' : 'By hand, needs a new look'),
      pick('face', 'Any face', [...state.ledger.faces.keys()].slice(0, 500)),
      elementPick(),
      h('label', {class: 'group-by'}, 'Group by ', choice([['kind', 'kind'], ['detail', 'detail'], ['seal', 'seal'], ['face', 'face'], ['review', 'review'], ['none', 'nothing']], state.group, v => set({group: v, closed: new Set()}), {'aria-label': 'Group by'})),
      Object.keys(state.filters).length > 0 && h('button', {class: 'link', on: {click: () => set({filters: {}})}}, 'Clear'),
    ];
  }
  function elementPick() {
    const e = state.filters.element;
    return e && h('button', {class: 'chip', title: 'Stop filtering by this element', on: {click: () => filter('element', '')}}, `${state.ledger.elements.get(e)?.name ?? e} ×`);
  }
}

let timer;
function later(fn) {
  clearTimeout(timer);
  timer = setTimeout(fn, 120);
}

function download(data) {
  const head = ['id', 'kind', 'kindByRules', 'lengthM', 'slopeDegrees', 'faces', 'detail', 'tapeM', 'beadM', 'inSeamM', 'fasteners', 'modelledM', 'gutterM', 'findings', 'elements', 'review', 'note', 'reason'];
  const lines = data.list.map(j => {
    const r = state.reviews.get(j.id);
    return [j.id, j.kind, j.decided?.byRules.kind ?? j.kind, j.lengthM, Number.isFinite(j.slope) ? j.slope : '', j.faces.join(' '), detailOf(j, state.reviews), j.tapeM, j.beadM, j.inSeamM, j.screws, j.modelledM ?? 0, j.gutterM ?? 0,
      j.found.map(f => f.code).join(' '), j.elements.join(' '), r?.state ?? 'open', r?.note ?? '', j.decided?.reason ?? ''];
  });
  save('junctions.csv', [head, ...lines]);
}

/** Paper has no scroll bar: all rows in view of the filter are laid out for printing, up to a limit. */
function beforePrint(root, data) {
  const most = 3000;
  let sheet = null;
  addEventListener('beforeprint', () => {
    if (!root.isConnected || !state.ledger) return;
    const list = data().rows.slice(0, most);
    sheet = h('table', {class: 'print-only plain'},
      h('thead', {}, h('tr', {}, COLUMNS.map(c => h('th', {class: c.num ? 'num' : ''}, c.title)))),
      h('tbody', {}, list.map(r => r.j
        ? h('tr', {}, COLUMNS.map(c => h('td', {class: c.num ? 'num' : ''}, c.cell(r.j))))
        : h('tr', {class: 'group'}, h('th', {colspan: 2}, groupText(r.group), ` (${r.totals.count})`), h('th', {class: 'num'}, u.run(r.totals.lengthM)), COLUMNS.slice(3).map(c => h('th', {class: 'num'}, c.sum?.(r.totals)))))),
      data().rows.length > most && h('caption', {}, `The first ${most} of ${data().rows.length} rows. Save as CSV for all.`));
    root.append(sheet);
  });
  addEventListener('afterprint', () => sheet?.remove());
}
