// The projects that are watched, and how far each is.

import {h, link, put, scrolling, table} from '../dom.js';
import {go} from '../navigate.js';
import * as api from '../api.js';
import {faultWords, watchOf} from '../parts/faults.js';

const STAGES = {found: 'waiting for its analysis', analysed: 'analysed; the answer is not with it yet', answered: 'answered',
  'given-up': 'given up', passed: 'from before the watch'};

/** A revision on a server, as it is listed. */
export const dated = r => `${r.number}, ${new Date(r.created).toLocaleString()}${r.comment ? ': ' + r.comment : ''}`;

/** Draws the watches; what did not change is left alone, so that nobody loses the place where they are. */
export async function showWatches(place, fail) {
  let all;
  try {
    const [watches, {faults = []}] = await Promise.all([api.watches(), api.health()]);
    all = watches.filter(w => w.on).map(w => ({...w, fault: faults.find(f => f.part === watchOf(w.server))}));
  } catch (e) {
    return fail('The watched projects cannot be shown', e.message);
  }
  const drawn = JSON.stringify(all);
  if (place.dataset.drawn === drawn) return;
  place.dataset.drawn = drawn;
  const stop = async w => {
    try {
      await api.turnWatch(w.server, w.project, false);
      await showWatches(place, fail);
    } catch (e) {
      fail('The watch was not changed', e.message);
    }
  };
  const heads = ['Project', 'Server', 'Newest revision', 'State', {text: h('span', {class: 'unseen'}, 'Stop')}];
  put(place, all.length > 0 && [h('h3', {}, 'Watched: each new revision is analysed by itself'),
    scrolling('Watched projects', table(heads, all.map(w => row(w, stop))))]);
}

const row = (w, stop) => h('tr', {}, h('td', {}, w.name), h('td', {}, w.server), h('td', {}, newest(w)), h('td', {}, stateOf(w)),
  h('td', {}, link('Stop', () => stop(w), {'aria-label': `Stop watching ${w.name}`})));

function newest(w) {
  if (!w.last) return 'none yet';
  return w.last.analysis && w.last.stage !== 'given-up' ? link(dated(w.last), () => go(w.last.analysis)) : dated(w.last);
}

function stateOf(w) {
  const words = [];
  if (w.fault) words.push(faultWords(w.fault));
  if (w.problem) words.push(w.problem.detail);
  else if (!w.checked) words.push('the server is being asked');
  if (w.last) words.push((STAGES[w.last.stage] ?? w.last.stage) + (w.last.problem ? ': ' + w.last.problem : ''));
  if (w.open > 1) words.push(`${w.open} revisions to do`);
  return words.join('; ');
}
