// A result, indexed for looking at: what each junction requires, who refers to whom, where everything lies.

import {metres} from '../units.js';
import {box} from './geometry.js';
import {sealClass, takeKinds} from './marks.js';

const sum = (list, f) => (list ?? []).reduce((t, x) => t + (f(x) ?? 0), 0);
const ofForm = (j, form) => sum((j.seals ?? []).filter(x => x.form === form), x => x.lengthM);

/**
 * Indexes the outline that the service sent.
 * @param {object} raw
 * @returns {import('../types.js').Outline}
 */
export function index(raw) {
  takeKinds(raw.kinds && [...raw.kinds, ...raw.jointKinds ?? []], raw.junctions);
  const faces = new Map((raw.roofFaces ?? []).map(f => [f.id, face(f)]));
  const findings = (raw.findings ?? []).map((f, place) => ({...f, place}));
  const findingsOf = new Map();
  for (const f of findings) for (const id of junctionsOf(f)) findingsOf.set(id, [...findingsOf.get(id) ?? [], f]);
  const junctions = (raw.junctions ?? []).map((j, place) => junction(j, place, faces, findingsOf));
  const joints = (raw.joints ?? []).map((j, i) => ({...junction(j, junctions.length + i, faces, findingsOf), isJoint: true}));
  const lines = [...junctions, ...joints];
  return {
    raw, faces, findings, junctions, lines,
    whole: new Map(),
    nodes: nodesOf(raw, findingsOf),
    nodeKinds: new Map((raw.nodeKinds ?? []).map(k => [k.id, k])),
    byId: new Map(lines.map(j => [j.id, j])),
    details: new Map((raw.details ?? []).map(d => [d.id, d])),
    choices: new Map((raw.detailChoices ?? raw.details ?? []).map(d => [d.id, d.title])),
    elements: new Map((raw.elements ?? []).map(e => [e.globalId, e])),
    box: box(faces, junctions),
    totalM: sum(junctions, j => j.lengthM),
    coverageM: metres(raw.system?.panel?.coverage) ?? 0.4064,
    seamM: metres(raw.system?.panel?.seamHeight) ?? 0.0381,
  };
}

/** Where lines meet; results of earlier versions have none. */
function nodesOf(raw, findingsOf) {
  return new Map((raw.nodes ?? []).map(n => [n.id, {...n, found: findingsOf.get(n.id) ?? []}]));
}

function junction(j, place, faces, findingsOf) {
  const slopes = j.faces.map(id => faces.get(id)?.slopeDegrees).filter(Number.isFinite);
  return {
    ...j, place,
    seal: sealClass(j),
    slope: slopes.length ? Math.min(...slopes) : NaN,
    tapeM: ofForm(j, 'tape'), beadM: ofForm(j, 'bead'), inSeamM: ofForm(j, 'in-seam'),
    screws: j.fasteners,
    found: findingsOf.get(j.id) ?? [],
  };
}

/** A face with its outlines: facets, each a list of rings, outsides counter-clockwise seen from above, holes clockwise. */
function face(f) {
  return {...f, facets: (f.facets ?? []).map(rings => rings.map(r => r.map(p => [p[0], p[1], p[2]])))};
}

/** All lines that a finding is about; results of earlier versions name one. */
export const junctionsOf = f => f.junctions ?? (f.junction ? [f.junction] : []);

/** File of the model that an element is in, where there are several models. */
export const modelOf = (ledger, element) =>
  element && (ledger.raw.models ?? []).length > 1 ? ledger.raw.models[element.model]?.file ?? '' : '';

/** Lines that a comparison is about, by what happened to them. */
export const changedPaths = c => ({
  gone: c.removed.map(l => l.path), changed: c.changed.map(p => p.after.path), added: c.added.map(l => l.path)});

/** Kind and detail applied: the rules', or a manual override. */
export const kindOf = j => j.kind;
export const detailOf = j => j.detail || '';

/** Kind and detail by the rules, also where they are overridden. */
export const byRules = j => j.decided?.byRules ?? {kind: j.kind, detail: j.detail};

export const reviewOf = (j, reviews) => reviews.get(j.id)?.state ?? 'open';

/** A detail's title; the words where there is none. */
export const titleOf = (ledger, id) =>
  !id || id === 'none' ? 'none' : ledger.details.get(id)?.title ?? ledger.choices.get(id) ?? id;

/** Details to choose from: all that the rules know, and none. */
export const detailOptions = ledger =>
  [...[...ledger.choices].sort((a, b) => a[1].localeCompare(b[1], 'en')), ['none', 'None: not part of this job']];
