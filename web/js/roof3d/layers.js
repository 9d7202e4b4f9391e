// Layers over the roof: where the water goes, and where panels are fixed and move. Lines that lie on the faces a little above them.

import {state} from '../state.js';
import {withPanels} from '../api/panels.js';
import {flows} from '../ledger/water.js';
import {lineSet} from './meshes.js';

const MOST_ARROWS = 1500, WIDTHS = [2, 4, 7], FLOW_PX = 2, EDGE_PX = 3;
/** Of the radius of the roof. */
const BARB = 0.012, ARROW = 0.02;

/**
 * @param {import('./model.js').Model} model
 * @param {(name: string) => string} css
 * @param {() => void} redraw when what had to be fetched is here
 */
export function layerObjects(model, css, redraw) {
  return [...state.water && state.ledger.raw.drainage ? water(model, css, state.ledger.raw.drainage) : [],
    ...state.movement ? movement(model, css, redraw) : []];
}

/** Lines as wide as what runs there, in three steps: the root of their share of the widest; light within a dark edge, as on the plan. */
function water(model, css, drainage) {
  const most = Math.max(...drainage.lines.map(l => l.planAreaM2), 1), sets = WIDTHS.map(() => ({at: [], of: []}));
  const step = a => Math.min(WIDTHS.length - 1, Math.floor(Math.sqrt(a / most) * WIDTHS.length));
  for (const l of drainage.lines) {
    const j = state.ledger.byId.get(l.junction);
    if (j) model.addStretches(sets[step(l.planAreaM2)], j.path, null);
  }
  const arrows = {at: [], of: []};
  for (const f of flows(drainage).slice(0, MOST_ARROWS)) arrow(model, arrows, f.from, f.to, false);
  const drawn = [...sets.map((t, i) => ({t, width: WIDTHS[i]})), {t: arrows, width: FLOW_PX}].filter(x => x.t.at.length);
  const layer = (name, wider, order) => drawn.map(x => {
    const o = lineSet(x.t, {colour: css(name), width: x.width + wider, dash: null}, model.planes);
    o.renderOrder = order;
    o.material.polygonOffsetUnits *= 1 + order;
    return Object.assign(o, {name: 'water'});
  });
  return [...layer('--water-edge', EDGE_PX, 1), ...layer('--water', 0, 2)];
}

/** An arrow along a face: its barbs lie level, and so in the face. */
function arrow(model, t, from, to, isBothWays) {
  const d = to.map((x, i) => x - from[i]), l = Math.hypot(...d), flat = Math.hypot(d[0], d[1]) || 1;
  if (l < 0.05) return;
  const u = d.map(x => x / l), n = [-d[1] / flat, d[0] / flat, 0], size = Math.min(model.radius * BARB, l / 3);
  const head = (tip, k) => [1, -1].forEach(side =>
    model.addStretches(t, [tip.map((x, i) => x - k * u[i] * size + side * n[i] * size / 2), tip], null));
  model.addStretches(t, [from, to], null);
  head(to, 1);
  if (isBothWays) head(from, -1);
}

const middle = line => line[0].map((x, i) => (x + line[line.length - 1][i]) / 2);

function movement(model, css, redraw) {
  const {ledger} = state;
  if (!ledger.panels) {
    withPanels(ledger, state.analysis.id).then(() => state.ledger === ledger && redraw());
    return [];
  }
  const fixed = {at: [], of: []}, moves = {at: [], of: []}, half = model.radius * ARROW / 2;
  let n = 0;
  for (const p of ledger.panels.filter(x => x.fixed !== 'none' && x.line.length > 1)) {
    model.addStretches(fixed, p.line, null);
    for (const e of [p.lowEnd, p.highEnd].filter(x => x.at.length > 0 && x.movementM > 0)) {
      const at = e.at[0], from = middle(p.line), d = at.map((x, i) => x - from[i]), l = Math.hypot(...d) || 1;
      const along = k => at.map((x, i) => x + k * half * d[i] / l);
      if (n++ < MOST_ARROWS) arrow(model, moves, along(-1), along(1), true);
    }
  }
  return [fixed.at.length && lineSet(fixed, {colour: css('--pick'), width: 4, dash: null}, model.planes),
    moves.at.length && lineSet(moves, {colour: css('--ink'), width: 1.5, dash: null}, model.planes)].filter(Boolean);
}
