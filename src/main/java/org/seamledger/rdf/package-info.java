/**
 * Faces and junctions in, a graph out that rules can be run over and that other programs can read. The only vocabulary class is
 * {@link org.seamledger.rdf.Vocabulary}; terms of the Building Topology Ontology (a junction is a {@code bot:Interface} of the faces it
 * is an {@code bot:interfaceOf}) and of GeoSPARQL (its line) are used where they fit, the project's own for everything measured. After
 * {@code detail} nobody knows that a graph existed.
 */
package org.seamledger.rdf;
