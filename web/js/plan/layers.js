// The layers of the plan. One path a class of line, so that it stays quick.

import {put, s} from '../dom.js';
import {state} from '../state.js';
import {SEALS} from '../ledger/marks.js';
import {changedPaths} from '../ledger/result.js';
import {labelPlace} from '../ledger/geometry.js';
import {matching} from '../ledger/rows.js';
import {outline, trace} from './paths.js';

/** From the bottom up. */
export const LAYERS = ['faces', 'chosenFace', 'catchment', 'seams', 'dim', 'water', 'lines', 'nodes',
  'site', 'changes', 'halo', 'chosen', 'arrows', 'movement', 'labels'];
const MOST_ARROWS = 400;

/** @param {Record<string, SVGGElement>} layers */
export function drawFaces(layers) {
  const faces = [...state.ledger.faces.values()];
  put(layers.faces, s('path', {d: faces.map(outline).join(''), 'fill-rule': 'evenodd'}));
  put(layers.arrows, faces.length <= MOST_ARROWS && faces.map(arrow));
}

/** Junctions and joints by what seals them; those that no filter lets through are dim. */
export function drawLines(layers) {
  const L = state.ledger, isFiltered = Object.keys(state.filters).length > 0;
  const shown = isFiltered ? new Set(matching(L, state.filters, state.reviews)) : null;
  const d = {}, dim = [];
  for (const j of L.lines) {
    if (shown && !shown.has(j)) dim.push(trace(j.path)); else (d[j.seal] ??= []).push(trace(j.path));
  }
  put(layers.dim, dim.length > 0 && s('path', {d: dim.join('')}));
  put(layers.lines, Object.keys(SEALS).filter(k => d[k]).map(k => s('path', {d: d[k].join(''), ...stroke(k)})));
  layers.lines.dataset.shown = shown ? shown.size : L.lines.length;
}

function stroke(seal, wider = 0) {
  const {colour, width, dash} = SEALS[seal];
  return {stroke: colour, 'stroke-width': width + wider, 'stroke-dasharray': dash?.join(' ')};
}

export function drawChanges(layers) {
  const changes = state.tab === 'revisions' && state.changes ? Object.entries(changedPaths(state.changes)) : [];
  put(layers.changes, changes.map(([what, paths]) => paths.length > 0 && s('path', {class: what, d: paths.map(trace).join('')})));
}

/** While the book shows the work on the roof: each line by how it stands. */
export function drawSite(layers) {
  const d = {};
  for (const p of state.tab === 'site' && state.site ? state.site.places : []) {
    const j = state.ledger.byId.get(p.id);
    if (j) (d[p.stage] ??= []).push(trace(j.path));
  }
  put(layers.site, Object.entries(d).map(([stage, paths]) => s('path', {class: stage, d: paths.join('')})));
}

export function drawChosen(layers) {
  const j = state.ledger.byId.get(state.selected), f = state.ledger.faces.get(state.face);
  const n = state.ledger.nodes.get(state.selected);
  const places = (state.places?.ids ?? []).map(id => state.ledger.byId.get(id)).filter(Boolean);
  put(layers.halo, places.length > 0 && s('path', {class: 'place', d: places.map(x => trace(x.path)).join('')}),
    n && s('path', {class: 'node', d: trace([n.at, n.at])}), j && s('path', {d: trace(j.path)}));
  put(layers.chosen, j && s('path', {d: trace(j.path), ...stroke(j.seal, 1)}));
  put(layers.chosenFace, f && s('path', {d: outline(f), 'fill-rule': 'evenodd'}));
}

/** A dot where lines meet; those with a finding are another colour. */
export function drawNodes(layers) {
  const shown = [...state.ledger.nodes.values()].filter(n => state.nodes && (!state.nodeKind || n.kind === state.nodeKind));
  const dots = of => of.map(n => trace([n.at, n.at])).join('');
  const found = shown.filter(n => n.found.length), plain = shown.filter(n => !n.found.length);
  put(layers.nodes, plain.length > 0 && s('path', {d: dots(plain)}), found.length > 0 && s('path', {class: 'found', d: dots(found)}));
}

/** The way that water runs off a face. */
function arrow(f) {
  const at = labelPlace(f);
  if (!at || !(f.slopeDegrees > 0.5)) return null;
  const az = f.fallAzimuthDegrees * Math.PI / 180, d = [Math.sin(az), Math.cos(az)], n = [d[1], -d[0]];
  const l = Math.min(1.4, Math.sqrt(f.planAreaM2) * 0.22), off = l * 0.25, w = l * 0.16;
  const start = [at[0] + d[0] * off, at[1] + d[1] * off], tip = [start[0] + d[0] * l, start[1] + d[1] * l];
  const barb = side => [tip[0] - d[0] * w * 1.6 + side * n[0] * w, tip[1] - d[1] * w * 1.6 + side * n[1] * w];
  return s('path', {d: trace([start, tip]) + trace([barb(1), tip, barb(-1)])});
}
