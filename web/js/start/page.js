// Before there is a ledger: drop models, try a sample, open what was analysed before.

import {h, link, put, scrolling, table} from '../dom.js';
import {bytes, capital} from '../units.js';
import {go} from '../navigate.js';
import {when} from '../parts/dates.js';
import {dropper} from '../parts/dropper.js';
import {serversPanel} from './servers.js';
import * as api from '../api.js';
import {sampleThumbnailAt, thumbnailAt} from '../api/thumbnails.js';

const STATES = {queued: 'waiting', running: 'running', done: 'ready', failed: 'failed', cancelled: 'cancelled'};
const MOST_EARLIER = 200;

/**
 * Shows the start page.
 * @param {Element} desk
 * @param {{title: string, detail: string}} [problem] why it is shown instead of what was asked for
 */
export async function showStart(desk, problem) {
  const [samples, analyses, servers] = await Promise.all([api.samples(), api.analyses(), serversPanel()]);
  const message = h('div', {role: 'alert'});
  const fail = (title, detail) => put(message, h('div', {class: 'trouble'}, h('h2', {}, title), h('p', {}, detail)));
  if (problem) fail(problem.title, problem.detail);
  put(desk, h('div', {class: 'start'},
    h('section', {class: 'intro'},
      h('h1', {}, 'What seals every junction of this roof?'),
      h('p', {}, 'Give it the building model of a standing-seam metal roof. It finds each ridge, hip, valley, eave, wall and penetration, '
        + 'says what metal, tape, bead and fasteners belong there and why, and adds up the order.')),
    message,
    dropper(fail),
    servers,
    samples.length > 0 && h('section', {}, h('h2', {}, 'Or look at a sample'),
      h('ul', {class: 'cards'}, byRichness(samples).map(x => sampleCard(x, fail)))),
    analyses.length > 0 && h('section', {}, h('h2', {}, 'Analysed before'), earlier(analyses, fail))));
}

/** The roof with the most to see comes first. */
const byRichness = samples => samples.slice().sort((a, b) => b.bytes - a.bytes || (a.name < b.name ? -1 : 1));

function sampleCard(x, fail) {
  const start = async () => {
    try {
      await go((await api.openSample(x.name)).id);
    } catch (e) {
      fail('The sample was not opened', e.message);
    }
  };
  const name = x.name.replace(/\.(ifc|ifczip|ifc\.gz)$/i, '').replace(/[-_]/g, ' ');
  return h('li', {}, h('button', {class: 'card', on: {click: start}},
    x.thumbnail && picture(sampleThumbnailAt(x.name)), h('strong', {}, name), h('span', {}, aboutOf(x)),
    h('small', {}, `${x.name} · ${bytes(x.bytes)}`)));
}

/** A small picture, for those who can see it; fetched when it comes into sight. */
const picture = src => h('img', {class: 'thumbnail', src, alt: '', loading: 'lazy', width: 160, height: 100});

/** What a sample shows, without its name in front: that stands above. */
const aboutOf = x => capital((x.about || 'sample model').replace(/^[^:]{1,24}: /, ''));

/** The title is the first model's. */
function otherModels(a) {
  const others = a.files.filter(f => f.role === 'model').length - 1;
  return others > 0 && h('small', {}, ` with ${others} more`);
}

function earlier(analyses, fail) {
  const remove = async a => {
    if (!confirm(`Remove ${a.title}, ${a.words}, and what was said about it?`)) return;
    try {
      await api.remove(a.id);
      location.reload();
    } catch (e) {
      fail('It was not removed', e.message);
    }
  };
  const row = a => h('tr', {},
    h('td', {}, h('div', {class: 'earlier'}, a.state === 'done' && picture(thumbnailAt(a.id)),
      h('span', {}, link(a.title, () => go(a.id)), otherModels(a)))),
    h('td', {}, a.label, a.origin?.comment && h('small', {}, ' ' + a.origin.comment)),
    h('td', {}, when(a.created)),
    h('td', {}, STATES[a.state] ?? a.state, a.problem && h('small', {}, ' ' + a.problem.detail)),
    h('td', {}, link('Remove', () => remove(a), {'aria-label': `Remove ${a.title} ${a.words}`})));
  const heads = ['Model', 'Revision', 'When', 'State', {text: h('span', {class: 'unseen'}, 'Remove')}];
  return scrolling('Analysed before', table(heads, analyses.slice(0, MOST_EARLIER).map(row)));
}
