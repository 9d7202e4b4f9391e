// What lies under the pointer in 3-D.

import * as THREE from 'three';

const REACH_PX = matchMedia('(pointer: coarse)').matches ? 18 : 8;
const caster = new THREE.Raycaster();

/**
 * The junction nearest to the pointer that no face hides, and the face.
 * @param {PointerEvent} e
 * @returns {{j?: import('../types.js').Junction, face?: string}}
 */
export function pick(e, {canvas, camera}, model) {
  const r = canvas.getBoundingClientRect();
  caster.setFromCamera(new THREE.Vector2((e.clientX - r.left) / r.width * 2 - 1, 1 - (e.clientY - r.top) / r.height * 2), camera);
  caster.params.Line2 = {threshold: REACH_PX};
  const isSeen = x => model.planes.every(p => p.distanceToPoint(x.point) >= 0);
  const off = x => caster.ray.distanceToPoint(x.pointOnLine ?? x.point);
  const face = caster.intersectObject(model.faces).find(isSeen);
  const isInFront = x => !face || x.point.distanceTo(camera.position) < face.distance + Math.max(0.15, face.distance * 0.02);
  const line = model.lines.flatMap(l => caster.intersectObject(l).map(x => ({...x, j: l.userData.of[x.faceIndex]})))
    .filter(isSeen).filter(isInFront).sort((a, b) => off(a) - off(b))[0];
  const vertex = face && face.faceIndex * 3;
  return {j: line?.j, face: face && model.ranges.find(x => vertex >= x.from && vertex < x.to)?.id};
}
