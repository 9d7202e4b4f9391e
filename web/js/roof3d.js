// The roof in 3-D: faces, what stands up from them as far as it was measured, junction lines by what seals them. Draws only on change.

import * as THREE from 'three';
import {OrbitControls} from 'three/addons/controls/OrbitControls.js';
import {LineSegments2} from 'three/addons/lines/LineSegments2.js';
import {LineSegmentsGeometry} from 'three/addons/lines/LineSegmentsGeometry.js';
import {LineMaterial} from 'three/addons/lines/LineMaterial.js';
import {h, s, put} from './dom.js';
import {set, state, watch} from './state.js';
import {SEALS, kindText} from './marks.js';
import {changedPaths, kindOf, labelPlace, matching, middle} from './ledger.js';
import * as u from './units.js';

const MOST_UPSTAND_M = 3, MOST_LABELS = 40, REACH_PX = matchMedia('(pointer: coarse)').matches ? 18 : 8;
const PRESETS = [['Whole roof', [-0.6, -1, 0.75]], ['Top', [0, -0.001, 1]], ['South', [0, -1, 0.12]], ['East', [1, 0, 0.12]], ['North', [0, 1, 0.12]], ['West', [-1, 0, 0.12]]];
const still = matchMedia('(prefers-reduced-motion: reduce)');

export function mountRoof(root) {
  const renderer = new THREE.WebGLRenderer({antialias: true, alpha: true});
  renderer.setPixelRatio(Math.min(devicePixelRatio, 2));
  renderer.localClippingEnabled = true;
  const canvas = renderer.domElement;
  canvas.tabIndex = 0;
  canvas.setAttribute('role', 'img');
  canvas.setAttribute('aria-label', 'Roof in 3-D. Arrow keys turn it, plus and minus zoom, 0 shows all. The table holds the same junctions.');
  const scene = new THREE.Scene();
  const camera = new THREE.PerspectiveCamera(38, 1, 0.05, 5000);
  camera.up.set(0, 0, 1);
  const controls = new OrbitControls(camera, canvas);
  controls.maxPolarAngle = Math.PI * 0.98;
  scene.add(new THREE.HemisphereLight(0xffffff, 0x8d8577, 2.1));
  const sun = new THREE.DirectionalLight(0xffffff, 1.6);
  sun.position.set(-3, -5, 8);
  scene.add(sun);

  const labels = h('div', {class: 'labels', 'aria-hidden': 'true'});
  const north = s('svg', {class: 'north', viewBox: '-12 -16 24 32', 'aria-hidden': 'true'}, s('g', {}, s('path', {d: 'M0 -13 5 6 0 3 -5 6Z'}), s('text', {y: 15, 'text-anchor': 'middle', 'font-size': 9}, 'N')));
  const cut = sectionBox(() => { applyCut(); draw(); });
  put(root, canvas, labels, north,
    h('div', {class: 'drawing-tools', role: 'group', 'aria-label': '3-D view'},
      PRESETS.map(([name, dir], i) => h('button', {class: i > 1 ? 'side-view' : '', on: {click: () => look(dir)}}, i === 0 ? 'Fit' : name)),
      h('button', {'aria-expanded': 'false', on: {click: e => { cut.root.hidden = !cut.root.hidden; e.currentTarget.setAttribute('aria-expanded', String(!cut.root.hidden)); }}}, 'Section box')),
    cut.root);

  const model = {origin: [0, 0, 0], faces: null, ranges: [], walls: null, lines: [], changes: [], chosen: [], planes: [], radius: 1, centre: new THREE.Vector3()};
  const local = p => [p[0] - model.origin[0], p[1] - model.origin[1], p[2] - model.origin[2]];

  function build() {
    for (const o of [model.faces, model.walls, ...model.lines, ...model.chosen]) if (o) { scene.remove(o); o.geometry.dispose(); o.material.dispose(); }
    model.lines = [];
    model.chosen = [];
    const L = state.ledger, {lo, hi} = L.box;
    model.of = state.analysis.id;
    model.origin = lo.map((x, i) => (x + hi[i]) / 2);
    model.radius = Math.max(0.5, Math.hypot(hi[0] - lo[0], hi[1] - lo[1], hi[2] - lo[2]) / 2);
    model.faces = facesMesh(L, local, model);
    model.walls = wallsMesh(L, local);
    scene.add(model.faces, model.walls);
    cut.setRange(lo, hi);
    buildLines();
    buildChanges();
    applyCut();
    look(PRESETS[0][1], true);
  }

  function buildLines() {
    for (const o of model.lines) { scene.remove(o); o.geometry.dispose(); o.material.dispose(); }
    const L = state.ledger, filtered = Object.keys(state.filters).length > 0;
    const shown = filtered ? new Set(matching(L, state.filters, state.reviews)) : null;
    const sets = new Map();
    for (const j of L.junctions) {
      const key = shown && !shown.has(j) ? 'dim' : j.seal;
      if (!sets.has(key)) sets.set(key, {at: [], of: []});
      const t = sets.get(key);
      for (let i = 1; i < j.path.length; i++) { t.at.push(...lift(local(j.path[i - 1])), ...lift(local(j.path[i]))); t.of.push(j); }
    }
    model.lines = [...sets].map(([key, t]) => lineSet(t, key === 'dim' ? {colour: '#9aa0a4', width: 1, dash: null} : SEALS[key], model.planes));
    if (model.lines.length) scene.add(...model.lines);
    buildChosen();
  }

  /** Lines lie on the surface; a little higher they are not lost in it. */
  const lift = p => [p[0], p[1], p[2] + model.radius * 0.0015];

  /** The chosen line shines through whatever hides it, and keeps its own colour and dashes on top. */
  function buildChosen() {
    for (const o of model.chosen) { scene.remove(o); o.geometry.dispose(); o.material.dispose(); }
    model.chosen = [];
    const j = state.ledger.byId.get(state.selected);
    if (j) {
      const t = {at: [], of: []}, own = SEALS[j.seal];
      for (let i = 1; i < j.path.length; i++) t.at.push(...lift(local(j.path[i - 1])), ...lift(local(j.path[i])));
      model.chosen = [lineSet(t, {colour: css('--pick'), width: own.width + 9, dash: null}, []), lineSet(t, {...own, width: own.width + 1}, [])];
      model.chosen.forEach((o, i) => { o.material.depthTest = false; o.renderOrder = 5 + i; });
      model.chosen[0].material.transparent = true;
      model.chosen[0].material.opacity = 0.5;
      model.chosen[1].material.transparent = true;
      scene.add(...model.chosen);
    }
    tint();
  }

  function buildChanges() {
    for (const o of model.changes) { scene.remove(o); o.geometry.dispose(); o.material.dispose(); }
    model.changes = [];
    if (state.tab === 'revisions' && state.changes) {
      for (const [what, paths] of Object.entries(changedPaths(state.changes))) {
        const t = {at: [], of: []};
        for (const path of paths) for (let i = 1; i < path.length; i++) { t.at.push(...lift(local(path[i - 1])), ...lift(local(path[i]))); }
        if (t.at.length) model.changes.push(lineSet(t, {colour: css('--' + what), width: 8, dash: what === 'gone' ? [6, 6] : what === 'changed' ? [16, 4] : null}, []));
      }
      if (model.changes.length) scene.add(...model.changes);
    }
  }

  function tint() {
    const colours = model.faces.geometry.attributes.color, plain = new THREE.Color(css('--sheet-face')), lit = new THREE.Color(css('--face-pick'));
    const j = state.ledger.byId.get(state.selected);
    for (const r of model.ranges) {
      const c = r.id === state.face ? lit : j?.faces.includes(r.id) ? plain.clone().lerp(lit, 0.45) : plain;
      for (let i = r.from; i < r.to; i++) colours.setXYZ(i, c.r, c.g, c.b);
    }
    colours.needsUpdate = true;
  }

  function applyCut() {
    model.planes = cut.planes(model.origin);
    for (const o of [model.faces, model.walls, ...model.lines]) if (o) { o.material.clippingPlanes = model.planes; o.material.needsUpdate = true; }
  }

  let asked = false;
  function draw() {
    if (asked) return;
    asked = true;
    requestAnimationFrame(() => {
      asked = false;
      if (root.hidden || !root.isConnected || !state.ledger) return;
      const pxPerM = canvas.clientHeight / (2 * Math.tan(camera.fov * Math.PI / 360) * camera.position.distanceTo(controls.target));
      for (const o of [...model.lines, ...model.changes, ...model.chosen]) o.material.dashScale = pxPerM;
      camera.near = Math.max(0.01, camera.position.distanceTo(controls.target) / 200);
      camera.far = camera.position.distanceTo(controls.target) + model.radius * 6;
      camera.updateProjectionMatrix();
      const begun = performance.now();
      renderer.render(scene, camera);
      // Where a picture takes this long, a flight of many would only be waited for.
      slow = performance.now() - begun > 70;
      drawLabels();
      const dir = new THREE.Vector3();
      camera.getWorldDirection(dir);
      const up = Math.abs(dir.z) > 0.999 ? camera.up.clone().applyQuaternion(camera.quaternion) : dir;
      north.firstChild.setAttribute('transform', `rotate(${-Math.atan2(up.x, up.y) * 180 / Math.PI})`);
      root.dataset.drawn = String(Number(root.dataset.drawn ?? 0) + 1);
    });
  }

  function drawLabels() {
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
    if (j) place(middle(j), `${kindText(kindOf(j, state.reviews))} ${u.length(j.lengthM)}`, 'line-tag');
    if (L.faces.size <= MOST_LABELS) for (const f of byArea(L)) { const at = f.labelAt ??= labelPlace(f); if (at) place(at, f.id, 'face-tag'); }
    put(labels, out);
  }

  /** Goes to a view of everything from a direction. */
  function look(dir, at = false) {
    const d = new THREE.Vector3(...dir).normalize(), right = new THREE.Vector3(-d.y, d.x, 0).normalize(), up = d.clone().cross(right);
    const tanUp = Math.tan(camera.fov * Math.PI / 360) * 0.9, tanRight = tanUp * camera.aspect;
    const at3 = model.faces.geometry.attributes.position, p = new THREE.Vector3(), lo = [Infinity, Infinity], hi = [-Infinity, -Infinity];
    const each = fn => { for (let i = 0; i < at3.count; i++) fn(p.fromBufferAttribute(at3, i)); };
    each(q => { [q.dot(right), q.dot(up)].forEach((x, i) => { lo[i] = Math.min(lo[i], x); hi[i] = Math.max(hi[i], x); }); });
    if (!at3.count) return fly(new THREE.Vector3(), d.multiplyScalar(model.radius * 3), at);
    const target = right.clone().multiplyScalar((lo[0] + hi[0]) / 2).addScaledVector(up, (lo[1] + hi[1]) / 2);
    let away = 0.5;
    each(q => { q.sub(target); away = Math.max(away, q.dot(d) + Math.abs(q.dot(right)) / tanRight, q.dot(d) + Math.abs(q.dot(up)) / tanUp); });
    fly(target, d.multiplyScalar(away), at);
  }

  let flight = 0, slow = false, own = false;
  function fly(target, offset, at) {
    const from = controls.target.clone(), fromOffset = camera.position.clone().sub(controls.target), begun = performance.now(), mine = ++flight;
    const step = now => {
      if (mine !== flight) return;
      const t = at || slow || still.matches ? 1 : Math.min(1, (now - begun) / 380), k = t * t * (3 - 2 * t);
      controls.target.lerpVectors(from, target, k);
      const o = fromOffset.clone().lerp(offset, k).setLength(THREE.MathUtils.lerp(fromOffset.length() || offset.length(), offset.length(), k));
      camera.position.copy(controls.target).add(o);
      camera.lookAt(controls.target);
      controls.update();
      draw();
      if (t < 1) requestAnimationFrame(step);
    };
    step(begun);
  }

  function flyTo(j) {
    const m = new THREE.Vector3(...local(middle(j))), now = camera.position.clone().sub(controls.target);
    const away = Math.max(j.lengthM * 1.6, model.radius * 0.35, 2.5);
    if (now.z < away * 0.2) now.z = away * 0.4;
    fly(m, now.setLength(Math.min(now.length(), away) || away));
  }

  const caster = new THREE.Raycaster();
  function pick(e) {
    const r = canvas.getBoundingClientRect();
    caster.setFromCamera(new THREE.Vector2((e.clientX - r.left) / r.width * 2 - 1, 1 - (e.clientY - r.top) / r.height * 2), camera);
    caster.params.Line2 = {threshold: REACH_PX};
    const seen = x => model.planes.every(p => p.distanceToPoint(x.point) >= 0);
    const face = caster.intersectObject(model.faces).find(seen);
    const line = model.lines.flatMap(l => caster.intersectObject(l).map(x => ({...x, j: l.userData.of[x.faceIndex]}))).filter(seen)
      .filter(x => !face || x.point.distanceTo(camera.position) < face.distance + Math.max(0.15, face.distance * 0.02))
      .sort((a, b) => caster.ray.distanceToPoint(a.pointOnLine ?? a.point) - caster.ray.distanceToPoint(b.pointOnLine ?? b.point))[0];
    return {j: line?.j, face: face && model.ranges.find(x => face.faceIndex * 3 >= x.from && face.faceIndex * 3 < x.to)?.id};
  }

  let pressed = null, mine = false;
  canvas.addEventListener('pointerdown', e => { pressed = [e.clientX, e.clientY]; flight++; });
  canvas.addEventListener('pointerup', e => {
    if (!pressed || Math.hypot(e.clientX - pressed[0], e.clientY - pressed[1]) > 4) return;
    const hit = pick(e);
    mine = true;
    set(hit.j ? {selected: hit.j.id} : {face: hit.face === state.face ? '' : hit.face ?? ''});
    queueMicrotask(() => queueMicrotask(() => { mine = false; }));
  });
  canvas.addEventListener('keydown', e => {
    const turn = {ArrowLeft: [-0.12, 0], ArrowRight: [0.12, 0], ArrowUp: [0, -0.1], ArrowDown: [0, 0.1]}[e.key];
    const o = camera.position.clone().sub(controls.target);
    if (turn) {
      const sph = new THREE.Spherical().setFromVector3(new THREE.Vector3(o.x, o.z, -o.y));
      sph.theta += turn[0]; sph.phi = Math.max(0.02, Math.min(3.05, sph.phi + turn[1]));
      const q = new THREE.Vector3().setFromSpherical(sph);
      o.set(q.x, -q.z, q.y);
    } else if (e.key === '+' || e.key === '=') o.multiplyScalar(0.8);
    else if (e.key === '-') o.multiplyScalar(1.25);
    else if (e.key === '0') { look(PRESETS[0][1]); e.preventDefault(); return; } else return;
    camera.position.copy(controls.target).add(o);
    controls.update();
    draw();
    e.preventDefault();
  });
  controls.addEventListener('change', draw);
  controls.addEventListener('start', () => { own = true; });

  // The same roof with other numbers stays in view as it is.
  watch(['ledger'], () => { if (state.ledger && root.isConnected) { if (model.of === state.analysis.id) { buildLines(); applyCut(); } else build(); draw(); } });
  watch(['filters', 'reviews'], () => { if (state.ledger && root.isConnected) { buildLines(); applyCut(); draw(); } });
  watch(['selected'], () => {
    if (!state.ledger || !root.isConnected) return;
    buildChosen();
    const j = state.ledger.byId.get(state.selected);
    if (j && !mine) flyTo(j);
    draw();
  });
  watch(['face'], () => { if (state.ledger && root.isConnected) { tint(); draw(); } });
  watch(['changes', 'tab'], () => { if (state.ledger && root.isConnected) { buildChanges(); draw(); } });
  watch(['units'], draw);
  watch(['theme'], () => { if (state.ledger && root.isConnected) { buildChosen(); draw(); } });
  addEventListener('beforeprint', () => root.isConnected && !root.hidden && printPicture(root, renderer, scene, camera));

  new ResizeObserver(() => {
    const w = root.clientWidth, hh = root.clientHeight;
    if (!w || !hh) return;
    renderer.setSize(w, hh, false);
    camera.aspect = w / hh;
    if (!own && !state.selected && model.faces) look(PRESETS[0][1], true);
    draw();
  }).observe(root);
  renderer.setSize(Math.max(1, root.clientWidth), Math.max(1, root.clientHeight), false);
  camera.aspect = Math.max(1, root.clientWidth) / Math.max(1, root.clientHeight);
  build();
  if (state.selected && state.ledger.byId.has(state.selected)) flyTo(state.ledger.byId.get(state.selected));
  draw();
}

/** The largest first: where two names would lie over each other, the larger face keeps its own. */
const byArea = L => L.byArea ??= [...L.faces.values()].sort((a, b) => b.areaM2 - a.areaM2);

const css = name => getComputedStyle(document.documentElement).getPropertyValue(name).trim();

function facesMesh(L, local, model) {
  const at = [];
  model.ranges = [];
  for (const f of L.faces.values()) {
    const from = at.length / 3;
    for (const rings of f.facets) for (const p of triangles(rings)) { const q = local(p); at.push(q[0], q[1], q[2]); }
    model.ranges.push({id: f.id, from, to: at.length / 3});
  }
  const g = new THREE.BufferGeometry();
  g.setAttribute('position', new THREE.Float32BufferAttribute(at, 3));
  g.setAttribute('color', new THREE.Float32BufferAttribute(new Float32Array(at.length).fill(1), 3));
  g.computeVertexNormals();
  return new THREE.Mesh(g, new THREE.MeshLambertMaterial({vertexColors: true, side: THREE.DoubleSide, polygonOffset: true, polygonOffsetFactor: 1.5, polygonOffsetUnits: 2}));
}

/** A facet as triangles: seen from above, where every roof face is a simple outline; each outside ring takes the holes that lie in it. */
function triangles(rings) {
  const turn = r => r.reduce((t, p, i) => { const q = r[(i + 1) % r.length]; return t + p[0] * q[1] - q[0] * p[1]; }, 0);
  const outer = rings.filter(r => turn(r) > 0), holes = rings.filter(r => turn(r) <= 0), out = [];
  for (const o of outer.length ? outer : rings) {
    const mine = outer.length ? holes.filter(x => outer.length === 1 || within(o, x[0])) : [];
    const flat = [...o, ...mine.flat()];
    const v2 = r => r.map(p => new THREE.Vector2(p[0], p[1]));
    for (const t of THREE.ShapeUtils.triangulateShape(v2(o), mine.map(v2))) t.forEach(i => out.push(flat[i]));
  }
  return out;
}

function within(r, p) {
  let odd = false;
  for (let i = 0, k = r.length - 1; i < r.length; k = i++) {
    if ((r[i][1] > p[1]) !== (r[k][1] > p[1]) && p[0] < (r[k][0] - r[i][0]) * (p[1] - r[i][1]) / (r[k][1] - r[i][1]) + r[i][0]) odd = !odd;
  }
  return odd;
}

/** What stands up from the roof along a line, as high as it was measured. */
function wallsMesh(L, local) {
  const at = [];
  for (const j of L.junctions) {
    const up = Math.min(j.facts?.upstandM ?? 0, MOST_UPSTAND_M);
    if (!(up > 0)) continue;
    for (let i = 1; i < j.path.length; i++) {
      const a = local(j.path[i - 1]), b = local(j.path[i]), a2 = [a[0], a[1], a[2] + up], b2 = [b[0], b[1], b[2] + up];
      for (const p of [a, b, b2, a, b2, a2]) at.push(p[0], p[1], p[2]);
    }
  }
  const g = new THREE.BufferGeometry();
  g.setAttribute('position', new THREE.Float32BufferAttribute(at, 3));
  g.computeVertexNormals();
  return new THREE.Mesh(g, new THREE.MeshLambertMaterial({color: 0xb9a48c, side: THREE.DoubleSide, transparent: true, opacity: 0.5, depthWrite: false}));
}

function lineSet(t, mark, planes) {
  const g = new LineSegmentsGeometry();
  g.setPositions(t.at);
  const m = new LineMaterial({color: new THREE.Color(mark.colour), linewidth: mark.width, dashed: !!mark.dash, dashSize: mark.dash?.[0] ?? 1, gapSize: mark.dash?.[1] ?? 0, clipping: true, clippingPlanes: planes});
  const o = new LineSegments2(g, m);
  if (mark.dash) o.computeLineDistances();
  o.userData.of = t.of;
  return o;
}

/** Six limits, as sliders; what lies outside is not drawn and not picked. */
function sectionBox(onChange) {
  const names = ['West', 'East', 'South', 'North', 'Bottom', 'Top'];
  const inputs = names.map((n, i) => h('input', {type: 'range', min: 0, max: 100, step: 0.5, value: i % 2 ? 100 : 0, 'aria-label': `Section box, ${n.toLowerCase()} side`, on: {input: onChange}}));
  let range = {lo: [0, 0, 0], hi: [1, 1, 1]};
  const root = h('div', {class: 'section-box', hidden: true}, names.map((n, i) => h('label', {}, h('span', {}, n), inputs[i])),
    h('button', {on: {click: () => { inputs.forEach((x, i) => { x.value = i % 2 ? 100 : 0; }); onChange(); }}}, 'Whole'));
  const planes = origin => inputs.flatMap((x, i) => {
    const t = Number(x.value) / 100, axis = Math.floor(i / 2), upper = i % 2 === 1;
    if (upper ? t >= 1 : t <= 0) return [];
    const at = range.lo[axis] + (range.hi[axis] - range.lo[axis]) * t - origin[axis];
    const n = new THREE.Vector3().setComponent(axis, upper ? -1 : 1);
    return [new THREE.Plane(n, upper ? at : -at)];
  });
  return {root, planes, setRange: (lo, hi) => { range = {lo, hi: hi.map((x, i) => i === 2 ? x + 0.01 : x)}; }};
}

/** Paper gets the picture as an image, because a canvas that is not being drawn prints empty. */
function printPicture(root, renderer, scene, camera) {
  renderer.render(scene, camera);
  const img = h('img', {class: 'print-only', alt: 'The roof in 3-D', src: renderer.domElement.toDataURL('image/png')});
  root.append(img);
  addEventListener('afterprint', () => img.remove(), {once: true});
}
