// Names of faces and of the chosen junction over the picture; one that would lie over another, or over a junction, is left out.

import * as THREE from 'three';
import {h, put} from '../dom.js';
import {state} from '../state.js';
import {kindText} from '../ledger/marks.js';
import {kindOf} from '../ledger/result.js';
import {labelPlaces, middle, toSegment} from '../ledger/geometry.js';
import {length} from '../units.js';

const MOST_LABELS = 40, MOST_LINES = 500, TURNED_AWAY = -0.05, EDGE_PX = 8;

/** Away from the building, square to a face: one that is seen from behind has no name. */
function upOf(f) {
  const az = f.fallAzimuthDegrees * Math.PI / 180, slope = f.slopeDegrees * Math.PI / 180;
  return new THREE.Vector3(Math.sin(az) * Math.sin(slope), Math.cos(az) * Math.sin(slope), Math.cos(slope));
}

/** The largest first: where two names would lie over each other, the larger face keeps its own. */
const byArea = L => L.byArea ??= [...L.faces.values()].sort((a, b) => b.areaM2 - a.areaM2);

/** Draws the names anew, as the camera sees them. */
export function drawLabels(root, {canvas, camera}, local) {
  const L = state.ledger, out = [], taken = [];
  const seen = p => {
    const q = new THREE.Vector3(...local(p)).project(camera);
    return q.z > 1 ? null : [(q.x + 1) / 2 * canvas.clientWidth, (1 - q.y) / 2 * canvas.clientHeight];
  };
  const place = (p, text, cls, edges = []) => {
    const [x, y] = seen(p) ?? [-1, -1], wide = 5 + 4 * text.length;
    if (x < 0 || y < 0 || x > canvas.clientWidth || y > canvas.clientHeight) return false;
    if (taken.some(t => Math.abs(t.x - x) < t.wide + wide && Math.abs(t.y - y) < 16)) return false;
    if (edges.some(path => isOver(path, x, y))) return false;
    taken.push({x, y, wide});
    out.push(h('span', {class: cls, style: {left: x + 'px', top: y + 'px'}}, text));
    return true;
  };
  const j = L.byId.get(state.selected);
  if (j) place(middle(j), `${kindText(kindOf(j))} ${length(j.lengthM)}`, 'line-tag');
  const eye = camera.getWorldDirection(new THREE.Vector3());
  const edges = L.junctions.length <= MOST_LINES ? L.junctions.map(x => x.path.map(seen)) : [];
  for (const f of L.faces.size <= MOST_LABELS ? byArea(L) : []) {
    if (upOf(f).dot(eye) < TURNED_AWAY) labelPlaces(f).some(p => place(p, f.id, 'face-tag', edges));
  }
  put(root, out);
}

const isOver = (path, x, y) => path.some((b, i) => i > 0 && b && path[i - 1] && toSegment(x, y, path[i - 1], b) < EDGE_PX);
