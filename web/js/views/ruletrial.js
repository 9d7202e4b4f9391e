// Limits and files of the rules as a user would have them: tried on this roof and on the samples, saved as a folder; kept nowhere.

import {h, num, put, say, scrolling, table} from '../dom.js';
import {state} from '../state.js';
import {kindText} from '../ledger/marks.js';
import {saveBlob} from '../parts/save.js';
import * as api from '../api/rules.js';
import {count} from '../units.js';
import {difference} from './difference.js';

/** What is edited: numbers by limit, texts by file; and what was tried of it. */
export const edits = {
  limits: new Map(), files: new Map(), tried: null, refused: '',
  isAny: () => edits.limits.size + edits.files.size > 0,
  asked: () => ({limits: Object.fromEntries(edits.limits), files: Object.fromEntries(edits.files)}),
  /** What was tried is no more what is edited. */
  forget: () => Object.assign(edits, {tried: null, refused: ''}),
};

const place = h('div', {class: 'trial', 'aria-live': 'polite'});

/** What is edited, and what to do with it. */
export function editsBar(rules, draw) {
  const message = h('p', {role: 'alert', class: 'refused'}, edits.refused);
  const refuse = e => put(message, edits.refused = e.message);
  const back = () => {
    edits.limits.clear();
    edits.files.clear();
    edits.forget();
    put(place);
    draw();
  };
  const tryIt = async e => {
    e.currentTarget.disabled = true;
    edits.forget();
    await run(rules, refuse);
    draw();
  };
  const save = () => api.folder(edits.asked()).then(blob => saveBlob('shapes.zip', blob)).catch(refuse);
  const words = [edits.limits.size && `${count(edits.limits.size)} ${edits.limits.size === 1 ? 'limit' : 'limits'} changed`,
    edits.files.size && `files of your own: ${fileWords([...edits.files.keys()])}`].filter(Boolean).join('; ');
  return h('div', {class: 'edits' + (edits.isAny() ? ' any' : '')}, words && h('b', {role: 'status'}, words), ' ',
    edits.isAny() && [h('button', {class: 'main', on: {click: tryIt}}, 'Try on this roof and samples'), ' ',
      h('button', {on: {click: save}}, 'Save as zip'), ' ', h('button', {on: {click: back}}, 'Take back'), ' '],
    edits.limits.size === 0 && ownFiles(draw, refuse), message);
}

/** Files that an office has already; broken ones are refused with file and line. */
function ownFiles(draw, refuse) {
  const take = async () => {
    const chosen = [...input.files];
    input.value = '';
    try {
      const files = new Map((await Promise.all(chosen.map(textsOf))).flat());
      await api.rulesWith({limits: {}, files: Object.fromEntries(files)});
      files.forEach((text, name) => edits.files.set(name, text));
      // The places of limits are those of the files before.
      edits.limits.clear();
      edits.forget();
      put(place);
      draw();
    } catch (e) {
      refuse(e);
    }
  };
  const input = h('input', {type: 'file', accept: '.ttl,text/turtle,.zip,application/zip', multiple: true, class: 'unseen', tabindex: -1,
    'aria-label': 'Files of rules of your own', on: {change: take}});
  return [h('button', {on: {click: () => input.click()}}, 'Try files of your own…'), input];
}

/** The files of rules in what was chosen: itself, or what a saved folder holds. */
const textsOf = async f => /\.zip$/i.test(f.name) ? Object.entries((await api.unpacked(f)).files) : [[f.name, await f.text()]];

/** Rules by name, examples by number: a folder may hold many. */
function fileWords(names) {
  const rules = names.filter(n => !n.startsWith('tests/')), more = names.length - rules.length;
  return [...rules, more && `${count(more)} ${more === 1 ? 'example' : 'examples'}`].filter(Boolean).join(', ');
}

/** What came of the last trial. */
export const trialResult = () => place;

/** What is tried from now on is nothing any more; what was tried already stays in view. */
function stop() {
  edits.tried = null;
  say('Stopped.');
}

/** Examples first, then this roof, then one sample after the other. */
async function run(rules, refuse) {
  const mine = edits.tried = {}, asked = edits.asked(), rows = [];
  const isStill = () => edits.tried === mine;
  put(place, h('p', {class: 'quiet'}, 'Running the examples…'));
  try {
    const now = await api.rulesWith(asked);
    if (isStill()) put(place, examples(now), h('p', {class: 'quiet'}, 'Analysing this roof…'));
    const roof = await api.onRoof(state.analysis.id, asked);
    if (!isStill()) return;
    const sampleTable = h('div', {});
    put(place, h('h3', {}, 'What would change'), examples(now), h('h4', {}, 'On this roof'), difference(roof, false),
      h('h4', {}, 'On the samples'), sampleTable);
    say('This roof was tried.');
    onSamples(rules.samples, asked, rows, sampleTable, isStill);
  } catch (e) {
    put(place);
    refuse(e);
  }
}

function examples(now) {
  const broken = now.examples.filter(e => !e.holds);
  return broken.length === 0 ? h('p', {}, `All ${count(now.examples.length)} examples of the rules hold.`)
    : h('details', {open: broken.length < 4 || null}, h('summary', {}, `${count(broken.length)} of ${count(now.examples.length)} `
      + 'examples no longer hold: whoever moves a limit moves its examples too'), h('ul', {}, broken.map(e =>
      h('li', {}, h('code', {}, e.file), ' ', e.differences.slice(0, 4).join('; ')))));
}

async function onSamples(names, asked, rows, root, isStill) {
  if (!names.length) return put(root, h('p', {class: 'quiet'}, 'This service offers no samples.'));
  const stopButton = h('button', {class: 'stop', on: {click: () => { stop(); finish('Stopped: '); }}}, 'Stop');
  const status = h('p', {class: 'quiet', role: 'status'}), shown = h('div', {});
  const finish = words => {
    const touched = rows.filter(r => r[1] + r[2] + r[3] > 0);
    put(root, h('p', {}, words, rows.length === 0 ? 'none of the samples was tried.'
      : touched.length ? `${count(touched.length)} of ${count(rows.length)} samples change.`
        : `None of the ${count(rows.length)} samples changes.`), sampleRows(rows));
  };
  put(root, h('p', {}, stopButton), status, shown);
  for (const name of names) {
    put(status, `Trying ${name}, ${count(rows.length + 1)} of ${count(names.length)}…`);
    put(shown, sampleRows(rows));
    try {
      const c = await api.onSample(name, asked);
      if (!isStill()) return;
      rows.push([name, c.changed.length + c.added.length + c.removed.length, c.newFindings.length, c.goneFindings.length, kindsOf(c)]);
    } catch (e) {
      if (!isStill()) return;
      rows.push([name, NaN, NaN, NaN, e.message]);
    }
  }
  finish('');
  say('All samples were tried.');
}

/** Samples that change, and those that could not be tried. */
const isTouched = r => !(r[1] + r[2] + r[3] === 0);
const SAMPLE_HEADS = ['Sample', ...['Lines changed', 'New findings', 'Findings gone'].map(text => ({text, num: true})), 'What'];
const sampleRows = rows => rows.some(isTouched) && scrolling('Samples', table(SAMPLE_HEADS, rows.filter(isTouched).map(([name, ...cells]) =>
  h('tr', {}, h('td', {}, name), cells.slice(0, 3).map(n => num(Number.isNaN(n) ? '–' : n === 0 ? '' : count(n))),
    h('td', {}, h('small', {}, cells[3]))))));

/** The kinds that lines became, as "4 hip → ridge". */
function kindsOf(c) {
  const moves = new Map();
  for (const p of c.changed) {
    const key = p.before.kind !== p.after.kind ? [p.before, p.after].map(j => kindText(j.kind).toLowerCase()).join(' → ')
      : p.before.detail !== p.after.detail ? `${p.before.detail} → ${p.after.detail}` : p.changes.join(', ');
    moves.set(key, (moves.get(key) ?? 0) + 1);
  }
  return [...moves].map(([key, n]) => `${n} ${key}`).join('; ');
}
