// The roof plan, to scale: faces, seams, fall arrows, junction lines, labels. One path a class of line, so that it stays quick; what
// lies under the pointer is found by measuring.

import {h, s, put} from './dom.js';
import {set, state, watch} from './state.js';
import {SEALS, kindText} from './marks.js';
import {changedPaths, kindOf, labelPlace, matching, middle} from './ledger.js';
import {planAt} from './api.js';
import * as u from './units.js';

const MOST_SEAMS = 6000, MOST_LABELS = 90, DENSE_JUNCTIONS = 3000, DENSE_M_PER_PX = 0.12, REACH_PX = matchMedia('(pointer: coarse)').matches ? 18 : 9;

export function mountPlan(root) {
  const v = {x: 0, y: 0, perPx: 1};   // world place of the middle, metres per pixel
  const layers = {};
  const names = ['faces', 'chosenFace', 'seams', 'dim', 'lines', 'changes', 'halo', 'chosen', 'arrows', 'labels'];
  names.forEach(n => { layers[n] = s('g', {class: n}); });
  const svg = s('svg', {class: 'sheet', role: 'img', 'aria-label': 'Roof plan', tabindex: 0}, names.map(n => layers[n]));
  const scale = h('div', {class: 'scale'});
  const tip = h('div', {class: 'tip', hidden: true});
  put(root, svg, northMark(), scale, tip, h('div', {class: 'drawing-tools', role: 'group', 'aria-label': 'Plan'},
    h('button', {'aria-label': 'Zoom in', on: {click: () => zoom(0.7)}}, '+'), h('button', {'aria-label': 'Zoom out', on: {click: () => zoom(1 / 0.7)}}, '−'),
    h('button', {on: {click: fit}}, 'Fit'), h('a', {class: 'button', href: planAt(state.analysis.id), target: '_blank', rel: 'noopener', title: 'The plan as a sheet to print, to scale'}, 'Sheet')));

  function size() { return {w: svg.clientWidth || 600, h: svg.clientHeight || 400}; }

  function fit() {
    if (!state.ledger) return;
    const {lo, hi} = state.ledger.box, {w, h: hh} = size();
    v.x = (lo[0] + hi[0]) / 2; v.y = (lo[1] + hi[1]) / 2;
    v.perPx = Math.max((hi[0] - lo[0]) / (w - 60), (hi[1] - lo[1]) / (hh - 60), 1e-4);
    look();
  }

  function zoom(factor, at) {
    const p = at ? toWorld(at) : [v.x, v.y];
    v.x = p[0] + (v.x - p[0]) * factor; v.y = p[1] + (v.y - p[1]) * factor;
    v.perPx = Math.max(1e-5, v.perPx * factor);
    look();
  }

  const toWorld = ([px, py]) => { const {w, h: hh} = size(); return [v.x + (px - w / 2) * v.perPx, v.y - (py - hh / 2) * v.perPx]; };
  const pxOf = e => { const r = svg.getBoundingClientRect(); return [e.clientX - r.left, e.clientY - r.top]; };

  let waiting = false;
  function look() {
    if (waiting) return;
    waiting = true;
    requestAnimationFrame(() => {
      waiting = false;
      if (!state.ledger || !root.isConnected) return;
      const {w, h: hh} = size();
      svg.setAttribute('viewBox', `${v.x - w / 2 * v.perPx} ${-v.y - hh / 2 * v.perPx} ${w * v.perPx} ${hh * v.perPx}`);
      // Where lines are hardly longer than a dash, dashes say nothing and take the longest to draw.
      svg.classList.toggle('dense', state.ledger.junctions.length > DENSE_JUNCTIONS && v.perPx > DENSE_M_PER_PX);
      seamsInSight();
      labels();
      drawScale(scale, v.perPx);
    });
  }

  function drawAll() {
    const L = state.ledger;
    put(layers.faces, s('path', {d: [...L.faces.values()].map(outline).join(''), 'fill-rule': 'evenodd'}));
    seamsOf = null;
    put(layers.arrows, arrows(L));
    drawLines();
    drawChanges();
    drawChosen();
  }

  /** A roof with more seams than can be told apart has them drawn where one looks closely enough. */
  let seamsOf = null;
  function seamsInSight() {
    const L = state.ledger, {w, h: hh} = size();
    const few = L.seamCount ??= [...L.faces.values()].reduce((t, f) => t + (f.seams?.lines?.length ?? 0), 0);
    if (few <= MOST_SEAMS) {
      if (seamsOf !== L) put(layers.seams, seams(L, [...L.faces.values()]));
      seamsOf = L;
      return;
    }
    const near = v.perPx > DENSE_M_PER_PX ? [] : [...L.faces.values()].filter(f => inView(f, v, w, hh));
    const key = near.map(f => f.id).join();
    if (seamsOf !== key) put(layers.seams, near.length > 0 && seams(L, near));
    seamsOf = key;
  }

  function drawLines() {
    const L = state.ledger, filtered = Object.keys(state.filters).length > 0;
    const shown = filtered ? new Set(matching(L, state.filters, state.reviews)) : null;
    const d = {}, dim = [];
    for (const j of L.junctions) {
      if (shown && !shown.has(j)) dim.push(trace(j.path)); else (d[j.seal] ??= []).push(trace(j.path));
    }
    put(layers.dim, dim.length > 0 && s('path', {d: dim.join('')}));
    put(layers.lines, Object.keys(SEALS).filter(k => d[k]).map(k => s('path', {
      d: d[k].join(''), stroke: SEALS[k].colour, 'stroke-width': SEALS[k].width, 'stroke-dasharray': SEALS[k].dash?.join(' ')})));
    layers.lines.dataset.shown = shown ? shown.size : L.junctions.length;
  }

  function drawChanges() {
    put(layers.changes, state.tab === 'revisions' && state.changes && Object.entries(changedPaths(state.changes)).map(([what, paths]) =>
      paths.length > 0 && s('path', {class: what, d: paths.map(trace).join('')})));
  }

  function drawChosen() {
    const j = state.ledger.byId.get(state.selected), f = state.ledger.faces.get(state.face);
    put(layers.halo, j && s('path', {d: trace(j.path)}));
    put(layers.chosen, j && s('path', {d: trace(j.path), stroke: SEALS[j.seal].colour, 'stroke-dasharray': SEALS[j.seal].dash?.join(' '), 'stroke-width': SEALS[j.seal].width + 1}));
    put(layers.chosenFace, f && s('path', {d: outline(f), 'fill-rule': 'evenodd'}));
  }

  /** Face names first, then lengths, longest first; a label that would lie over another is moved along its line, or left out. */
  function labels() {
    const L = state.ledger, {w, h: hh} = size(), taken = [], out = [];
    const px = p => [(p[0] - v.x) / v.perPx + w / 2, hh / 2 - (p[1] - v.y) / v.perPx];
    const inSight = p => Math.abs(p[0] - v.x) < w / 2 * v.perPx && Math.abs(p[1] - v.y) < hh / 2 * v.perPx;
    const free = (p, wide, high) => {
      const [x, y] = px(p), box = [x - wide / 2, y - high / 2, x + wide / 2, y + high / 2];
      if (taken.some(t => t[0] < box[2] && t[2] > box[0] && t[1] < box[3] && t[3] > box[1])) return false;
      taken.push(box);
      return true;
    };
    const chosen = L.byId.get(state.selected);
    if (chosen && inSight(middle(chosen))) { free(middle(chosen), 150, 26); out.push(lineLabel(chosen, middle(chosen), v.perPx, true)); }
    for (const f of L.faces.values()) {
      if (out.length >= MOST_LABELS) break;
      const at = f.labelAt ??= labelPlace(f);
      if (at && inSight(at) && Math.sqrt(f.planAreaM2) / v.perPx > 60 && free(at, 70, 18)) out.push(faceLabel(f, at, v.perPx));
    }
    for (const j of longest(L)) {
      if (out.length >= MOST_LABELS || j.lengthM / v.perPx < 80) break;
      const a = j.path[0], b = j.path[j.path.length - 1], steep = Math.abs(b[1] - a[1]) > Math.abs(b[0] - a[0]);
      if (j === chosen || j.path.length > 2) continue;
      const m = [0.5, 0.3, 0.7].map(t => a.map((x, i) => x + (b[i] - x) * t)).find(p => inSight(p) && free(p, steep ? 26 : 56, steep ? 56 : 26));
      if (m) out.push(lineLabel(j, m, v.perPx, false));
    }
    put(layers.labels, out);
  }

  let byLength = null;
  function longest(L) {
    if (byLength?.of !== L) byLength = {of: L, list: L.junctions.slice().sort((a, b) => b.lengthM - a.lengthM).slice(0, 4000)};
    return byLength.list;
  }

  /** The junction nearest to a place, within reach; else the face there. */
  function pick(px) {
    const [x, y] = toWorld(px), reach = REACH_PX * v.perPx;
    let best = null, least = reach;
    for (const j of state.ledger.junctions) {
      for (let i = 1; i < j.path.length; i++) {
        const a = j.path[i - 1], b = j.path[i];
        if (Math.min(a[0], b[0]) - least > x || Math.max(a[0], b[0]) + least < x || Math.min(a[1], b[1]) - least > y || Math.max(a[1], b[1]) + least < y) continue;
        const d = toSegment(x, y, a, b);
        if (d < least) { least = d; best = j; }
      }
    }
    return best ? {j: best} : {face: [...state.ledger.faces.values()].find(f => f.facets.some(rings => inside(rings, x, y)))};
  }

  // Pointer: one drags, two pinch, a click picks.
  const down = new Map();
  let moved = 0, spread = 0;
  svg.addEventListener('pointerdown', e => { svg.setPointerCapture(e.pointerId); down.set(e.pointerId, pxOf(e)); moved = 0; spread = 0; });
  svg.addEventListener('pointermove', e => {
    const p = pxOf(e), from = down.get(e.pointerId);
    if (!from) return hover(p);
    if (down.size === 1) { v.x -= (p[0] - from[0]) * v.perPx; v.y += (p[1] - from[1]) * v.perPx; }
    moved += Math.abs(p[0] - from[0]) + Math.abs(p[1] - from[1]);
    down.set(e.pointerId, p);
    if (down.size === 2) {
      const [a, b] = [...down.values()], d = Math.hypot(a[0] - b[0], a[1] - b[1]);
      if (spread) zoom(spread / d, [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]);
      spread = d;
    }
    look();
  });
  const up = e => {
    if (down.delete(e.pointerId) && e.type === 'pointerup' && moved < 6 && down.size === 0) {
      const hit = pick(pxOf(e));
      set(hit.j ? {selected: hit.j.id} : {face: hit.face?.id === state.face ? '' : hit.face?.id ?? ''});
    }
  };
  svg.addEventListener('pointerup', up);
  svg.addEventListener('pointercancel', up);
  svg.addEventListener('pointerleave', () => { tip.hidden = true; });
  svg.addEventListener('wheel', e => { e.preventDefault(); zoom(Math.exp(e.deltaY * 0.0012), pxOf(e)); }, {passive: false});
  svg.addEventListener('keydown', e => {
    const {w} = size(), step = w * v.perPx * 0.1;
    const move = {ArrowLeft: [-step, 0], ArrowRight: [step, 0], ArrowUp: [0, step], ArrowDown: [0, -step]}[e.key];
    if (move) { v.x += move[0]; v.y += move[1]; look(); }
    else if (e.key === '+' || e.key === '=') zoom(0.7);
    else if (e.key === '-') zoom(1 / 0.7);
    else if (e.key === '0') fit();
    else return;
    e.preventDefault();
  });

  let asked = 0;
  function hover(p) {
    cancelAnimationFrame(asked);
    asked = requestAnimationFrame(() => {
      const {j} = pick(p);
      svg.style.cursor = j ? 'pointer' : '';
      tip.hidden = !j;
      if (!j) return;
      put(tip, `${kindText(kindOf(j, state.reviews))} · ${u.length(j.lengthM)}`);
      tip.style.left = p[0] + 14 + 'px';
      tip.style.top = p[1] + 10 + 'px';
    });
  }

  let fittedFor = state.analysis?.id;
  watch(['ledger'], () => {
    if (!state.ledger || !root.isConnected) return;
    drawAll();
    root.querySelector('a.button').href = planAt(state.analysis.id);
    // The same roof with other numbers stays where it is.
    if (fittedFor !== state.analysis.id) fit(); else look();
    fittedFor = state.analysis.id;
  });
  watch(['filters', 'reviews'], () => state.ledger && root.isConnected && drawLines());
  watch(['selected', 'face'], changed => {
    if (!state.ledger || !root.isConnected) return;
    drawChosen();
    const j = state.ledger.byId.get(state.selected);
    if (changed.has('selected') && j) {
      const {w, h: hh} = size(), m = middle(j);
      if (Math.abs(m[0] - v.x) > w / 2 * v.perPx || Math.abs(m[1] - v.y) > hh / 2 * v.perPx) { v.x = m[0]; v.y = m[1]; }
    }
    look();
  });
  watch(['units'], () => state.ledger && root.isConnected && look());
  watch(['changes', 'tab'], () => state.ledger && root.isConnected && drawChanges());
  drawAll();
  const mm = 96 / 25.4;
  addEventListener('beforeprint', () => {
    if (!root.isConnected || !state.ledger) return;
    // A round scale at which the roof fits the sheet, so that one can measure on paper.
    const {lo, hi} = state.ledger.box, least = Math.max((hi[0] - lo[0]) / 0.17, (hi[1] - lo[1]) / 0.13);
    const ratio = [50, 100, 200, 250, 500, 1000, 2000, 5000].find(r => r >= least) ?? Math.ceil(least / 5000) * 5000;
    const perPx = ratio / 1000 / mm, wide = 180 * mm, high = 150 * mm;
    svg.setAttribute('viewBox', `${(lo[0] + hi[0]) / 2 - wide / 2 * perPx} ${-(lo[1] + hi[1]) / 2 - high / 2 * perPx} ${wide * perPx} ${high * perPx}`);
    svg.style.width = '180mm';
    drawScale(scale, perPx, ratio);
  });
  addEventListener('afterprint', () => { svg.style.width = ''; look(); });
  let fitted = '';
  new ResizeObserver(() => {
    const {w, h: hh} = size();
    if (root.hidden || !svg.clientWidth) return;
    if (fitted !== `${w}/${hh}`) { fitted = `${w}/${hh}`; fit(); }
  }).observe(svg);
}

/** To the tenth of a millimetre; rounding is several times as quick as toFixed. */
const r4 = x => Math.round(x * 1e4) / 1e4;
const P = p => `${r4(p[0])} ${r4(-p[1])}`;
const trace = path => 'M' + path.map(P).join('L');
/** Whether any of a face may lie in the part of the plan that shows. */
function inView(f, v, w, h) {
  const b = f.planBox ??= f.facets.flat(2).reduce((t, p) => [Math.min(t[0], p[0]), Math.min(t[1], p[1]), Math.max(t[2], p[0]), Math.max(t[3], p[1])], [Infinity, Infinity, -Infinity, -Infinity]);
  return b[0] < v.x + w / 2 * v.perPx && b[2] > v.x - w / 2 * v.perPx && b[1] < v.y + h / 2 * v.perPx && b[3] > v.y - h / 2 * v.perPx;
}

const outline = f => f.facets.map(rings => rings.map(r => 'M' + r.map(P).join('L') + 'Z').join('')).join('');

function toSegment(x, y, a, b) {
  const dx = b[0] - a[0], dy = b[1] - a[1], n = dx * dx + dy * dy;
  const t = n ? Math.max(0, Math.min(1, ((x - a[0]) * dx + (y - a[1]) * dy) / n)) : 0;
  return Math.hypot(x - a[0] - t * dx, y - a[1] - t * dy);
}

function inside(rings, x, y) {
  let odd = false;
  for (const r of rings) {
    for (let i = 0, k = r.length - 1; i < r.length; k = i++) {
      if ((r[i][1] > y) !== (r[k][1] > y) && x < (r[k][0] - r[i][0]) * (y - r[i][1]) / (r[k][1] - r[i][1]) + r[i][0]) odd = !odd;
    }
  }
  return odd;
}

/** Seams where the layout of the result puts them; where a result has none, as a pattern:  down the fall, one panel apart, cut off at the outline. */
function seams(L, faces) {
  const laid = faces.flatMap(f => f.seams?.lines ?? []);
  if (laid.length) return s('path', {d: laid.slice(0, 2 * MOST_SEAMS).map(trace).join('')});
  let total = 0;
  for (const f of faces) total += Math.sqrt(f.planAreaM2) / L.coverageM;
  if (total > MOST_SEAMS) return null;
  return faces.map((f, n) => {
    if (!(f.slopeDegrees > 0.5)) return null;
    const az = f.fallAzimuthDegrees * Math.PI / 180, down = [Math.sin(az), Math.cos(az)], across = [down[1], -down[0]];
    const pts = f.facets.flat(2), on = d => pts.map(p => p[0] * d[0] + p[1] * d[1]);
    const a = on(across), b = on(down), a0 = Math.min(...a), a1 = Math.max(...a), b0 = Math.min(...b), b1 = Math.max(...b);
    const d = [];
    for (let k = a0 + L.coverageM; k < a1 - 1e-6; k += L.coverageM) {
      d.push(trace([[across[0] * k + down[0] * b0, across[1] * k + down[1] * b0], [across[0] * k + down[0] * b1, across[1] * k + down[1] * b1]]));
    }
    return [s('clipPath', {id: 'cut' + n}, s('path', {d: outline(f), 'clip-rule': 'evenodd'})), s('path', {d: d.join(''), 'clip-path': `url(#cut${n})`})];
  });
}

function arrows(L) {
  if (L.faces.size > 400) return null;
  return [...L.faces.values()].map(f => {
    const at = f.labelAt ??= labelPlace(f);
    if (!at || !(f.slopeDegrees > 0.5)) return null;
    const az = f.fallAzimuthDegrees * Math.PI / 180, d = [Math.sin(az), Math.cos(az)], n = [d[1], -d[0]];
    const l = Math.min(1.4, Math.sqrt(f.planAreaM2) * 0.22), off = l * 0.25;
    const start = [at[0] + d[0] * off, at[1] + d[1] * off], tip = [start[0] + d[0] * l, start[1] + d[1] * l], w = l * 0.16;
    return s('path', {d: trace([start, tip]) + trace([[tip[0] - d[0] * w * 1.6 + n[0] * w, tip[1] - d[1] * w * 1.6 + n[1] * w], tip, [tip[0] - d[0] * w * 1.6 - n[0] * w, tip[1] - d[1] * w * 1.6 - n[1] * w]])});
  });
}

function faceLabel(f, at, perPx) {
  return s('text', {x: at[0], y: -at[1] - 4 * perPx, 'font-size': 12 * perPx, class: 'face-name'},
    f.id, s('tspan', {class: 'quiet'}, `  ${u.slope(f.slopeDegrees)}`));
}

/** Along the line, the right way up, a little above it. */
function lineLabel(j, m, perPx, chosen) {
  const a = j.path[0], b = j.path[j.path.length - 1];
  let turn = Math.atan2(-(b[1] - a[1]), b[0] - a[0]) * 180 / Math.PI;
  if (Math.hypot(b[0] - a[0], b[1] - a[1]) < 1e-6) turn = 0;
  if (turn > 90) turn -= 180; if (turn <= -90) turn += 180;
  const text = chosen ? `${kindText(kindOf(j, state.reviews))} ${u.length(j.lengthM)}` : u.length(j.lengthM);
  return s('text', {transform: `translate(${m[0]} ${-m[1]}) rotate(${turn})`, y: -6 * perPx, 'font-size': (chosen ? 13 : 10.5) * perPx, class: chosen ? 'line-name chosen' : 'line-name'}, text);
}

function northMark() {
  return s('svg', {class: 'north', viewBox: '-12 -16 24 32', role: 'img', 'aria-label': 'North is up (the model’s +Y)'},
    s('path', {d: 'M0 -13 5 6 0 3 -5 6Z'}), s('text', {y: 15, 'text-anchor': 'middle', 'font-size': 9}, 'N'));
}

/** A bar of a round length, and the ratio at which a screen of 96 dots an inch shows it. */
function drawScale(root, perPx, exact) {
  const foot = state.units === 'us' ? 0.3048 : 1;
  const aim = 90 * perPx / foot, power = 10 ** Math.floor(Math.log10(aim));
  const round = [5, 2, 1].find(k => k * power <= aim) * power;
  const ratio = perPx / (0.0254 / 96);
  put(root, h('span', {class: 'bar', style: {width: round * foot / perPx + 'px'}}), h('span', {}, `${round >= 1 ? round : round.toPrecision(1)} ${foot === 1 ? 'm' : 'ft'}`),
    h('small', {}, exact ? `1:${exact}` : `about 1:${ratio >= 10 ? Math.round(ratio / 5) * 5 : ratio.toFixed(1)}`));
}
