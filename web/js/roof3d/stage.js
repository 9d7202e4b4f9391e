// Renderer, cameras and light. Draws only when asked to, with the next frame.

import * as THREE from 'three';
import {OrbitControls} from 'three/addons/controls/OrbitControls.js';

const LABEL = 'Roof in 3-D. Arrow keys turn it, plus and minus zoom, 0 shows all. The table holds the same junctions.';
const SLOW_MS = 70, FOV_DEGREES = 38, SHADOW_PX = 2048;
/** From above, a little from the south-west: no face of a roof is in its own shadow, and none is lit like its neighbour. */
const SUN = new THREE.Vector3(-0.55, -0.75, 1.25).normalize();

export class Stage {
  constructor() {
    this.renderer = new THREE.WebGLRenderer({antialias: true, alpha: true});
    this.renderer.setPixelRatio(Math.min(devicePixelRatio, 2));
    this.renderer.localClippingEnabled = true;
    // To ask whether a shader has an error makes the page wait until it is compiled.
    this.renderer.debug.checkShaderErrors = false;
    // Nothing moves but the camera: shadows are drawn once for each roof.
    Object.assign(this.renderer.shadowMap, {enabled: true, autoUpdate: false, type: THREE.PCFSoftShadowMap});
    this.canvas = this.renderer.domElement;
    this.canvas.tabIndex = 0;
    this.canvas.setAttribute('role', 'img');
    this.canvas.setAttribute('aria-label', LABEL);
    this.scene = new THREE.Scene();
    this.lens = new THREE.PerspectiveCamera(FOV_DEGREES, 1, 0.05, 5000);
    this.parallel = new THREE.OrthographicCamera(-1, 1, 1, -1, 0.05, 5000);
    this.camera = this.lens;
    for (const c of [this.lens, this.parallel]) c.up.set(0, 0, 1);
    this.controls = new OrbitControls(this.camera, this.canvas);
    this.controls.maxPolarAngle = Math.PI * 0.98;
    /** Pixels at the foot that buttons cover. */
    this.covered = 0;
    /** Whether a picture takes so long that a flight of many would only be waited for. */
    this.isSlow = false;
    this.light();
  }

  light() {
    this.sun = new THREE.DirectionalLight(0xfff4e2, 2.3);
    this.sun.castShadow = true;
    this.sun.shadow.mapSize.set(SHADOW_PX, SHADOW_PX);
    this.scene.add(new THREE.HemisphereLight(0xeef4ff, 0x8d8577, 1.25), this.sun, this.sun.target);
  }

  /** Puts the sun where its shadows take in a ball of that radius, metres. */
  lightUp(radius) {
    const {sun} = this, c = sun.shadow.camera, r = radius * 1.15;
    sun.position.copy(SUN).multiplyScalar(radius * 3);
    Object.assign(c, {left: -r, right: r, top: r, bottom: -r, near: radius * 0.5, far: radius * 6});
    c.updateProjectionMatrix();
    sun.shadow.normalBias = radius * 0.002;
    sun.shadow.bias = -0.0005;
    this.renderer.shadowMap.needsUpdate = true;
  }

  /** Looks with parallel lines of sight, as a drawing does, or as an eye. */
  setParallel(isParallel) {
    const to = isParallel ? this.parallel : this.lens;
    if (to === this.camera) return;
    to.position.copy(this.camera.position);
    to.quaternion.copy(this.camera.quaternion);
    this.camera = to;
    this.controls.object = to;
  }

  get isParallel() {
    return this.camera === this.parallel;
  }

  /** Metres from the camera to what it turns about. */
  distance() {
    return this.camera.position.distanceTo(this.controls.target);
  }

  /** From what it turns about to the camera. */
  offset() {
    return this.camera.position.clone().sub(this.controls.target);
  }

  place(target, offset) {
    this.controls.target.copy(target);
    this.camera.position.copy(target).add(offset);
    this.camera.lookAt(target);
    this.controls.update();
  }

  /** Half of what is seen at a distance, metres: to the side and upwards. */
  halves(distance) {
    const up = distance * Math.tan(FOV_DEGREES * Math.PI / 360);
    return {up, side: up * this.lens.aspect};
  }

  /** Pixels of a metre at the distance of what the camera turns about. */
  pxPerM() {
    return this.canvas.clientHeight / (2 * this.halves(this.distance()).up);
  }

  /** @param {number} radius of what there is to see, metres */
  render(radius) {
    this.focus(radius);
    const begun = performance.now();
    this.renderer.render(this.scene, this.camera);
    this.isSlow = performance.now() - begun > SLOW_MS;
  }

  /** Sets how near and how far is seen: the closer together, the less do lines fight with the faces that they lie on. */
  focus(radius) {
    const {camera, parallel} = this;
    if (this.isParallel && parallel.zoom !== 1) {
      // What turning a wheel made larger is the same as coming closer: one measure for both cameras.
      const closer = this.offset().divideScalar(parallel.zoom);
      parallel.zoom = 1;
      this.place(this.controls.target.clone(), closer);
    }
    const d = this.distance(), away = camera.position.length();
    camera.near = this.isParallel ? -radius * 8 : Math.max(0.02, away - radius * 2.5, d / 150);
    camera.far = away + radius * 4;
    const {up, side} = this.halves(d);
    if (this.isParallel) Object.assign(camera, {left: -side, right: side, top: up, bottom: -up});
    camera.updateProjectionMatrix();
  }

  resize(width, height) {
    this.renderer.setSize(width, height, false);
    this.lens.aspect = width / height;
  }

  /** Degrees that north is turned from the sheet's up, clockwise. */
  heading() {
    const dir = this.camera.getWorldDirection(new THREE.Vector3());
    const up = Math.abs(dir.z) > 0.9 ? new THREE.Vector3(0, 1, 0).applyQuaternion(this.camera.quaternion) : dir;
    return -Math.atan2(up.x, up.y) * 180 / Math.PI;
  }

  /** Takes objects out of the scene and gives their memory back. */
  drop(objects) {
    for (const o of objects) {
      if (!o) continue;
      this.scene.remove(o);
      o.geometry.dispose();
      o.material.dispose();
    }
  }
}
