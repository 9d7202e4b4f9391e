// One roof under several systems side by side. What people put together here is computed by the service and kept nowhere.

import {h, put} from '../dom.js';
import {state} from '../state.js';
import {fileName, saveText} from '../parts/save.js';
import {control, fieldName} from '../parts/values.js';
import {sideBySide} from './sidebyside.js';
import * as api from '../api/systems.js';

const MOST = 5;

/** What is put together: a name, changed values, perhaps a whole system from a file. */
let drafts = [];
/** The last comparison, of the result that it was computed for. */
let done = {of: '', comparison: null};

const key = () => `${state.analysis.id} ${state.analysis.ledgerSha256 ?? ''}`;
const fresh = () => ({name: `Alternate ${drafts.length + 1}`, changes: [{path: 'panel.coverage', value: ''}], file: '', system: null});

/** The alternates as the service takes them. */
const asked = () => drafts.map(d => ({name: d.name, ...(d.system ? {system: d.system} : {}),
  changes: Object.fromEntries(d.changes.filter(c => c.value !== '').map(c => [c.path, c.value]))}));

/** @param {object} system the current one, for values to begin with */
export function alternates(system) {
  const root = h('section', {class: 'alternates'});
  const draw = fields => put(root, content(system, fields, () => draw(fields)));
  api.systemForm().then(draw, e => put(root, h('p', {role: 'alert'}, e.message)));
  return root;
}

function content(system, fields, draw) {
  const message = h('p', {role: 'alert', class: 'refused'});
  const add = () => {
    drafts.push(fresh());
    draw();
  };
  const working = async (button, work) => {
    button.disabled = true;
    put(message, 'Computing…');
    try {
      await work();
      put(message);
    } catch (e) {
      put(message, ...e.message.split('\n').map(line => h('span', {class: 'line'}, line, h('br'))));
    }
    button.disabled = false;
  };
  const compare = e => working(e.currentTarget, async () => {
    const of = key(), comparison = await api.alternates(state.analysis.id, asked());
    done = {of, comparison};
    draw();
  });
  const save = e => working(e.currentTarget, async () =>
    saveText(fileName('alternates'), await api.alternatesTable(state.analysis.id, asked()), 'text/csv'));
  return [h('h3', {}, 'Alternates'), h('p', {}, 'The same roof with other values, or another system: every line of the order with its '
      + 'difference, and the findings that come and go. Nothing is kept.'),
    drafts.map(d => draft(d, system, fields, draw)),
    h('p', {class: 'doings'}, drafts.length < MOST && h('button', {on: {click: add}}, 'Add an alternate'), ' ',
      drafts.length > 0 && h('button', {class: 'main', on: {click: compare}}, 'Compare'), ' ',
      drafts.length > 0 && h('button', {on: {click: save}}, 'Alternates as CSV')), message,
    done.of === key() && drafts.length > 0 && sideBySide(done.comparison)];
}

function draft(d, system, fields, draw) {
  const again = fn => () => {
    fn();
    draw();
  };
  const input = h('input', {type: 'file', accept: '.json,application/json', class: 'unseen', 'aria-label': `System of ${d.name}`,
    on: {change: e => take(d, e.currentTarget.files[0], draw)}});
  return h('fieldset', {class: 'draft'}, h('legend', {}, d.name),
    h('p', {class: 'doings'}, h('label', {}, 'Name ', h('input', {value: d.name, maxlength: 100,
      on: {input: e => { d.name = e.currentTarget.value; }}})), ' ',
    h('button', {on: {click: () => input.click()}}, 'System from a file…'), input, ' ',
    h('button', {on: {click: again(() => { drafts = drafts.filter(x => x !== d); })}}, 'Remove')),
    d.file && h('p', {}, `The system of ${d.file}`, d.changes.length > 0 && ', with these values:'),
    d.changes.map(c => change(c, d, system, fields, draw)),
    h('p', {}, h('button', {on: {click: again(() => d.changes.push({path: 'waste.tape', value: ''}))}}, 'Change another value')));
}

async function take(d, file, draw) {
  if (!file) return;
  const text = await file.text();
  try {
    Object.assign(d, {system: JSON.parse(text), file: file.name, changes: []});
  } catch (e) {
    Object.assign(d, {system: null, file: `${file.name}, which is no JSON (${e.message})`});
  }
  draw();
}

const now = (system, path) => String(path.split('.').reduce((node, k) => node?.[k], system) ?? '');

function change(c, d, system, fields, draw) {
  const field = fields.find(f => f.path === c.path), groups = Map.groupBy
    ? Map.groupBy(fields.filter(f => f.path !== 'name'), f => f.path.split('.')[0]) : new Map([['Values', fields]]);
  if (field?.choices.length && c.value === '') c.value = now(d.system ?? system, c.path);
  const pick = h('select', {'aria-label': 'Value to change', on: {change: e => {
    Object.assign(c, {path: e.currentTarget.value, value: ''});
    draw();
  }}}, [...groups].map(([name, list]) => h('optgroup', {label: name},
    list.map(f => h('option', {value: f.path, selected: f.path === c.path}, fieldName(f.path))))));
  const drop = () => {
    d.changes = d.changes.filter(x => x !== c);
    draw();
  };
  return h('p', {class: 'doings'}, pick, ' ', control(field, c.value, text => { c.value = text; },
    {'aria-label': fieldName(c.path), placeholder: now(d.system ?? system, c.path)}), ' ', h('button', {on: {click: drop}}, 'Remove'));
}
