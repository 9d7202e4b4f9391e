// The rules in view: every shape that decides something, with its limits and examples, and where it applies on this roof.

import {choice, h, put} from '../dom.js';
import {state, watch} from '../state.js';
import * as api from '../api/rules.js';
import {count} from '../units.js';
import {appliesTo, limitRow, ruleEntry} from './ruleentry.js';
import {editsBar, edits, trialResult} from './ruletrial.js';

const SORTS = {kind: 'Kinds of lines', detail: 'Details', finding: 'Findings', node: 'Nodes', fixed: 'Fixed lines of panels',
  limit: 'All limits'};

/** What of the rules shows: of this page alone. */
const view = {rules: null, problem: '', sort: 'kind', text: '', here: false, open: new Set()};

export function mountRules(root) {
  const draw = () => state.ledger && root.isConnected && put(root, content(draw));
  watch(['ledger', 'units'], draw);
  root.addEventListener('shown', () => {
    draw();
    fetchRules(draw);
  });
}

async function fetchRules(draw) {
  try {
    const rules = await api.rules();
    if (rules.hash === view.rules?.hash) return;
    Object.assign(view, {rules, problem: ''});
  } catch (e) {
    view.problem = e.message;
  }
  draw();
}

function content(draw) {
  const {rules} = view;
  const wait = view.problem || 'Reading the rules, and running their examples…';
  if (!rules) return [h('h2', {}, 'Rules'), h('p', {class: 'quiet', role: 'status'}, wait)];
  const isOther = rules.hash !== state.ledger.raw.program?.shapes;
  return [h('h2', {}, 'Rules'), lead(rules), isOther && h('p', {class: 'refused'},
    'This result was made by other rules than those that the service has now: analyse the models again to have it by these.'),
  editsBar(rules, draw), trialResult(rules), tools(draw), list(rules, draw)];
}

function lead(rules) {
  const broken = rules.examples.filter(e => !e.holds).length;
  return h('p', {}, `What a line is, which detail seals it and what is said about it is decided by shapes (SHACL) in ${rules.files.length} `
    + 'text files. ', `${count(rules.limits.length)} limits, ${count(rules.examples.length)} examples, `
    + (broken ? `${count(broken)} of which do not hold.` : 'all of which hold.'),
  ' Change a limit and try it: nothing is kept until you save it.');
}

function tools(draw) {
  const search = h('input', {type: 'search', placeholder: 'Find in the rules…', 'aria-label': 'Find in the rules', value: view.text,
    on: {change: () => { view.text = search.value.trim().toLowerCase(); draw(); }}});
  const here = h('input', {type: 'checkbox', id: 'rules-here', on: {change: () => { view.here = here.checked; draw(); }}});
  here.checked = view.here;
  const sort = v => { view.sort = v; draw(); };
  return h('div', {class: 'tools'}, choice(Object.entries(SORTS), view.sort, sort, {'aria-label': 'Which rules'}), search,
    h('label', {class: 'check'}, here, ' On this roof only'));
}

function list(rules, draw) {
  const has = words => words.toLowerCase().includes(view.text);
  if (view.sort === 'limit') {
    const users = new Map();
    for (const e of rules.entries) for (const id of e.limits) users.set(id, [...users.get(id) ?? [], e]);
    const shown = rules.limits.filter(l => has(`${l.shape} ${l.fact} ${l.note} ${l.file}`)
      && (!view.here || (users.get(l.id) ?? []).some(e => appliesTo(e).length)));
    return h('div', {class: 'limits'}, shown.map(l => h('div', {class: 'limit-block'}, limitRow(l, draw),
      h('small', {}, usedBy(users.get(l.id) ?? []), ` ${l.file}, line ${l.line}.`))));
  }
  const shown = rules.entries.filter(e => e.sort === view.sort && has(`${e.id} ${e.title} ${e.requires} ${e.why.join(' ')}`)
    && (!view.here || appliesTo(e).length));
  return shown.length ? h('div', {class: 'rule-list'}, shown.map(e => ruleEntry(e, rules, view.open, draw)))
    : h('p', {class: 'empty'}, 'No rule matches.');
}

const usedBy = entries => entries.length === 0 ? 'Decides by itself in no shape; others refer to it.'
  : `Used by ${entries.slice(0, 6).map(e => e.id).join(', ')}${entries.length > 6 ? ` and ${entries.length - 6} more` : ''}.`;

addEventListener('beforeunload', e => {
  if (edits.isAny()) e.preventDefault();
});
