// Faces, walls and lines as objects of the scene. `local` takes a point of the world to the scene, whose origin is the roof's middle.

import * as THREE from 'three';
import {LineSegments2} from 'three/addons/lines/LineSegments2.js';
import {LineSegmentsGeometry} from 'three/addons/lines/LineSegmentsGeometry.js';
import {LineMaterial} from 'three/addons/lines/LineMaterial.js';
import {inside} from '../ledger/geometry.js';

const MOST_UPSTAND_M = 3, MOST_SEAMS = 20_000;

/**
 * All faces as one mesh.
 * @returns {{mesh: THREE.Mesh, ranges: {id: string, from: number, to: number}[]}} with the vertices of each face
 */
export function facesMesh(L, local) {
  const at = [], ranges = [];
  for (const f of L.faces.values()) {
    const from = at.length / 3;
    for (const rings of f.facets) for (const p of triangles(rings)) at.push(...local(p));
    ranges.push({id: f.id, from, to: at.length / 3});
  }
  const g = geometryOf(at);
  g.setAttribute('color', new THREE.Float32BufferAttribute(new Float32Array(at.length).fill(1), 3));
  const material = new THREE.MeshStandardMaterial({vertexColors: true, side: THREE.DoubleSide, metalness: 0.15, roughness: 0.62,
    polygonOffset: true, polygonOffsetFactor: 1.5, polygonOffsetUnits: 2});
  return {mesh: shadowed(new THREE.Mesh(g, material)), ranges};
}

function shadowed(mesh) {
  mesh.castShadow = true;
  mesh.receiveShadow = true;
  return mesh;
}

/** The seams where the layout puts them, as faint lines of one pixel; none where there are more than can be told apart. */
export function seamSet(L, local, liftM, colour) {
  const lines = [...L.faces.values()].flatMap(f => f.seams?.lines ?? []), at = [];
  for (const line of lines.length <= MOST_SEAMS ? lines : []) {
    for (let i = 1; i < line.length; i++) {
      for (const p of [line[i - 1], line[i]]) at.push(...local([p[0], p[1], p[2] + liftM]));
    }
  }
  const g = new THREE.BufferGeometry();
  g.setAttribute('position', new THREE.Float32BufferAttribute(at, 3));
  return new THREE.LineSegments(g, new THREE.LineBasicMaterial({color: colour, transparent: true, opacity: 0.3}));
}

function geometryOf(at) {
  const g = new THREE.BufferGeometry();
  g.setAttribute('position', new THREE.Float32BufferAttribute(at, 3));
  g.computeVertexNormals();
  return g;
}

/** A facet as triangles: seen from above, where every roof face is a simple outline; each outside ring takes the holes that lie in it. */
function triangles(rings) {
  const outer = rings.filter(r => turn(r) > 0), holes = rings.filter(r => turn(r) <= 0), out = [];
  for (const o of outer.length ? outer : rings) {
    const mine = outer.length ? holes.filter(x => outer.length === 1 || inside([o], x[0][0], x[0][1])) : [];
    const flat = [...o, ...mine.flat()];
    const v2 = r => r.map(p => new THREE.Vector2(p[0], p[1]));
    for (const t of THREE.ShapeUtils.triangulateShape(v2(o), mine.map(v2))) t.forEach(i => out.push(flat[i]));
  }
  return out;
}

/** Twice the area in plan, positive where the ring runs counter-clockwise. */
const turn = r => r.reduce((t, p, i) => {
  const q = r[(i + 1) % r.length];
  return t + p[0] * q[1] - q[0] * p[1];
}, 0);

/** What stands up from the roof along a line, as high as it was measured. */
export function wallsMesh(L, local) {
  const at = [];
  for (const j of L.junctions) {
    const up = Math.min(j.facts?.upstandM ?? 0, MOST_UPSTAND_M);
    if (!(up > 0)) continue;
    for (let i = 1; i < j.path.length; i++) {
      const a = local(j.path[i - 1]), b = local(j.path[i]), a2 = [a[0], a[1], a[2] + up], b2 = [b[0], b[1], b[2] + up];
      for (const p of [a, b, b2, a, b2, a2]) at.push(...p);
    }
  }
  return shadowed(new THREE.Mesh(geometryOf(at), new THREE.MeshStandardMaterial({color: 0xb9a48c, side: THREE.DoubleSide,
    roughness: 0.9})));
}

/** A colour as the style has it now, where it is a property of the style. */
const resolved = colour => colour.replace(/^var\((.*)\)$/,
  (all, name) => getComputedStyle(document.documentElement).getPropertyValue(name).trim());

/**
 * Stretches of lines that look the same.
 * @param {{at: number[], of: object[]}} t ends of the stretches, and the junction of each
 * @param {{colour: string, width: number, dash: number[]|null}} mark
 * @param {THREE.Plane[]} planes that cut them
 */
export function lineSet(t, mark, planes) {
  const g = new LineSegmentsGeometry();
  g.setPositions(t.at);
  const m = new LineMaterial({color: new THREE.Color(resolved(mark.colour)), linewidth: mark.width, dashed: !!mark.dash,
    dashSize: mark.dash?.[0] ?? 1, gapSize: mark.dash?.[1] ?? 0, clipping: true, clippingPlanes: planes,
    polygonOffset: true, polygonOffsetFactor: -1, polygonOffsetUnits: -6});
  const o = new LineSegments2(g, m);
  if (mark.dash) o.computeLineDistances();
  o.userData.of = t.of;
  return o;
}

/** Dots of one size on the screen. */
export function pointSet(places, colour, planes) {
  const geometry = new THREE.BufferGeometry().setFromPoints(places.map(p => new THREE.Vector3(...p)));
  return new THREE.Points(geometry, new THREE.PointsMaterial({color: colour, size: 6, sizeAttenuation: false, clippingPlanes: planes}));
}
