// Before there is a ledger: drop models, try a sample, open what was analysed before; then watch it run.

import {h, put, say, field} from './dom.js';
import {bytes, percent} from './units.js';
import {serversPanel} from './servers.js';
import * as api from './api.js';

const STATES = {queued: 'waiting', running: 'running', done: 'ready', failed: 'failed', cancelled: 'cancelled'};

export async function showStart(desk, open, problem) {
  const [samples, analyses, servers] = await Promise.all([api.samples(), api.analyses(), serversPanel(open)]);
  const message = h('div', {role: 'alert'});
  const fail = (title, detail) => put(message, h('div', {class: 'trouble'}, h('h2', {}, title), h('p', {}, detail)));
  if (problem) fail(problem.title, problem.detail);
  put(desk, h('div', {class: 'start'},
    h('section', {class: 'intro'},
      h('h1', {}, 'What seals every junction of this roof?'),
      h('p', {}, 'Give it the building model of a standing-seam metal roof. It finds each ridge, hip, valley, eave, wall and penetration, says what metal, tape, bead and fasteners belong there and why, and adds up the order.')),
    message,
    dropper(open, fail),
    servers,
    samples.length > 0 && h('section', {}, h('h2', {}, 'Or look at a sample'), h('ul', {class: 'cards'}, byRichness(samples).map(x => sampleCard(x, open, fail)))),
    analyses.length > 0 && h('section', {}, h('h2', {}, 'Analysed before'), earlier(analyses, open, fail))));
}

/** The roof with the most to see comes first. */
const byRichness = samples => samples.slice().sort((a, b) => b.bytes - a.bytes || (a.name < b.name ? -1 : 1));

function sampleCard(x, open, fail) {
  const start = async () => {
    try { const {id} = await api.openSample(x.name); go(id, open); } catch (e) { fail('The sample was not opened', e.message); }
  };
  return h('li', {}, h('button', {class: 'card', on: {click: start}},
    h('strong', {}, x.name.replace(/\.(ifc|ifczip|ifc\.gz)$/i, '').replace(/[-_]/g, ' ')), h('span', {}, aboutOf(x)), h('small', {}, `${x.name} · ${bytes(x.bytes)}`)));
}

/** What a sample shows, without its name in front: that stands above. */
function aboutOf(x) {
  const text = (x.about || 'sample model').replace(/^[^:]{1,24}: /, '');
  return text.charAt(0).toUpperCase() + text.slice(1);
}

function earlier(analyses, open, fail) {
  const remove = async a => {
    if (!confirm(`Remove ${a.title}, ${a.words}, and what was said about it?`)) return;
    try { await api.remove(a.id); location.reload(); } catch (e) { fail('It was not removed', e.message); }
  };
  return h('div', {class: 'scroll', tabindex: 0, role: 'region', 'aria-label': 'Analysed before'}, h('table', {class: 'plain'},
    h('thead', {}, h('tr', {}, ['Model', 'Revision', 'When', 'State', ''].map(t => h('th', {scope: 'col'}, t || h('span', {class: 'unseen'}, 'Remove'))))),
    h('tbody', {}, analyses.slice(0, 200).map(a => h('tr', {},
      h('td', {}, h('button', {class: 'link', on: {click: () => go(a.id, open)}}, a.title)),
      h('td', {}, a.label, a.origin?.comment && h('small', {}, ' ' + a.origin.comment)), h('td', {}, new Date(a.created).toLocaleString()),
      h('td', {}, STATES[a.state] ?? a.state, a.problem && h('small', {}, ' ' + a.problem.detail)),
      h('td', {}, h('button', {class: 'link', 'aria-label': `Remove ${a.title} ${a.words}`, on: {click: () => remove(a)}}, 'Remove')))))));
}

export function go(id, open) {
  history.pushState(null, '', '?analysis=' + encodeURIComponent(id));
  return open(id);
}

/** The place to drop models on; with a project, what is dropped becomes its next revision. */
export function dropper(open, fail, project, title = 'Drop IFC models here') {
  const input = h('input', {type: 'file', multiple: true, accept: '.ifc,.ifczip,.gz,.zip,.json', class: 'unseen', 'aria-label': 'Models to analyse', on: {change: () => send([...input.files])}});
  const bar = h('progress', {max: 1, value: 0, hidden: true, 'aria-label': 'Upload'});
  const box = h('section', {class: 'drop', 'aria-label': 'New analysis'},
    h('h2', {}, title),
    h('p', {}, 'IFC2X3, IFC4 or IFC4X3, plain, gzipped or zipped. Several models are read as one building. A .json file among them is taken as the roof system.'),
    h('p', {}, h('button', {class: 'main', on: {click: () => input.click()}}, 'Choose files…')), input, bar);
  const send = async files => {
    const systems = files.filter(f => f.name.toLowerCase().endsWith('.json'));
    const models = files.filter(f => !systems.includes(f));
    if (!models.length) return fail('No model among these files', 'Choose at least one file ending in .ifc, .ifczip or .ifc.gz.');
    bar.hidden = false;
    try {
      const {id} = await api.upload(models, systems[0], project, f => { bar.value = f; });
      await go(id, open);
    } catch (e) {
      fail('The models were not taken', e.message);
    } finally {
      bar.hidden = true;
      input.value = '';
    }
  };
  box.addEventListener('dragover', e => { e.preventDefault(); box.classList.add('over'); });
  box.addEventListener('dragleave', () => box.classList.remove('over'));
  box.addEventListener('drop', e => { e.preventDefault(); box.classList.remove('over'); send([...e.dataTransfer.files]); });
  return box;
}

export function showProgress(desk, analysis, open) {
  const bar = h('progress', {max: 1, value: analysis.progress.fraction, 'aria-label': 'Analysis'});
  const stage = h('p', {class: 'stage'}, analysis.progress.stage);
  const note = h('p', {});
  const stop = async () => { try { await api.cancel(analysis.id); } catch (e) { put(note, e.message); } };
  put(desk, h('section', {class: 'running'},
    h('h1', {}, `Reading ${analysis.title}`), bar, stage, h('p', {}, h('button', {on: {click: stop}}, 'Stop')), note));
  let last = '';
  const {end} = api.follow(analysis.id, p => {
    bar.value = p.fraction;
    put(stage, `${p.stage} · ${percent(p.fraction)}`);
    if (p.stage !== last) say(last = p.stage);
  });
  end.then(() => open(analysis.id));
}

export function showTokenForm(desk, done) {
  const token = h('input', {type: 'password', autocomplete: 'current-password', required: true});
  const note = h('p', {role: 'alert'});
  const send = async e => {
    e.preventDefault();
    try { await api.openSession(token.value); done(); } catch (x) { put(note, x.message); }
  };
  put(desk, h('form', {class: 'running', on: {submit: send}},
    h('h1', {}, 'This server asks for its token'), h('p', {}, 'Whoever started it has it.'), field('Token', token), note, h('p', {}, h('button', {class: 'main'}, 'Open'))));
}
