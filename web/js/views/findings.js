// Findings, one entry a cause: what is wrong in words first, its places, elements and risk, what to do, and what users decided about it.

import {choice, h, link, put} from '../dom.js';
import {remember, remembered, set, state, watch} from '../state.js';
import {SEVERITY, kindText} from '../ledger/marks.js';
import {junctionsOf, kindOf} from '../ledger/result.js';
import {markOf, remarks} from '../parts/remarks.js';
import {adviceOf, reasonOf, restOf, titleOf} from '../parts/findingwords.js';
import {acceptSeveral} from '../parts/several.js';
import {elements, elementsOfFinding, places} from './cause.js';
import {findingTable, placesOf, showPlaces, sorted} from './findingtable.js';
import {handedOn, topicsBack} from './handover.js';
import {placeButton, placingForm} from './placing.js';
import * as api from '../api.js';
import * as u from '../units.js';

const AT_FIRST = 60;
/** What the list shows and how: of this page alone, and forgotten with it. */
const view = {unfolded: new Set(), openOnly: false, severity: '', who: '', text: '', ifcClass: '', group: 'severity', picked: new Set(),
  form: '', sort: '-risk', open: new Set()};
const GROUPS = {
  severity: {text: 'severity', of: f => f.severity, name: k => `${SEVERITY[k].sign} ${SEVERITY[k].text}s`},
  who: {text: 'who acts', of: f => f.who ?? '', name: k => u.capital(k) || 'Nobody named'},
  code: {text: 'kind of finding', of: f => f.code.split('/')[0], name: u.capital},
  ifcClass: {text: 'class of element', of: f => elementsOfFinding(f)[0]?.class ?? '', name: k => k || 'No element'},
  model: {text: 'model', of: f => f.elementDetails?.[0]?.file ?? '', name: k => k || 'No element of one model'},
};

export function mountFindings(root) {
  const draw = () => state.ledger && root.isConnected && put(root, content(draw));
  watch(['ledger', 'marks', 'units', 'findingsAt'], changed => {
    if (changed.has('ledger')) view.picked.clear();
    const isWriting = root.contains(document.activeElement)
      && document.activeElement.matches('textarea, input:not([type="checkbox"], [type="search"])');
    if (!isWriting) draw();
  });
  root.addEventListener('shown', draw);
}

/** Kept while the view is drawn anew: what it says of a file that came back stays to be read. */
let back = null;
let backOf = '';

function topics() {
  if (backOf !== state.analysis.id) {
    back = topicsBack();
    backOf = state.analysis.id;
  }
  return back;
}

const isAccepted = f => markOf(f).state === 'accepted';

function content(draw) {
  const all = state.ledger.findings;
  if (!all.length) return [placingForm(), nothing(), handedOn()];
  const shown = sorted(all.filter(passes), isTable() ? view.sort : '-risk');
  const accepted = all.filter(isAccepted).length;
  return [h('h2', {}, `Findings: ${u.count(all.length - accepted)} open of ${u.count(all.length)}`), tools(all, draw),
    acceptSeveral(all.filter(f => view.picked.has(f.place) && !isAccepted(f)), () => view.picked.clear()),
    isTable() ? shown.length > 0 && findingTable(groups(shown).map(([key, list]) => [GROUPS[view.group].name(key), list]), view,
      {redraw: draw, most: AT_FIRST}) : groups(shown).map(([key, list]) => group(key, list, draw)),
    !shown.length && h('p', {class: 'empty'}, 'No finding matches.'),
    h('div', {class: 'handing-on'}, handedOn(), topics(), accepted > 0 && acceptedFile()), placingForm()];
}

function passes(f) {
  const words = `${f.message} ${f.code} ${(f.elementDetails ?? []).map(e => `${e.globalId} ${e.name} ${e.class}`).join(' ')}`.toLowerCase();
  return (!state.findingsAt || junctionsOf(f).includes(state.findingsAt))
    && (!view.ifcClass || elementsOfFinding(f).some(e => e.class === view.ifcClass))
    && (!view.openOnly || !isAccepted(f)) && (!view.severity || f.severity === view.severity) && (!view.who || f.who === view.who)
    && words.includes(view.text);
}

/** Filters and groups, as above the ledger. */
function tools(all, draw) {
  const take = name => value => {
    view[name] = value;
    draw();
  };
  const box = h('input', {type: 'checkbox', id: 'open-only', on: {change: () => take('openOnly')(box.checked)}});
  box.checked = view.openOnly;
  const search = h('input', {type: 'search', placeholder: 'Find: words, name, GlobalId…', 'aria-label': 'Find in the findings',
    value: view.text, on: {change: () => take('text')(search.value.trim().toLowerCase())}});
  const classes = [...new Set(all.flatMap(f => elementsOfFinding(f).map(e => e.class)))].filter(Boolean).sort();
  const whos = [...new Set(all.map(f => f.who).filter(Boolean))].sort();
  return h('div', {class: 'tools'}, search,
    choice([['', 'Any severity'], ...Object.entries(SEVERITY).map(([k, x]) => [k, `${x.text}s`])], view.severity, take('severity'),
      {'aria-label': 'Severity', class: view.severity ? 'set' : ''}),
    whos.length > 0 && choice([['', 'Anybody'], ...whos.map(w => [w, u.capital(w)])], view.who, take('who'),
      {'aria-label': 'Who acts', class: view.who ? 'set' : ''}),
    classes.length > 1 && choice([['', 'Any class'], ...classes.map(c => [c, c])], view.ifcClass, take('ifcClass'),
      {'aria-label': 'Class of the element', class: view.ifcClass ? 'set' : ''}),
    h('label', {class: 'group-by'}, 'Group by ', choice(Object.entries(GROUPS).map(([k, x]) => [k, x.text]), view.group, take('group'),
      {'aria-label': 'Group findings by'})),
    h('label', {class: 'check'}, box, ' Open ones only'), formSwitch(draw), atChip());
}

const isTable = () => (view.form || (view.form = remembered('findings') ?? 'cards')) === 'table';

/** One card a finding, or one row. */
function formSwitch(draw) {
  const button = (form, text) => h('button', {'aria-pressed': String(isTable() === (form === 'table')), on: {click: () => {
    view.form = form;
    remember('findings', form);
    draw();
  }}}, text);
  return h('span', {class: 'view-switch', role: 'group', 'aria-label': 'Form of the list'}, button('cards', 'Cards'),
    button('table', 'Table'));
}

/** The junction that the list was opened from. */
function atChip() {
  const j = state.ledger.byId.get(state.findingsAt);
  const name = j ? `${kindText(kindOf(j))}, ${u.length(j.lengthM)}` : 'this node';
  return state.findingsAt && h('button', {class: 'chip', title: 'Show the findings of all lines', on: {click: () => set({findingsAt: ''})}},
    `At ${name} ×`);
}

const acceptedFile = () => h('p', {},
  h('a', {href: api.decisionsAt(state.analysis.id), download: 'decisions.json'}, 'What is accepted, as a file'), ' for ',
  h('code', {}, 'seamledger analyze MODEL --decisions decisions.json'));

const nothing = () => h('div', {class: 'empty'}, h('h2', {}, 'No findings'), h('p', {}, 'Nothing in this model required a decision. '
  + 'That is no proof that the roof is right: look at the long lines and the walls all the same.'));

/** Severities in their own order, other groups by how much is to be feared in them. */
function groups(list) {
  const {of} = GROUPS[view.group], out = new Map(view.group === 'severity' ? Object.keys(SEVERITY).map(k => [k, []]) : []);
  for (const f of list) out.set(of(f), [...out.get(of(f)) ?? [], f]);
  return [...out].filter(([, members]) => members.length);
}

function group(key, members, draw) {
  const list = view.unfolded.has(key) ? members : members.slice(0, AT_FIRST);
  const unfold = () => {
    view.unfolded.add(key);
    draw();
  };
  return h('section', {class: 'severity ' + key}, h('h3', {}, `${GROUPS[view.group].name(key)} (${u.count(members.length)})`),
    h('ul', {class: 'notes causes'}, list.map(f => card(f, draw))),
    list.length < members.length && h('p', {}, h('button', {on: {click: unfold}}, `Show all ${u.count(members.length)}`)));
}

/** One cause: words first, the code small; what folds in are its places and elements. */
function card(f, draw) {
  const lines = placesOf(f);
  const pick = h('input', {type: 'checkbox', 'aria-label': `Pick: ${titleOf(f)}`, disabled: isAccepted(f), on: {change: () => {
    if (pick.checked) view.picked.add(f.place); else view.picked.delete(f.place);
    draw();
  }}});
  pick.checked = view.picked.has(f.place);
  return h('li', {class: f.severity + (isAccepted(f) ? ' accepted' : '')},
    h('div', {class: 'cause'}, pick, h('div', {},
      h('b', {}, SEVERITY[f.severity].sign, ' ', titleOf(f)),
      restOf(f) && h('p', {class: 'advice'}, restOf(f)),
      adviceOf(f) && h('p', {class: 'advice'}, f.who && h('strong', {}, `${u.capital(f.who)}: `), adviceOf(f),
        f.reason && h('small', {}, ` ${reasonOf(f)}`)),
      h('p', {class: 'cause-facts'},
        f.risk > 0 && h('span', {title: 'How much a leak is to be feared there, of 100'}, `Risk ${f.risk} of 100`),
        lines.length > 1 && link(`Show its ${u.count(lines.length)} places on the roof`, () => showPlaces(f)),
        lines.length === 1 && places(lines), h('code', {}, f.code)),
      h('div', {class: 'cause-where'}, lines.length > 1 && places(lines), elements(f)), placeButton(f), remarks(f))));
}
