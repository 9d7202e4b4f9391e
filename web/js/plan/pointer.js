// Pointer and keys on the plan: one finger drags, two pinch, a click picks.

import {h, put} from '../dom.js';
import {set, state} from '../state.js';
import {kindText} from '../ledger/marks.js';
import {kindOf} from '../ledger/result.js';
import {length} from '../units.js';
import {pick} from './picking.js';

const STILL_PX = 6;

/**
 * @param {import('./plan.js').Plan} plan
 * @returns {Element} the words beside the pointer
 */
export function listen(plan) {
  const {svg} = plan, tip = h('div', {class: 'tip', hidden: true});
  const pointers = new Pointers(plan, tip);
  svg.addEventListener('pointerdown', e => pointers.down(e));
  svg.addEventListener('pointermove', e => pointers.move(e));
  svg.addEventListener('pointerup', e => pointers.up(e));
  svg.addEventListener('pointercancel', e => pointers.up(e));
  svg.addEventListener('pointerleave', () => { tip.hidden = true; });
  svg.addEventListener('wheel', e => {
    e.preventDefault();
    plan.zoom(Math.exp(e.deltaY * 0.0012), pixelOf(svg, e));
  }, {passive: false});
  svg.addEventListener('keydown', e => {
    if (press(plan, e.key)) e.preventDefault();
  });
  return tip;
}

function pixelOf(svg, e) {
  const r = svg.getBoundingClientRect();
  return [e.clientX - r.left, e.clientY - r.top];
}

class Pointers {
  constructor(plan, tip) {
    Object.assign(this, {plan, tip, at: new Map(), moved: 0, spread: 0, asked: 0});
  }

  down(e) {
    this.plan.svg.setPointerCapture(e.pointerId);
    this.at.set(e.pointerId, pixelOf(this.plan.svg, e));
    this.moved = 0;
    this.spread = 0;
  }

  move(e) {
    const {plan, at} = this, {camera} = plan, p = pixelOf(plan.svg, e), from = at.get(e.pointerId);
    if (!from) return this.hover(p);
    if (at.size === 1) camera.move((from[0] - p[0]) * camera.perPx, (p[1] - from[1]) * camera.perPx);
    this.moved += Math.abs(p[0] - from[0]) + Math.abs(p[1] - from[1]);
    at.set(e.pointerId, p);
    if (at.size === 2) this.pinch();
    plan.look();
  }

  pinch() {
    const [a, b] = [...this.at.values()], d = Math.hypot(a[0] - b[0], a[1] - b[1]);
    if (this.spread) this.plan.zoom(this.spread / d, [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]);
    this.spread = d;
  }

  up(e) {
    if (!this.at.delete(e.pointerId) || e.type !== 'pointerup' || this.moved >= STILL_PX || this.at.size) return;
    const hit = pick(this.plan.camera, pixelOf(this.plan.svg, e));
    const found = hit.node ?? hit.j;
    const [x, y] = this.plan.camera.toWorld(pixelOf(this.plan.svg, e));
    this.plan.isPicked = true;
    // Until the state has told of it: the plan stays where it is.
    queueMicrotask(() => queueMicrotask(() => { this.plan.isPicked = false; }));
    if (state.water) return set(found ? {selected: found.id, spot: ''} : {spot: `${x.toFixed(2)},${y.toFixed(2)}`});
    set(found ? {selected: found.id} : {face: hit.face?.id === state.face ? '' : hit.face?.id ?? ''});
  }

  hover(p) {
    cancelAnimationFrame(this.asked);
    this.asked = requestAnimationFrame(() => {
      if (!state.ledger) return;
      const {node, j} = pick(this.plan.camera, p), {tip} = this;
      this.plan.svg.style.cursor = node || j ? 'pointer' : '';
      tip.hidden = !node && !j;
      if (tip.hidden) return;
      put(tip, node ? state.ledger.nodeKinds.get(node.kind)?.label ?? node.kind : `${kindText(kindOf(j))} · ${length(j.lengthM)}`);
      tip.style.left = p[0] + 14 + 'px';
      tip.style.top = p[1] + 10 + 'px';
    });
  }
}

/** Does what a key means; whether it means anything. */
function press(plan, key) {
  const {camera} = plan, step = camera.size().w * camera.perPx * 0.1;
  const move = {ArrowLeft: [-step, 0], ArrowRight: [step, 0], ArrowUp: [0, step], ArrowDown: [0, -step]}[key];
  if (move) {
    camera.move(...move);
    plan.look();
  } else if (key === '+' || key === '=') plan.zoom(0.7);
  else if (key === '-') plan.zoom(1 / 0.7);
  else if (key === '0') plan.fit();
  else return false;
  return true;
}
