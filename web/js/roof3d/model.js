// The roof in the scene: faces, what stands up from them, junction lines, what changed and what is chosen.

import * as THREE from 'three';
import {state} from '../state.js';
import {SEALS} from '../ledger/marks.js';
import {changedPaths} from '../ledger/result.js';
import {matching} from '../ledger/rows.js';
import {layerObjects} from './layers.js';
import {surroundings} from './surroundings.js';
import {facesMesh, lineSet, pointSet, seamSet, wallsMesh} from './meshes.js';

/** Of the radius of the roof. */
const SHOWN_BELOW = 0.8;
const DIM = {colour: '#9aa0a4', width: 1, dash: null};
const CHANGE_DASH = {gone: [6, 6], changed: [16, 4]};

const css = name => getComputedStyle(document.documentElement).getPropertyValue(name).trim();

export class Model {
  /** @param {import('./stage.js').Stage} stage */
  constructor(stage) {
    Object.assign(this, {stage, origin: [0, 0, 0], radius: 1, faces: null, ranges: [], walls: null, seams: null, around: [],
      lines: [], nodes: [], changes: [], chosen: [], layers: [], planes: []});
    this.local = p => [p[0] - this.origin[0], p[1] - this.origin[1], p[2] - this.origin[2]];
  }

  build() {
    const L = state.ledger, {lo, hi} = L.box, {stage} = this;
    stage.drop([this.faces, this.walls, this.seams]);
    this.of = state.analysis.id;
    this.origin = lo.map((x, i) => (x + hi[i]) / 2);
    this.radius = Math.max(0.5, Math.hypot(hi[0] - lo[0], hi[1] - lo[1], hi[2] - lo[2]) / 2);
    const {mesh, ranges} = facesMesh(L, this.local);
    this.faces = mesh;
    this.ranges = ranges;
    this.walls = wallsMesh(L, this.local);
    // Shown only where the model has no bodies to show.
    this.walls.visible = false;
    this.seams = seamSet(L, this.local, this.radius * 0.0008, css('--ink'));
    stage.scene.add(this.faces, this.walls, this.seams);
    stage.lightUp(this.radius);
    this.buildLines();
    this.buildNodes();
    this.buildChanges();
    this.buildLayers();
    this.buildAround();
  }

  /** What stands near the roof comes later than the roof: nobody waits for it. */
  async buildAround() {
    const of = this.of;
    this.replace('around', []);
    const around = await surroundings(of, this.local);
    if (!state.ledger || this.of !== of) return;
    this.replace('around', around);
    this.walls.visible = !around.length;
    this.dress();
    this.cutBy(this.planes);
    this.stage.renderer.shadowMap.needsUpdate = true;
    this.onAround();
  }

  /** Corners of the roof's faces, each once. */
  corners() {
    const {attributes, userData} = this.faces.geometry;
    return userData.corners ??= distinct(attributes.position);
  }

  /** Corners of the building under the roof, as far as a picture of the roof should show of it. */
  below() {
    const body = this.around[0];
    if (!body) return [];
    const {min, max} = new THREE.Box3().setFromObject(body), z = Math.max(min.z, -SHOWN_BELOW * this.radius);
    return [min.x, max.x].flatMap(x => [min.y, max.y].map(y => new THREE.Vector3(x, y, z)));
  }

  /** Takes the colours of day or night. */
  dress() {
    this.seams.material.color.set(css('--ink'));
    this.around.forEach((o, i) => o.material.color.set(css(i ? '--quiet' : '--wall')));
    this.buildNodes();
    this.tint();
  }

  /** Puts other objects in the place of those of that name. */
  replace(name, objects) {
    this.stage.drop(this[name]);
    this[name] = objects;
    if (objects.length) this.stage.scene.add(...objects);
  }

  buildLines() {
    const L = state.ledger, isFiltered = Object.keys(state.filters).length > 0;
    const shown = isFiltered ? new Set(matching(L, state.filters, state.reviews)) : null;
    const sets = new Map();
    for (const j of L.lines) {
      const key = shown && !shown.has(j) ? 'dim' : j.seal;
      if (!sets.has(key)) sets.set(key, {at: [], of: []});
      this.addStretches(sets.get(key), j.path, j);
    }
    this.replace('lines', [...sets].map(([key, t]) => lineSet(t, key === 'dim' ? DIM : SEALS[key], this.planes)));
    this.buildChosen();
  }

  /** Lines lie on the surface; a little higher they are not lost in it. */
  addStretches(t, path, of) {
    const lifted = p => {
      const q = this.local(p);
      return [q[0], q[1], q[2] + this.radius * 0.0015];
    };
    for (let i = 1; i < path.length; i++) {
      t.at.push(...lifted(path[i - 1]), ...lifted(path[i]));
      t.of.push(of);
    }
    return t;
  }

  /** The chosen line shines through whatever hides it, and keeps its own colour and dashes on top. */
  buildChosen() {
    const j = state.ledger.byId.get(state.selected), objects = [];
    if (j) {
      const t = this.addStretches({at: [], of: []}, j.path, j), own = SEALS[j.seal];
      objects.push(lineSet(t, {colour: css('--pick'), width: own.width + 9, dash: null}, []),
        lineSet(t, {...own, width: own.width + 1}, []));
      objects.forEach((o, i) => {
        o.material.depthTest = false;
        o.material.transparent = true;
        o.renderOrder = 5 + i;
      });
      objects[0].material.opacity = 0.5;
    }
    this.replace('chosen', objects);
    this.tint();
  }

  /** Points where lines meet, of one size on the screen. */
  buildNodes() {
    const shown = [...state.ledger.nodes.values()].filter(n => state.nodes && (!state.nodeKind || n.kind === state.nodeKind));
    this.replace('nodes', shown.length ? [pointSet(shown.map(n => this.local(n.at)), css('--ink'), this.planes)] : []);
  }

  /** Water and movement, where they are switched on. */
  buildLayers() {
    this.replace('layers', layerObjects(this, css, () => {
      this.buildLayers();
      this.onAround();
    }));
  }

  buildChanges() {
    const changes = state.tab === 'revisions' && state.changes ? Object.entries(changedPaths(state.changes)) : [];
    this.replace('changes', changes.filter(([, paths]) => paths.some(p => p.length > 1)).map(([what, paths]) => {
      const t = {at: [], of: []};
      paths.forEach(path => this.addStretches(t, path));
      return lineSet(t, {colour: css('--' + what), width: 8, dash: CHANGE_DASH[what] ?? null}, []);
    }));
  }

  /** Colours the chosen face, and a little the faces of the chosen junction. */
  tint() {
    const colours = this.faces.geometry.attributes.color;
    const plain = new THREE.Color(css('--sheet-face')), lit = new THREE.Color(css('--face-pick'));
    const j = state.ledger.byId.get(state.selected);
    for (const r of this.ranges) {
      const c = r.id === state.face ? lit : j?.faces.includes(r.id) ? plain.clone().lerp(lit, 0.45) : plain;
      for (let i = r.from; i < r.to; i++) colours.setXYZ(i, c.r, c.g, c.b);
    }
    colours.needsUpdate = true;
  }

  /** @param {THREE.Plane[]} planes what lies behind one of them is not drawn and not picked */
  cutBy(planes) {
    this.planes = planes;
    for (const o of [this.faces, this.walls, this.seams, ...this.around, ...this.lines, ...this.nodes, ...this.layers]) {
      o.material.clippingPlanes = planes;
      o.material.needsUpdate = true;
    }
  }

  /** Dashes keep their length on the screen. */
  scaleDashes(pxPerM) {
    for (const o of [...this.lines, ...this.changes, ...this.chosen]) o.material.dashScale = pxPerM;
  }
}

function distinct(at) {
  const seen = new Map();
  for (let i = 0; i < at.count; i++) seen.set(`${at.getX(i)} ${at.getY(i)} ${at.getZ(i)}`, i);
  return [...seen.values()].map(i => new THREE.Vector3().fromBufferAttribute(at, i));
}
