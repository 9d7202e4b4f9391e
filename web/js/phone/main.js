// The page on the roof: begins with what the telephone has, shows one part at a time, sends and fetches when there is a connection.

import {h, put} from '../dom.js';
import {showList} from './list.js';
import {showPlace} from './place.js';
import {showPlan} from './plan.js';
import {flush} from './queue.js';
import {showRecord} from './record.js';
import {nameOf} from './names.js';
import {covered, onChange, open, openRoof, places, refresh} from './roof.js';
import * as shelf from './shelf.js';
import {run} from './words.js';

const view = document.getElementById('view');
let part = 'plan', at = '';

function go(place) {
  at = place.id;
  part = 'place';
  history.pushState({part, at}, '');
  show();
  view.scrollTop = 0;
}

function turn(to) {
  part = to;
  history.pushState({part, at}, '');
  show();
  view.scrollTop = 0;
}

addEventListener('popstate', e => {
  ({part, at} = e.state ?? {part: 'plan', at: ''});
  if (open.roof) show();
});

function show() {
  if (!open.sheet) return put(view, h('p', {class: 'loading'}, open.trouble || (open.online ? 'Fetching the roof…'
    : 'This roof is not on the telephone yet; it has to be opened once with a connection.')));
  const place = places().find(p => p.id === at);
  head();
  ways(place);
  if (part === 'place' && place) showPlace(view, place, go, () => turn('plan'));
  else if (part === 'list') showList(view, go);
  else if (part === 'record') showRecord(view, turnTheme);
  else showPlan(view, go, at);
}

/** News from the service: who types or scans is not disturbed, and sees them with whatever is shown next. */
function showNews() {
  const field = document.activeElement, isBusy = view.contains(field) && field.matches('input') || view.querySelector('video');
  if (isBusy && open.sheet) head(); else show();
}

function head() {
  const number = state => open.own.filter(e => e.state === state).length;
  const c = covered(), waits = number('waiting'), refused = number('refused');
  const sent = waits ? `${waits} waiting` : 'all sent';
  put(document.getElementById('top'), h('div', {class: 'top-line'}, h('b', {}, open.roof.title),
    h('span', {class: open.online ? 'link on' : 'link off', id: 'link', data: {waiting: waits}},
      `${open.online ? '●' : '○ no connection,'} ${sent}`)),
  h('div', {class: 'cover', role: 'img', 'aria-label': `${run(c.checkedM)} of ${run(c.lengthM)} looked at, ${run(c.signedM)} signed off`},
    h('i', {class: 'signed', style: {width: share(c.signedM, c)}}),
    h('i', {class: 'checked', style: {width: share(c.checkedM - c.signedM, c)}})),
  h('div', {class: 'cover-words'}, `${run(c.checkedM)} of ${run(c.lengthM)} looked at, ${run(c.signedM)} signed off`),
  open.trouble && h('p', {class: 'trouble-line', role: 'alert'}, open.trouble),
  refused > 0 && h('p', {class: 'trouble-line', role: 'alert'}, `${refused} not taken: see The whole roof.`));
}

const share = (m, c) => `${c.lengthM ? 100 * m / c.lengthM : 0}%`;

/** Light for the sun, dark for dusk and for eyes that should stay used to it. */
function showTheme() {
  const isDark = localStorage.getItem('seamledger.roof-theme') === 'dark';
  document.documentElement.dataset.theme = isDark ? 'dark' : 'light';
  document.querySelector('meta[name="theme-color"]').content = isDark ? '#0c0f0f' : '#fdfbf5';
}

function turnTheme() {
  localStorage.setItem('seamledger.roof-theme', document.documentElement.dataset.theme === 'dark' ? 'light' : 'dark');
  showTheme();
  show();
}

function ways(place) {
  const way = (to, text) => h('button', {'aria-current': part === to ? 'page' : null, on: {click: () => turn(to)}}, text);
  put(document.getElementById('ways'), way('plan', 'Plan'), way('list', 'List'),
    place && way('place', h('span', {class: 'clip'}, nameOf(place.id))), way('record', 'Whole roof'));
}

/** The place that a printed code names: #PLACE, or #ANALYSIS/PLACE; an analysis alone counts where no roof was open before. */
const CODE = /^#(?:([0-9a-f]{32})\/)?([JN][0-9a-z]{8,})$/;

/** The roof that the address names, or the one that was open last. */
async function chosen() {
  const token = /^#(roof-[\w-]+)$/.exec(location.hash)?.[1], code = CODE.exec(location.hash);
  const last = await shelf.kept('current'), known = last && await shelf.kept('roof:' + last);
  if (code) {
    at = code[2];
    part = 'place';
    if (known) return known;
  }
  const id = new URLSearchParams(location.search).get('analysis') ?? code?.[1];
  if (token) {
    const kept = await shelf.kept('roof:' + token) ?? {key: token, token, analysis: '', scope: 'view', title: 'Roof'};
    // Whoever looks over a shoulder, or at the history, doesn't see the link.
    history.replaceState(null, '', '/roof/');
    return kept;
  }
  if (id) return {key: 'analysis:' + id, token: '', analysis: id, scope: 'sign', title: 'Roof'};
  return known || null;
}

function tell(words) {
  open.trouble = words;
  part = 'list';
  show();
}

async function begin() {
  showTheme();
  if (location.pathname !== '/roof/') return location.replace('/roof/' + location.search + location.hash);
  navigator.serviceWorker?.register('/roof/worker.js', {scope: '/roof/'}).catch(() => {});
  navigator.storage?.persist?.();
  try {
    const roof = await chosen();
    if (!roof) return put(view, h('p', {class: 'loading'}, 'Open the link that you were given; this telephone has no roof yet.'));
    onChange(showNews);
    await openRoof(roof);
    await refresh();
    await flush();
    if (at && open.sheet && !places().some(p => p.id === at)) tell(`This roof has no place ${at}.`);
  } catch (e) {
    put(view, h('p', {class: 'loading', role: 'alert'}, e.message));
  }
}

addEventListener('online', () => open.roof && refresh().then(flush));
addEventListener('offline', () => { open.online = false; if (open.roof) show(); });
document.addEventListener('visibilitychange', () => { if (!document.hidden && open.roof && open.sheet) flush(); });
addEventListener('hashchange', () => location.hash && location.reload());

begin();
