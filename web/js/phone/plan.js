// The roof from above: every line by how it stands; a tap opens the nearest.

import {h, put, s} from '../dom.js';
import {dayPlan, tasksToday} from './day.js';
import {open, standings} from './roof.js';
import {STAGE} from './words.js';

const REACH_PX = 40;
const point = p => `${Math.round(p[0] * 1e3) / 1e3} ${Math.round(-p[1] * 1e3) / 1e3}`;
const ring = r => 'M' + r.map(point).join('L') + 'Z';
let zoom = 1;

/**
 * @param {(place: object) => void} go opens a place
 * @param {string} at the place that is shown as the one where one is
 * @param {number[]} [middle] what of the plan's width and height is in the middle of what is seen
 */
export function showPlan(root, go, at = '', middle = null) {
  const all = standings(), box = bounds(), pad = 0.04 * Math.max(box.w, box.h);
  const due = new Set(tasksToday().map(t => t.place)), isDue = id => !at && due.has(id);
  const svg = s('svg', {viewBox: `${box.x - pad} ${box.y - pad} ${box.w + 2 * pad} ${box.h + 2 * pad}`, role: 'img',
    'aria-label': 'Plan of the roof; the list has the same places', style: {width: `${zoom * 100}%`},
    class: zoom > 1 ? 'roof-plan' : 'roof-plan whole'},
  open.sheet.roofFaces.map(f => s('path', {class: isDue(f.id) ? 'roof-face due' : 'roof-face', d: f.facets.flat().map(ring).join('')})),
  all.filter(x => x.place.id === at || isDue(x.place.id)).map(({place}) =>
    s('path', {class: at ? 'here' : 'here due', d: 'M' + (place.path ?? [place.at, place.at]).map(point).join('L')})),
  all.filter(x => x.place.path).map(x => s('path', {class: `line ${x.stage}`, d: 'M' + x.place.path.map(point).join('L')})),
  all.filter(x => x.place.at && x.items.length).map(x => s('circle', {class: `node ${x.stage}`, cx: x.place.at[0], cy: -x.place.at[1],
    r: Math.max(box.w, box.h) / 130 / Math.sqrt(zoom)})));
  svg.addEventListener('click', e => {
    const hit = nearest(svg, all, e);
    if (hit) go(hit.place);
  });
  const scroll = h('div', {class: 'plan-scroll', tabindex: 0, role: 'region', 'aria-label': 'Plan'}, svg);
  const size = k => {
    zoom = Math.min(8, Math.max(1, zoom * k));
    showPlan(root, go, at, [(scroll.scrollLeft + scroll.clientWidth / 2) / scroll.scrollWidth,
      (scroll.scrollTop + scroll.clientHeight / 2) / scroll.scrollHeight]);
  };
  put(root, h('div', {class: 'plan-tools'}, h('button', {class: 'big', 'aria-label': 'Smaller', on: {click: () => size(1 / 1.6)}}, '−'),
    h('button', {class: 'big', 'aria-label': 'Larger', on: {click: () => size(1.6)}}, '+'), key(all)), scroll,
  dayPlan(go, () => showPlan(root, go)));
  const [x, y] = middle ?? middleOf(all.find(o => o.place.id === at)?.place, box);
  scroll.scrollTo(x * scroll.scrollWidth - scroll.clientWidth / 2, y * scroll.scrollHeight - scroll.clientHeight / 2);
}

/** Where a place lies in a box, as shares of its width and height; the middle where there is none. */
function middleOf(place, box) {
  const p = place?.at ?? place?.path?.[Math.floor(place.path.length / 2)];
  return p ? [(p[0] - box.x) / box.w, (-p[1] - box.y) / box.h] : [0.5, 0.5];
}

const key = all => h('ul', {class: 'plan-key'}, Object.entries(STAGE).filter(([id]) => all.some(x => x.stage === id && x.place.path))
  .map(([id, stage]) => h('li', {}, s('svg', {viewBox: '0 0 30 10', width: 30, height: 10, 'aria-hidden': 'true'},
    s('path', {class: `line ${id}`, d: 'M1 5L29 5'})), ` ${stage.text}`)));

function bounds() {
  const ps = open.sheet.roofFaces.flatMap(f => f.facets.flat(2)).concat(open.sheet.junctions.flatMap(j => j.path));
  const least = list => list.reduce((a, b) => Math.min(a, b), Infinity), most = list => list.reduce((a, b) => Math.max(a, b), -Infinity);
  const xs = ps.map(p => p[0]), ys = ps.map(p => -p[1]), x = least(xs), y = least(ys);
  return {x, y, w: most(xs) - x || 1, h: most(ys) - y || 1};
}

/** The place nearest to a tap, nodes first where they are about as near; nothing where none is in reach of a thumb. */
function nearest(svg, all, e) {
  const m = svg.getScreenCTM(), at = ([x, y]) => [m.a * x + m.e, m.d * -y + m.f];
  let best = null;
  for (const x of all) {
    if (!x.place.path && !x.items.length) continue;
    const d = x.place.at ? Math.hypot(e.clientX - at(x.place.at)[0], e.clientY - at(x.place.at)[1]) - 4 : toPath(x.place.path.map(at), e);
    if (d < (best?.d ?? REACH_PX)) best = {d, place: x.place};
  }
  return best;
}

function toPath(path, e) {
  let best = Infinity;
  for (let i = 1; i < path.length; i++) {
    const [a, b] = [path[i - 1], path[i]], dx = b[0] - a[0], dy = b[1] - a[1], n = dx * dx + dy * dy;
    const t = n ? Math.max(0, Math.min(1, ((e.clientX - a[0]) * dx + (e.clientY - a[1]) * dy) / n)) : 0;
    best = Math.min(best, Math.hypot(e.clientX - a[0] - t * dx, e.clientY - a[1] - t * dy));
  }
  return best;
}
