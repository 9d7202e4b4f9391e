// Ways of the camera: to a view of everything, to a junction, by keys.

import * as THREE from 'three';
import {middle} from '../ledger/geometry.js';

export const WHOLE = [-0.6, -1, 0.75];
const FLIGHT_MS = 380;
const still = matchMedia('(prefers-reduced-motion: reduce)');

export class Flight {
  /**
   * @param {import('./stage.js').Stage} stage
   * @param {import('./model.js').Model} model
   * @param {() => void} draw
   */
  constructor(stage, model, draw) {
    Object.assign(this, {stage, model, draw, number: 0});
  }

  /** Ends a flight where it is. */
  stop() {
    this.number++;
  }

  /**
   * Goes to a view of everything from a direction.
   * @param {number[]} dir from the roof to the camera
   * @param {boolean} [isAtOnce]
   */
  look(dir, isAtOnce = false) {
    const d = new THREE.Vector3(...dir).normalize(), right = new THREE.Vector3(-d.y, d.x, 0).normalize(), up = d.clone().cross(right);
    const {camera} = this.stage, tanUp = Math.tan(camera.fov * Math.PI / 360) * 0.9, tanRight = tanUp * camera.aspect;
    const at = this.model.faces.geometry.attributes.position, p = new THREE.Vector3();
    if (!at.count) return this.fly(new THREE.Vector3(), d.multiplyScalar(this.model.radius * 3), isAtOnce);
    const each = fn => { for (let i = 0; i < at.count; i++) fn(p.fromBufferAttribute(at, i)); };
    const lo = [Infinity, Infinity], hi = [-Infinity, -Infinity];
    each(q => [q.dot(right), q.dot(up)].forEach((x, i) => {
      lo[i] = Math.min(lo[i], x);
      hi[i] = Math.max(hi[i], x);
    }));
    const target = right.clone().multiplyScalar((lo[0] + hi[0]) / 2).addScaledVector(up, (lo[1] + hi[1]) / 2);
    let away = 0.5;
    each(q => {
      q.sub(target);
      away = Math.max(away, q.dot(d) + Math.abs(q.dot(right)) / tanRight, q.dot(d) + Math.abs(q.dot(up)) / tanUp);
    });
    this.fly(target, d.multiplyScalar(away), isAtOnce);
  }

  /** Goes to a target and an offset from it, in a short flight where there is time for one. */
  fly(target, offset, isAtOnce) {
    const {stage} = this, from = stage.controls.target.clone(), fromOffset = stage.offset();
    const begun = performance.now(), mine = ++this.number;
    const fromLength = fromOffset.length() || offset.length();
    const step = now => {
      if (mine !== this.number) return;
      const t = isAtOnce || stage.isSlow || still.matches ? 1 : Math.min(1, (now - begun) / FLIGHT_MS), k = t * t * (3 - 2 * t);
      const o = fromOffset.clone().lerp(offset, k).setLength(THREE.MathUtils.lerp(fromLength, offset.length(), k));
      stage.place(from.clone().lerp(target, k), o);
      this.draw();
      if (t < 1) requestAnimationFrame(step);
    };
    step(begun);
  }

  flyTo(j) {
    const now = this.stage.offset(), away = Math.max(j.lengthM * 1.6, this.model.radius * 0.35, 2.5);
    if (now.z < away * 0.2) now.z = away * 0.4;
    this.fly(new THREE.Vector3(...this.model.local(middle(j))), now.setLength(Math.min(now.length(), away) || away));
  }

  /** Turns or moves the camera as a key says; whether the key means anything. */
  press(key) {
    if (key === '0') {
      this.look(WHOLE);
      return true;
    }
    const turn = {ArrowLeft: [-0.12, 0], ArrowRight: [0.12, 0], ArrowUp: [0, -0.1], ArrowDown: [0, 0.1]}[key];
    const closer = {'+': 0.8, '=': 0.8, '-': 1.25}[key];
    if (!turn && !closer) return false;
    const o = this.stage.offset();
    this.stage.place(this.stage.controls.target.clone(), turn ? turned(o, turn) : o.multiplyScalar(closer));
    this.draw();
    return true;
  }
}

function turned(o, [theta, phi]) {
  const sphere = new THREE.Spherical().setFromVector3(new THREE.Vector3(o.x, o.z, -o.y));
  sphere.theta += theta;
  sphere.phi = Math.max(0.02, Math.min(3.05, sphere.phi + phi));
  const q = new THREE.Vector3().setFromSpherical(sphere);
  return new THREE.Vector3(q.x, -q.z, q.y);
}
