// What is shown while an analysis runs, and where the service wants its token first.

import {field, h, put, say} from '../dom.js';
import {percent} from '../units.js';
import {open} from '../navigate.js';
import * as api from '../api.js';

/** Shows how far an analysis is, and opens it when it has ended. */
export function showProgress(desk, analysis) {
  const bar = h('progress', {max: 1, value: analysis.progress.fraction, 'aria-label': 'Analysis'});
  const stage = h('p', {class: 'stage'}, analysis.progress.stage);
  const note = h('p', {});
  const stop = async () => {
    try {
      await api.cancel(analysis.id);
    } catch (e) {
      put(note, e.message);
    }
  };
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
    try {
      await api.openSession(token.value);
      done();
    } catch (x) {
      put(note, x.message);
    }
  };
  put(desk, h('form', {class: 'running', on: {submit: send}},
    h('h1', {}, 'This server requires its token'), h('p', {}, 'Whoever started it has it.'), field('Token', token), note,
    h('p', {}, h('button', {class: 'main'}, 'Open'))));
}
