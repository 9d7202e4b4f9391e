// Ways of the camera: to a view of everything, to a junction, by keys.

import * as THREE from 'three';

export const WHOLE = [-0.6, -1, 0.75];
const FLIGHT_MS = 380, MARGIN_PX = 16;
/** Of what is chosen the surroundings show as far as this share of its length, and at least so far. */
const AROUND = 0.45, LEAST_AROUND_M = 2.5, LEAST_RISE = 0.35;
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
   * Goes to a view of places from a direction, clear of the buttons.
   * @param {number[]} dir from the roof to the camera
   * @param {{isAtOnce?: boolean, points?: THREE.Vector3[], isParallel?: boolean}} [how] without points: everything
   */
  look(dir, {isAtOnce = false, points = this.everything(), isParallel = this.stage.isParallel} = {}) {
    const {stage} = this, d = new THREE.Vector3(...dir).normalize();
    const right = new THREE.Vector3(-d.y, d.x, 0).normalize(), up = d.clone().cross(right);
    stage.setParallel(isParallel);
    const high = Math.max(1, stage.canvas.clientHeight), clear = Math.max(0.4, 1 - (stage.covered + MARGIN_PX) / high);
    const one = stage.halves(1), tanUp = one.up * clear * 0.94, tanRight = one.side * 0.94;
    if (!points.length) return this.fly(new THREE.Vector3(), d.multiplyScalar(this.model.radius * 3), isAtOnce);
    const lo = [Infinity, Infinity], hi = [-Infinity, -Infinity];
    for (const q of points) [q.dot(right), q.dot(up)].forEach((x, i) => {
      lo[i] = Math.min(lo[i], x);
      hi[i] = Math.max(hi[i], x);
    });
    const deep = points.reduce((t, q) => t + q.dot(d), 0) / points.length;
    const target = right.clone().multiplyScalar((lo[0] + hi[0]) / 2).addScaledVector(up, (lo[1] + hi[1]) / 2).addScaledVector(d, deep);
    let away = 0.5;
    for (const p of points) {
      const q = p.clone().sub(target), nearer = isParallel ? 0 : q.dot(d);
      away = Math.max(away, nearer + Math.abs(q.dot(right)) / tanRight, nearer + Math.abs(q.dot(up)) / tanUp);
    }
    // Buttons are at the foot: the middle of what is free of them lies a little higher.
    target.addScaledVector(up, -(stage.covered - MARGIN_PX / 2) / 2 * 2 * one.up * away / high);
    this.fly(target, d.multiplyScalar(away), isAtOnce);
  }

  everything() {
    return [...this.model.corners(), ...this.model.below()];
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

  /** Goes to places and what lies around them, from about where the camera is; no further away than all needs. */
  goTo(places) {
    const at = places.map(p => new THREE.Vector3(...this.model.local(p))), box = new THREE.Box3().setFromPoints(at);
    const pad = Math.min(this.model.radius * 0.6, Math.max(LEAST_AROUND_M, AROUND * box.getSize(new THREE.Vector3()).length()));
    const around = at.flatMap(p => [-1, 1].flatMap(k => [0, 1, 2].map(i => p.clone().setComponent(i, p.getComponent(i) + k * pad))));
    const dir = this.stage.offset().normalize();
    if (dir.z < LEAST_RISE && !this.stage.isParallel) dir.z = LEAST_RISE;
    this.look(dir.toArray(), {points: around});
  }

  /** Turns or moves the camera as a key says; whether the key means anything. */
  press(key) {
    if (key === '0') {
      this.look(WHOLE, {isParallel: false});
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
