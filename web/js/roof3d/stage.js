// Renderer, camera and light. Draws only when asked to, with the next frame.

import * as THREE from 'three';
import {OrbitControls} from 'three/addons/controls/OrbitControls.js';

const LABEL = 'Roof in 3-D. Arrow keys turn it, plus and minus zoom, 0 shows all. The table holds the same junctions.';
const SLOW_MS = 70;

export class Stage {
  constructor() {
    this.renderer = new THREE.WebGLRenderer({antialias: true, alpha: true});
    this.renderer.setPixelRatio(Math.min(devicePixelRatio, 2));
    this.renderer.localClippingEnabled = true;
    this.canvas = this.renderer.domElement;
    this.canvas.tabIndex = 0;
    this.canvas.setAttribute('role', 'img');
    this.canvas.setAttribute('aria-label', LABEL);
    this.scene = new THREE.Scene();
    this.camera = new THREE.PerspectiveCamera(38, 1, 0.05, 5000);
    this.camera.up.set(0, 0, 1);
    this.controls = new OrbitControls(this.camera, this.canvas);
    this.controls.maxPolarAngle = Math.PI * 0.98;
    this.scene.add(new THREE.HemisphereLight(0xffffff, 0x8d8577, 2.1));
    const sun = new THREE.DirectionalLight(0xffffff, 1.6);
    sun.position.set(-3, -5, 8);
    this.scene.add(sun);
    /** Whether a picture takes so long that a flight of many would only be waited for. */
    this.isSlow = false;
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

  /** Pixels of a metre at the distance of what the camera turns about. */
  pxPerM() {
    return this.canvas.clientHeight / (2 * Math.tan(this.camera.fov * Math.PI / 360) * this.distance());
  }

  /** @param {number} radius of what there is to see, metres */
  render(radius) {
    this.camera.near = Math.max(0.01, this.distance() / 200);
    this.camera.far = this.distance() + radius * 6;
    this.camera.updateProjectionMatrix();
    const begun = performance.now();
    this.renderer.render(this.scene, this.camera);
    this.isSlow = performance.now() - begun > SLOW_MS;
  }

  resize(width, height) {
    this.renderer.setSize(width, height, false);
    this.camera.aspect = width / height;
  }

  /** Degrees that the sheet's up is turned from north. */
  heading() {
    const dir = new THREE.Vector3();
    this.camera.getWorldDirection(dir);
    const up = Math.abs(dir.z) > 0.999 ? this.camera.up.clone().applyQuaternion(this.camera.quaternion) : dir;
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
