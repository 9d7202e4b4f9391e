// Names of faces and of the chosen junction over the picture; one that would lie over another is left out.

import * as THREE from 'three';
import {h, put} from '../dom.js';
import {state} from '../state.js';
import {kindText} from '../ledger/marks.js';
import {kindOf} from '../ledger/result.js';
import {labelPlace, middle} from '../ledger/geometry.js';
import {length} from '../units.js';

const MOST_LABELS = 40, TURNED_AWAY = -0.05;

/** Away from the building, square to a face: one that is seen from behind has no name. */
function upOf(f) {
  const az = f.fallAzimuthDegrees * Math.PI / 180, slope = f.slopeDegrees * Math.PI / 180;
  return new THREE.Vector3(Math.sin(az) * Math.sin(slope), Math.cos(az) * Math.sin(slope), Math.cos(slope));
}

/** The largest first: where two names would lie over each other, the larger face keeps its own. */
const byArea = L => L.byArea ??= [...L.faces.values()].sort((a, b) => b.areaM2 - a.areaM2);

export function drawLabels(root, {canvas, camera}, local) {
  const L = state.ledger, out = [], taken = [];
  const place = (p, text, cls) => {
    const q = new THREE.Vector3(...local(p)).project(camera);
    if (q.z > 1 || Math.abs(q.x) > 1 || Math.abs(q.y) > 1) return;
    const x = (q.x + 1) / 2 * canvas.clientWidth, y = (1 - q.y) / 2 * canvas.clientHeight, wide = 5 + 4 * text.length;
    if (taken.some(t => Math.abs(t.x - x) < t.wide + wide && Math.abs(t.y - y) < 16)) return;
    taken.push({x, y, wide});
    out.push(h('span', {class: cls, style: {left: x + 'px', top: y + 'px'}}, text));
  };
  const j = L.byId.get(state.selected);
  if (j) place(middle(j), `${kindText(kindOf(j))} ${length(j.lengthM)}`, 'line-tag');
  const eye = camera.getWorldDirection(new THREE.Vector3());
  for (const f of L.faces.size <= MOST_LABELS ? byArea(L) : []) {
    if (labelPlace(f) && upOf(f).dot(eye) < TURNED_AWAY) place(labelPlace(f), f.id, 'face-tag');
  }
  put(root, out);
}
