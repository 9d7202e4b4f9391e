// The result in the forms of other programs, and what comes back from there.

import {h, put, say} from '../dom.js';
import {set, state} from '../state.js';
import * as api from '../api.js';
import {fileName} from '../parts/save.js';

const FORMS = [['findings.bcf', 'Findings as BCF 3.0'], ['findings-2.1.bcf', 'Findings as BCF 2.1'], ['graph.ttl', 'Graph as Turtle'],
  ['graph.jsonld', 'Graph as JSON-LD']];

/** The menu of files for other programs. */
export const handedOn = () => h('details', {class: 'handover'}, h('summary', {}, 'Files for other programs'), h('ul', {}, entries()));

function entries() {
  const id = state.analysis.id, models = (state.analysis.files ?? []).filter(f => f.role === 'model');
  return [entry(api.workbookAt(id, state.units), fileName('workbook', 'xlsx'), 'Workbook that calculates (XLSX)'),
    models.map((f, i) => entry(api.copyAt(id, i + 1), f.name, `${f.name} with the answers in it (IFC)`)),
    FORMS.map(([file, text]) => entry(api.fileAt(id, file), file, text)),
    entry(api.sequenceAt(id, {format: 'pdf'}), fileName('roof-sheets', 'pdf'), 'Sheets for the roof (PDF)'),
    entry(api.sequenceAt(id, {format: 'json'}), fileName('sequence', 'json'), 'Order of work (JSON)')];
}

const entry = (href, download, text) => h('li', {}, h('a', {href, download}, text));

/** Takes a BCF file that came back from a coordination tool. */
export function topicsBack() {
  const answer = h('div', {role: 'status'});
  const input = h('input', {type: 'file', accept: '.bcf,.bcfzip', on: {change: () => send(input, answer)}});
  return h('div', {class: 'topics-back'}, h('label', {}, 'Take back a BCF file with statuses and comments ', input), answer);
}

async function send(input, answer) {
  const id = state.analysis.id, file = input.files[0];
  if (!file) return;
  put(answer, 'Reading …');
  try {
    const came = await api.takeTopics(id, file);
    input.value = '';
    put(answer, outcome(came));
    const said = await api.reviews(id);
    if (state.analysis?.id === id) set({marks: new Map(said.findings.map(m => [m.place, m]))});
    say(summary(came));
  } catch (e) {
    put(answer, h('span', {class: 'refused'}, e.message));
  }
}

const some = (n, what) => `${n} ${what}${n === 1 ? '' : 's'}`;

const summary = c => `${some(c.matched, 'topic')} taken: ${some(c.accepted, 'finding')} accepted, ${c.reopened} reopened, `
  + `${some(c.comments, 'new comment')}.`;

const outcome = c => [h('p', {}, summary(c)), c.unmatched.length > 0 && h('details', {open: true},
  h('summary', {}, `About no finding of this result: ${some(c.unmatched.length, 'topic')}`),
  h('ul', {}, c.unmatched.map(t => h('li', {}, `${t.title || t.guid}${t.status && ` (${t.status})`}`))))];
