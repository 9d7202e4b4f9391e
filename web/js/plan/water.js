// Where the water goes: lines and arrows as wide as what runs there, and the catchment of what is picked.

import {put, s} from '../dom.js';
import {state} from '../state.js';
import {inside} from '../ledger/geometry.js';
import {SEALS} from '../ledger/marks.js';
import {flows, placeKey as key} from '../ledger/water.js';
import {area} from '../units.js';
import {written} from '../units/written.js';
import {trace} from './paths.js';

const MOST_ARROWS = 1500;

/** Draws the layer of the water, or clears it where it is not asked for. */
export function drawWater(layers) {
  const water = state.water && state.ledger.raw.drainage;
  put(layers.catchment, water && catchment(water));
  const paths = water ? [...lines(water), ...arrows(water)].filter(Boolean) : [];
  // The edges of all lie under all: where two meet the water is one.
  put(layers.water, water && [s('g', {class: 'edge'}, paths.map(edgeOf)), paths]);
}

const EDGE_PX = 2.4;
const edgeOf = path => s('path', {d: path.getAttribute('d'), 'stroke-width': Number(path.getAttribute('stroke-width')) + EDGE_PX});

/** From a tenth of the widest up, as the root of the amount: twice as wide is four times the water. */
const width = (amount, most) => Math.max(1.2, 6 * Math.sqrt(amount / most));

function lines(water) {
  const most = Math.max(...water.lines.map(l => l.planAreaM2), 1);
  return water.lines.map(l => {
    const j = state.ledger.byId.get(l.junction);
    // The line itself lies on it, so that both are seen: the water stands out at its sides.
    return j && s('path', {class: 'channel', d: trace(j.path), 'stroke-width': SEALS[j.seal].width + width(l.planAreaM2, most)},
      s('title', {}, `${area(l.planAreaM2)} of plan, ${written(`${l.flowLps.toFixed(2)} l/s`)} in the five-minute rain`));
  });
}

function arrows(water) {
  const all = flows(water).slice(0, MOST_ARROWS);
  return all.map(f => arrow(f.from, f.to, width(f.areaM2, all[0].areaM2)));
}

function arrow(from, end, wide) {
  const d = [end[0] - from[0], end[1] - from[1]], l = Math.hypot(...d);
  if (l < 0.05) return null;
  const u = [d[0] / l, d[1] / l], size = Math.min(0.5, l / 3), tip = [from[0] + u[0] * l * 0.9, from[1] + u[1] * l * 0.9];
  const barb = k => [tip[0] - u[0] * size - k * u[1] * size / 2, tip[1] - u[1] * size + k * u[0] * size / 2];
  return s('path', {class: 'flow', 'stroke-width': wide, d: trace([from, tip]) + trace([barb(1), tip, barb(-1)])});
}

/** What drains to the picked junction, or to where the water of the picked point goes: all of it, and what comes over other faces. */
function catchment(water) {
  const spot = state.spot.split(',').map(Number);
  const here = state.spot && water.catchments.find(c => inside([c.outline], spot[0], spot[1]));
  const target = here ? here.to : state.selected && {junction: state.selected};
  if (!target) return null;
  const straight = above(water.lines, key(target)), any = above([...water.lines, ...water.path], key(target));
  const paint = (places, name) => {
    const some = water.catchments.filter(c => places.has(key(c.to)));
    return some.length > 0 && s('path', {class: name, d: some.map(c => trace(c.outline) + 'Z').join('')});
  };
  const j = target.junction && state.ledger.byId.get(target.junction);
  return [paint(any, 'through'), paint(straight, 'straight'), j && s('path', {class: 'goal', d: trace(j.path)}),
    here && s('circle', {class: 'spot', cx: spot[0], cy: -spot[1], r: 0.12})];
}

/** Places from which water comes to one, itself included. */
function above(entries, goal) {
  const found = new Set([goal]), before = new Map();
  for (const e of entries) for (const t of e.to) before.set(key(t), [...before.get(key(t)) ?? [], key(e)]);
  for (const place of found) for (const p of before.get(place) ?? []) found.add(p);
  return found;
}

