// What lies under the pointer is found by measuring.

import {state} from '../state.js';
import {inside, toSegment} from '../ledger/geometry.js';

const REACH_PX = matchMedia('(pointer: coarse)').matches ? 18 : 9;

const NODE_PX = REACH_PX * 0.7;

/** The highest of the nodes that lie within reach of a place. */
function nearestNode(x, y, reach) {
  let best = null;
  for (const n of state.ledger.nodes.values()) {
    if (state.nodeKind && n.kind !== state.nodeKind) continue;
    if (Math.hypot(n.at[0] - x, n.at[1] - y) < reach && !(best && best.at[2] > n.at[2])) best = n;
  }
  return best;
}

/**
 * The node or the junction nearest to a pixel, within reach; else the face there.
 * @param {import('./camera.js').Camera} camera
 * @returns {{node?: import('../types.js').RoofNode, j?: import('../types.js').Junction, face?: import('../types.js').Face}}
 */
export function pick(camera, px) {
  const [x, y] = camera.toWorld(px);
  const node = state.nodes && nearestNode(x, y, NODE_PX * camera.perPx);
  if (node) return {node};
  let best = null, least = REACH_PX * camera.perPx;
  for (const j of state.ledger.lines) {
    for (let i = 1; i < j.path.length; i++) {
      const a = j.path[i - 1], b = j.path[i];
      if (Math.min(a[0], b[0]) - least > x || Math.max(a[0], b[0]) + least < x) continue;
      if (Math.min(a[1], b[1]) - least > y || Math.max(a[1], b[1]) + least < y) continue;
      const d = toSegment(x, y, a, b);
      if (d < least) {
        least = d;
        best = j;
      }
    }
  }
  return best ? {j: best} : {face: [...state.ledger.faces.values()].find(f => f.facets.some(rings => inside(rings, x, y)))};
}
