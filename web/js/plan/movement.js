// The map of fixed lines: where each panel is fixed, and arrows with millimetres or inches where it moves.

import {h, put, s} from '../dom.js';
import {set, state} from '../state.js';
import {withPanels} from '../api/panels.js';
import {trace} from './paths.js';
import * as u from '../units.js';

const LEAST_ARROW_PX = 12, MOST_ARROWS = 1500, ARROW_PX = 16, LABEL_PX = 48;

/** Fetches the panels of the result, once, where the layer is switched on. */
export async function needPanels(redraw) {
  const ledger = state.ledger;
  if (!state.movement || ledger.panels) return;
  await withPanels(ledger, state.analysis.id);
  if (state.ledger === ledger) redraw();
}

/**
 * Draws the layer, or clears it where it is switched off.
 * @param {SVGGElement} layer
 * @param {import('./camera.js').Camera} camera
 */
export function drawMovement(layer, camera) {
  const panels = state.movement ? state.ledger.panels ?? [] : [];
  const fixed = panels.filter(p => p.fixed !== 'none' && p.line.length > 1);
  const loose = panels.filter(p => p.fixed === 'none').flatMap(p => ends(p)).map(e => e.at[0]);
  put(layer, fixed.length > 0 && s('path', {class: 'fixed', d: fixed.map(p => trace(p.line)).join('')}),
    loose.map(at => s('text', {class: 'loose', x: at[0], y: -at[1], 'font-size': 14 * camera.perPx}, '!')),
    fixed.length > 0 && arrows(fixed, camera));
}

/** Switches the layer on and off. */
export function movementButton() {
  const click = e => {
    set({movement: state.movement ? '' : 'on'});
    e.currentTarget.setAttribute('aria-pressed', String(state.movement === 'on'));
  };
  return h('button', {'aria-pressed': String(state.movement === 'on'), on: {click},
    title: 'Fixed lines of the panels, and how far their free ends move'}, 'Movement');
}

const ends = p => [p.lowEnd, p.highEnd].filter(e => e.at.length > 0);

/** Arrows at free ends as far as there is room for them, the first of a crowd; words only where they can be read. */
function arrows(fixed, camera) {
  const drawn = [], words = [];
  const far = (list, at, px) => list.every(q => Math.hypot(q[0] - at[0], q[1] - at[1]) > px * camera.perPx);
  for (const p of fixed) {
    for (const e of ends(p)) {
      const at = e.at[0];
      if (drawn.length > MOST_ARROWS || !(e.movementM > 0) || !camera.sees(at) || !far(drawn, at, LEAST_ARROW_PX)) continue;
      drawn.push(Object.assign([...at], {d: arrow(middle(p.line), at, camera.perPx)}));
      if (far(words, at, LABEL_PX)) words.push(Object.assign([...at], {text: u.small(e.movementM)}));
    }
  }
  return [s('path', {class: 'moves', d: drawn.map(a => a.d).join('')}),
    words.map(w => s('text', {x: w[0], y: -w[1] - 5 * camera.perPx, 'font-size': 10 * camera.perPx}, w.text))];
}

const middle = line => line[0].map((x, i) => (x + line[line.length - 1][i]) / 2);

/** Away from the fixed line, both ways: an end grows and shrinks. */
function arrow(from, at, perPx) {
  const d = [at[0] - from[0], at[1] - from[1]], l = Math.hypot(...d) || 1, size = ARROW_PX * perPx;
  const e = [d[0] / l * size / 2, d[1] / l * size / 2], n = [-e[1] * 0.35, e[0] * 0.35];
  const tip = k => [at[0] + k * e[0], at[1] + k * e[1]];
  const barb = (k, side) => [tip(k * 0.5)[0] + side * n[0], tip(k * 0.5)[1] + side * n[1]];
  return [1, -1].map(k => trace([barb(k, 1), tip(k), barb(k, -1)])).join('') + trace([tip(-1), tip(1)]);
}
