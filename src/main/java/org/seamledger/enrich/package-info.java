/**
 * Writes a copy of a model that carries the takeoff's answers: property sets at the roof's elements, and each junction and node as an
 * assembly of the parts that its detail is made of. The model's own bytes stay as they are; ours stand at the end of its data section.
 */
package org.seamledger.enrich;
