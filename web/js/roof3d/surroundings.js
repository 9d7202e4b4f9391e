// What stands near the roof: walls, chimneys, pipes, faint, with their edges, so that the roof sits on a building. Never picked.

import * as THREE from 'three';
import * as api from '../api.js';

/** Of so many triangles edges are sought; more would take seconds, and are too small to be told apart. */
const EDGE_DEGREES = 25, MOST_EDGED = 60_000, COORDINATES = 9;

/**
 * Fetches what stands near the roof; nothing where the service knows nothing of it.
 * @param {string} id of the analysis
 * @param {(p: number[]) => number[]} local takes a point of the world to the scene
 * @returns {Promise<THREE.Object3D[]>}
 */
export async function surroundings(id, local) {
  const {elements} = await api.surroundings(id).catch(() => ({elements: []}));
  const at = elements.flatMap(e => e.polygons.flatMap(p => triangles(p.map(local)))).flat();
  if (!at.length) return [];
  const g = new THREE.BufferGeometry();
  g.setAttribute('position', new THREE.Float32BufferAttribute(at, 3));
  g.computeVertexNormals();
  const body = new THREE.Mesh(g, new THREE.MeshStandardMaterial({side: THREE.DoubleSide, roughness: 0.95, transparent: true, opacity: 0.55,
    polygonOffset: true, polygonOffsetFactor: 3, polygonOffsetUnits: 4}));
  body.castShadow = true;
  body.receiveShadow = true;
  if (at.length > MOST_EDGED * COORDINATES) return [body];
  const edges = new THREE.LineSegments(new THREE.EdgesGeometry(g, EDGE_DEGREES),
    new THREE.LineBasicMaterial({transparent: true, opacity: 0.45}));
  return [body, edges];
}

/** A fan: bodies come as triangles, of which a plane may have cut a corner off. */
const triangles = p => p.slice(2).flatMap((q, i) => [p[0], p[i + 1], q]);
