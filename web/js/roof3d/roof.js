// The roof in 3-D: faces, what stands up from them as far as it was measured, junction lines by what seals them. Draws only on change.

import {h, put, s} from '../dom.js';
import {set, state, watch} from '../state.js';
import {viewCut} from './cut.js';
import {Flight, WHOLE} from './flight.js';
import {drawLabels} from './labels.js';
import {Model} from './model.js';
import {pick} from './picking.js';
import {Stage} from './stage.js';

/** Top and sides are looked at along parallel lines, as an architect draws them. */
const PRESETS = [['Fit', WHOLE], ['Top', [0, -0.001, 1]], ['South', [0, -1, 0]], ['East', [1, 0, 0]], ['North', [0, 1, 0]],
  ['West', [-1, 0, 0]]];
const STILL_PX = 4, TOOLS_GAP_PX = 8;

/** Draws the roof in an element, and keeps it in step with the state. */
export function mountRoof(root) {
  const roof = new Roof(root);
  const onChange = (names, fn) => watch(names, () => {
    if (!state.ledger || !root.isConnected) return;
    fn();
    roof.draw();
  });
  onChange(['ledger'], () => roof.take());
  onChange(['filters', 'reviews'], () => roof.drawLines());
  onChange(['selected', 'places'], () => roof.choose());
  onChange(['face'], () => roof.model.tint());
  onChange(['changes', 'tab'], () => roof.model.buildChanges());
  onChange(['nodes', 'nodeKind'], () => roof.model.buildNodes());
  onChange(['water', 'movement', 'nodes'], () => roof.showLayers());
  onChange(['units'], () => {});
  onChange(['theme'], () => { roof.model.buildLines(); roof.model.buildChosen(); roof.model.buildLayers(); roof.model.dress(); });
  roof.listen();
  addEventListener('beforeprint', () => root.isConnected && !root.hidden && roof.printPicture());
  roof.begin();
}

class Roof {
  constructor(root) {
    this.root = root;
    this.stage = new Stage();
    this.model = new Model(this.stage);
    this.flight = new Flight(this.stage, this.model, () => this.draw());
    this.labels = h('div', {class: 'labels', 'aria-hidden': 'true'});
    this.north = s('g', {}, s('path', {d: 'M0 -13 5 6 0 3 -5 6Z'}), s('text', {y: 15, 'text-anchor': 'middle', 'font-size': 9}, 'N'));
    this.cut = viewCut(() => {
      this.applyCut();
      this.draw();
    });
    this.model.onAround = () => {
      if (!this.isMoved && !state.selected) this.flight.look(WHOLE, {isAtOnce: true, isParallel: false});
      this.draw();
    };
    /** Whether the user moved the camera, and whether what is chosen was picked here. */
    Object.assign(this, {isMoved: false, isPicked: false, isAsked: false});
    put(root, this.stage.canvas, this.labels, s('svg', {class: 'north', viewBox: '-12 -16 24 32', 'aria-hidden': 'true'}, this.north),
      this.tools = h('div', {class: 'drawing-tools', role: 'group', 'aria-label': '3-D view'},
        PRESETS.map(([name, dir], i) => h('button', {class: i > 1 ? 'side-view' : '', on: {click: () => this.goTo(dir, i > 0)}}, name)),
        this.cut.button, this.layerButtons()),
      this.cut.root);
  }

  /** The layers that the plan has buttons for, where it isn't beside. */
  layerButtons() {
    const button = (text, name, on, off) => h('button', {class: 'layer', data: {layer: name},
      on: {click: () => set({[name]: state[name] ? off : on})}}, text);
    this.layers = [button('Nodes', 'nodes', true, false), button('Water', 'water', 'on', ''), button('Movement', 'movement', 'on', '')];
    this.markLayers();
    return this.layers;
  }

  markLayers() {
    this.layers.forEach(b => b.setAttribute('aria-pressed', String(Boolean(state[b.dataset.layer]))));
  }

  showLayers() {
    this.model.buildLayers();
    this.markLayers();
  }

  begin() {
    const {root, stage} = this;
    stage.resize(Math.max(1, root.clientWidth), Math.max(1, root.clientHeight));
    this.build();
    this.goToChosen();
    this.draw();
    new ResizeObserver(() => this.resize()).observe(root);
  }

  build() {
    const {lo, hi} = state.ledger.box;
    this.model.build();
    this.cut.setRange(lo, hi);
    this.applyCut();
    this.flight.look(WHOLE, {isAtOnce: true, isParallel: false});
  }

  /** Takes another result; the same roof with other numbers stays in view as it is. */
  take() {
    if (this.model.of === state.analysis.id) this.drawLines(); else this.build();
  }

  drawLines() {
    this.model.buildLines();
    this.applyCut();
  }

  applyCut() {
    this.model.cutBy(this.cut.planes(this.model.origin));
  }

  choose() {
    this.model.buildChosen();
    if (!this.isPicked) this.goToChosen();
  }

  goTo(dir, isParallel) {
    this.isMoved = true;
    this.flight.look(dir, {isParallel});
  }

  /** Goes to the chosen junction or node, or the places of a finding. */
  goToChosen() {
    const {byId, nodes} = state.ledger, ids = state.selected ? [state.selected] : state.places?.ids ?? [];
    const places = ids.flatMap(id => byId.get(id)?.path ?? (nodes.has(id) ? [nodes.get(id).at] : []));
    if (places.length) this.flight.goTo(places);
  }

  resize() {
    const {root} = this, wide = root.clientWidth, high = root.clientHeight;
    if (!wide || !high || !state.ledger) return;
    this.stage.resize(wide, high);
    this.stage.covered = this.tools.offsetHeight + TOOLS_GAP_PX;
    if (!this.isMoved && !state.selected) this.flight.look(WHOLE, {isAtOnce: true, isParallel: false});
    else if (!this.isMoved) this.goToChosen();
    this.draw();
  }

  draw() {
    if (this.isAsked) return;
    this.isAsked = true;
    requestAnimationFrame(() => {
      this.isAsked = false;
      const {root, stage, model} = this;
      if (root.hidden || !root.isConnected || !state.ledger) return;
      model.scaleDashes(stage.pxPerM());
      stage.render(model.radius);
      drawLabels(this.labels, stage, model.local);
      this.north.setAttribute('transform', `rotate(${stage.heading()})`);
      root.dataset.drawn = String(Number(root.dataset.drawn ?? 0) + 1);
    });
  }

  listen() {
    const {canvas, controls} = this.stage;
    let pressed = null;
    canvas.addEventListener('pointerdown', e => {
      pressed = [e.clientX, e.clientY];
      this.flight.stop();
    });
    canvas.addEventListener('pointerup', e => {
      if (pressed && Math.hypot(e.clientX - pressed[0], e.clientY - pressed[1]) <= STILL_PX) this.pickAt(e);
    });
    canvas.addEventListener('keydown', e => {
      if (this.flight.press(e.key)) e.preventDefault();
    });
    controls.addEventListener('change', () => this.draw());
    controls.addEventListener('start', () => { this.isMoved = true; });
  }

  pickAt(e) {
    const hit = pick(e, this.stage, this.model);
    this.isPicked = true;
    set(hit.j ? {selected: hit.j.id} : {face: hit.face === state.face ? '' : hit.face ?? ''});
    // Until the state has told of it: the camera stays where it is.
    queueMicrotask(() => queueMicrotask(() => { this.isPicked = false; }));
  }

  /** Paper gets the picture as an image, because a canvas that is not being drawn prints empty. */
  printPicture() {
    const {renderer, scene, camera, canvas} = this.stage;
    renderer.render(scene, camera);
    const img = h('img', {class: 'print-only', alt: 'The roof in 3-D', src: canvas.toDataURL('image/png')});
    this.root.append(img);
    addEventListener('afterprint', () => img.remove(), {once: true});
  }
}
