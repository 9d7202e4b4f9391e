// Cutting the view: six limits, as sliders; what lies outside is not drawn and not picked.

import * as THREE from 'three';
import {h} from '../dom.js';

const SIDES = ['West', 'East', 'South', 'North', 'Bottom', 'Top'];

/**
 * @param {() => void} onChange
 * @returns {{root: Element, button: Element, planes: (origin: number[]) => THREE.Plane[], setRange: (lo: number[], hi: number[]) => void}}
 */
export function viewCut(onChange) {
  const inputs = SIDES.map((n, i) => h('input', {type: 'range', min: 0, max: 100, step: 0.5, value: i % 2 ? 100 : 0,
    'aria-label': `Cut the view, ${n.toLowerCase()} side`, on: {input: onChange}}));
  const reset = () => {
    inputs.forEach((x, i) => { x.value = i % 2 ? 100 : 0; });
    onChange();
  };
  const root = h('div', {class: 'view-cut', hidden: true}, SIDES.map((n, i) => h('label', {}, h('span', {}, n), inputs[i])),
    h('button', {on: {click: reset}}, 'Whole'));
  const toggle = () => {
    root.hidden = !root.hidden;
    button.setAttribute('aria-expanded', String(!root.hidden));
  };
  const button = h('button', {'aria-expanded': 'false', on: {click: toggle}}, 'Cut the view');
  let range = {lo: [0, 0, 0], hi: [1, 1, 1]};
  return {root, button,
    planes: origin => inputs.flatMap((x, i) => plane(Number(x.value) / 100, i, range, origin)),
    setRange: (lo, hi) => { range = {lo, hi: hi.map((x, i) => i === 2 ? x + 0.01 : x)}; }};
}

/** The plane of a slider, or none where it stands at its end. */
function plane(t, i, {lo, hi}, origin) {
  const axis = Math.floor(i / 2), isUpper = i % 2 === 1;
  if (isUpper ? t >= 1 : t <= 0) return [];
  const at = lo[axis] + (hi[axis] - lo[axis]) * t - origin[axis];
  return [new THREE.Plane(new THREE.Vector3().setComponent(axis, isUpper ? -1 : 1), isUpper ? at : -at)];
}
