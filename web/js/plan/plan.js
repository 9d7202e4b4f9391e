// The roof plan, to scale: faces, seams, fall arrows, junction lines, labels.

import {h, put, s} from '../dom.js';
import {set, state, watch} from '../state.js';
import {planAt} from '../api.js';
import {Camera} from './camera.js';
import {drawLabels} from './labels.js';
import {LAYERS, drawChanges, drawChosen, drawFaces, drawLines, drawNodes, drawSite} from './layers.js';
import {drawMovement, movementButton, needPanels} from './movement.js';
import {listen} from './pointer.js';
import {DENSE_M_PER_PX, SeamLayer} from './seams.js';
import {drawWater} from './water.js';
import {drawScale, northMark, onPaper} from './sheet.js';

const DENSE_JUNCTIONS = 3000, FAR_M_PER_PX = 0.05;

/** Draws the plan in an element, and keeps it in step with the state. */
export function mountPlan(root) {
  const plan = new Plan(root);
  const onChange = (names, fn) => watch(names, changed => state.ledger && root.isConnected && fn(changed));
  onChange(['ledger'], () => plan.take());
  onChange(['filters', 'reviews'], () => drawLines(plan.layers));
  onChange(['selected', 'face', 'places'], changed => plan.choose(changed.has('selected') || changed.has('places')));
  onChange(['units'], () => (plan.linkSheets(), plan.look()));
  onChange(['water', 'spot', 'selected'], () => plan.showWater());
  onChange(['movement'], () => plan.look());
  onChange(['changes', 'tab'], () => drawChanges(plan.layers));
  onChange(['site', 'tab'], () => drawSite(plan.layers));
  onChange(['nodes', 'nodeKind'], () => plan.showNodes());
  plan.draw();
  onPaper(root, plan.svg, plan.scale, () => plan.look());
  plan.fitToRoom();
}

export class Plan {
  constructor(root) {
    this.root = root;
    this.layers = Object.fromEntries(LAYERS.map(n => [n, s('g', {class: n})]));
    this.svg = s('svg', {class: 'sheet', role: 'img', 'aria-label': 'Roof plan', tabindex: 0}, LAYERS.map(n => this.layers[n]));
    this.camera = new Camera(this.svg);
    this.seams = new SeamLayer(this.layers.seams);
    this.scale = h('div', {class: 'scale'});
    this.fittedFor = state.analysis?.id;
    /** Whether a picture is asked for, and whether what is chosen was picked here. */
    Object.assign(this, {isAsked: false, isPicked: false});
    put(root, this.svg, northMark(), this.scale, listen(this), this.tools());
  }

  tools() {
    const button = (text, click, props) => h('button', {...props, on: {click}}, text);
    this.nodes = button('Nodes', () => set({nodes: !state.nodes}), {'aria-pressed': 'true', title: 'Points where lines end and meet'});
    return h('div', {class: 'drawing-tools', role: 'group', 'aria-label': 'Plan'},
      button('+', () => this.zoom(0.7), {'aria-label': 'Zoom in'}), button('−', () => this.zoom(1 / 0.7), {'aria-label': 'Zoom out'}),
      button('Fit', () => this.fit()), this.nodes, this.waterButton = button('Water', () => set({water: state.water ? '' : 'on'}),
        {title: 'Where the water goes; pick a point or a line to see its catchment'}), movementButton(),
      h('a', {class: 'button', href: planAt(state.analysis.id, state.units), target: '_blank', rel: 'noopener',
        title: 'The plan on sheets to print, to scale'}, 'Sheets'));
  }

  fit() {
    if (!state.ledger) return;
    this.camera.fit(state.ledger.box);
    this.look();
  }

  zoom(factor, at) {
    this.camera.zoom(factor, at);
    this.look();
  }

  /** Shows what the camera looks at, with the next frame. */
  look() {
    if (this.isAsked) return;
    this.isAsked = true;
    requestAnimationFrame(() => {
      this.isAsked = false;
      if (!state.ledger || !this.root.isConnected) return;
      const {camera, svg} = this;
      camera.apply();
      // Where lines are hardly longer than a dash, dashes say nothing and take the longest to draw.
      svg.classList.toggle('dense', state.ledger.junctions.length > DENSE_JUNCTIONS && camera.perPx > DENSE_M_PER_PX);
      svg.classList.toggle('far', camera.perPx > FAR_M_PER_PX);
      this.seams.draw(camera);
      needPanels(() => this.look());
      drawMovement(this.layers.movement, camera);
      drawLabels(this.layers.labels, camera);
      drawScale(this.scale, camera.perPx);
    });
  }

  showNodes() {
    drawNodes(this.layers);
    this.nodes.setAttribute('aria-pressed', String(state.nodes));
  }

  draw() {
    this.seams.forget();
    drawFaces(this.layers);
    drawLines(this.layers);
    drawChanges(this.layers);
    drawSite(this.layers);
    this.showNodes();
    drawChosen(this.layers);
    this.showWater();
  }

  showWater() {
    drawWater(this.layers);
    this.svg.classList.toggle('wet', Boolean(state.water));
    this.waterButton.setAttribute('aria-pressed', String(Boolean(state.water)));
  }

  linkSheets() {
    this.root.querySelector('a.button').href = planAt(state.analysis.id, state.units);
  }

  /** Takes another result; the same roof with other numbers stays where it is. */
  take() {
    this.draw();
    this.linkSheets();
    if (this.fittedFor !== state.analysis.id) this.fit(); else this.look();
    this.fittedFor = state.analysis.id;
  }

  /** Shows what is chosen, and goes to it, unless it was picked here. */
  choose(isAnother) {
    drawChosen(this.layers);
    if (isAnother && !this.isPicked) this.goToChosen();
    this.look();
  }

  /** Where the chosen junction, node or face lies, or the places of a finding; whether there is any. */
  goToChosen() {
    const {byId, nodes, box} = state.ledger, ids = state.selected ? [state.selected] : state.places?.ids ?? [];
    const face = ids.length ? [] : (state.ledger.faces.get(state.face)?.facets ?? []).flat(2);
    const points = [...ids.flatMap(id => byId.get(id)?.path ?? (nodes.has(id) ? [nodes.get(id).at] : [])), ...face];
    if (points.length) this.camera.goTo(points, box);
    return points.length > 0;
  }

  /** Fits the roof to the room, also when that becomes larger or smaller. */
  fitToRoom() {
    let fitted = '';
    new ResizeObserver(() => {
      const {w, h: high} = this.camera.size(), now = `${w}/${high}`;
      if (!state.ledger || this.root.hidden || !this.svg.clientWidth || fitted === now) return;
      fitted = now;
      if (this.goToChosen()) this.look(); else this.fit();
    }).observe(this.svg);
  }
}
