// The work on the roof, seen from the office: how much is looked at and signed off, the record, the links for the crew.

import {h, link, put, scrolling, table} from '../dom.js';
import {set, state, watch} from '../state.js';
import {placeNames} from '../ledger/placenames.js';
import {STAGES, inOrder, lengths, points} from '../ledger/site.js';
import {when} from '../parts/dates.js';
import {fileName} from '../parts/save.js';
import {capital, count, percent, run} from '../units.js';
import {fileAt} from '../api.js';
import {record} from '../api/site.js';
import {linksPanel} from './links.js';

const MOST = 400, LOOK_MS = 20_000;

export function mountSite(root) {
  const parts = {work: h('div', {}), links: h('div', {}), places: h('div', {})};
  put(root, parts.work, parts.links, parts.places);
  const draw = () => {
    if (!state.ledger || !root.isConnected || !state.site) return;
    put(parts.work, summary(state.site));
    put(parts.places, listed(state.site));
  };
  let shownFor = '';
  const show = () => {
    if (shownFor !== state.analysis.id) put(parts.links, linksPanel());
    shownFor = state.analysis.id;
    draw();
    look(root, parts.work);
  };
  watch(['site', 'selected', 'units', 'ledger'], draw);
  root.addEventListener('shown', show);
}

let timer;
/** Fetches now, and again while somebody looks. */
async function look(root, work) {
  clearTimeout(timer);
  if (!root.isConnected || state.tab !== 'site') return;
  const {id} = state.analysis;
  try {
    const site = await record(id);
    if (state.analysis?.id === id && site.version !== state.site?.version) set({site});
  } catch (e) {
    put(work, h('p', {class: 'refused', role: 'alert'}, e.message));
  }
  timer = setTimeout(() => look(root, work), LOOK_MS);
}

const HEADS = ['Place', 'How it stands', {text: 'Length', num: true}, 'Hold points'];
const SIGNED = 'Signed off', LAST = 'Last said';

function summary(site) {
  const c = site.coverage, share = m => percent(m / (c.lengthM || 1));
  const disagree = c.conflicts > 0 && `; at ${count(c.conflicts)} ${c.conflicts === 1 ? 'place' : 'places'} two people disagree`;
  return [h('h2', {}, `On the roof: ${share(c.checkedM)} of the length looked at, ${share(c.signedM)} signed off`), shares(site),
    h('p', {}, `${count(c.openPoints)} ${c.openPoints === 1 ? 'hold point is' : 'hold points are'} open`, disagree, '.'), files()];
}

function listed(site) {
  const places = inOrder(site);
  // What nobody said yet has no column.
  const has = {signed: places.some(p => p.signed), last: places.some(p => p.events.length)};
  const heads = [...HEADS, ...(has.signed ? [SIGNED] : []), ...(has.last ? [LAST] : [])];
  return [h('h3', {}, 'Places'), scrolling('Places', table(heads, places.slice(0, MOST).map(p => row(p, has)))),
    places.length > MOST && h('p', {class: 'quiet'}, `The first ${MOST} of ${count(places.length)}.`), whole(site)];
}

function files() {
  const {id} = state.analysis;
  return h('p', {class: 'doings'},
    h('a', {class: 'button', href: fileAt(id, 'record.pdf'), download: fileName('record', 'pdf')}, 'Record (PDF)'), ' ',
    h('a', {class: 'button', href: fileAt(id, 'record.json'), download: fileName('record', 'json')}, 'Record (JSON)'), ' ',
    h('a', {class: 'button', href: '/roof/?analysis=' + id, target: '_blank', rel: 'noopener'}, 'The page for telephones'));
}

/** The length of all lines by how they stand, in words and as a bar. */
function shares(site) {
  const by = lengths(site), all = site.coverage.lengthM || 1, some = Object.entries(by).filter(([, m]) => m > 0).reverse();
  const words = ([stage, m]) => `${STAGES[stage]} ${run(m)}`;
  return h('div', {class: 'site-shares'}, h('div', {class: 'site-bar', role: 'img', 'aria-label': some.map(words).join(', ')},
    some.map(([stage, m]) => h('span', {class: 'site-part ' + stage, style: {width: 100 * m / all + '%'}, title: words([stage, m])}))),
  h('ul', {class: 'site-key'}, some.map(x => h('li', {}, h('span', {class: 'site-part ' + x[0]}), ' ', words(x)))));
}

/** As the telephones call it, so that office and roof talk of one place. */
function labelOf(place) {
  const L = state.ledger, word = p => L.raw[p.at ? 'nodeKinds' : 'kinds']?.find(k => k.id === p.kind)?.label ?? p.kind;
  L.placeNames ??= placeNames([...L.junctions, ...L.nodes.values()], word);
  return L.placeNames.get(place.id)?.text ?? capital(place.kind);
}

function row(p, has) {
  const n = points(p), last = p.events.at(-1);
  return h('tr', {class: p.id === state.selected ? 'selected' : ''},
    h('td', {}, link(`${labelOf(p)} ${p.id}`, () => set({selected: p.id, face: ''}))),
    h('td', {class: 'site-stage ' + p.stage}, STAGES[p.stage]),
    h('td', {class: 'num'}, p.lengthM > 0 ? run(p.lengthM) : ''), h('td', {}, `${n.settled} of ${n.all}`),
    has.signed && h('td', {}, p.signed ? `${p.signed.by}, ${when(p.signed.at)}` : ''),
    has.last && h('td', {}, last ? `${last.by}, ${when(last.at)}: ${last.kind}${last.text ? `, ${last.text}` : ''}` : ''));
}

/** Weather, lots and notes of the whole roof. */
const whole = site => site.elsewhere.length > 0 && [h('h3', {}, 'Of the whole roof'), h('ul', {}, [...site.elsewhere].reverse()
  .map(e => h('li', {}, `${when(e.at)}, ${e.by}: ${e.kind}${e.text ? `, ${e.text}` : ''}`)))];
