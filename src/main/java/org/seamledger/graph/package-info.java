/**
 * A takeoff as a graph that other programs read and that can be asked. Junctions and nodes are interfaces of the Building Topology
 * Ontology, lines have GeoSPARQL's text, quantities QUDT's units, and where it all comes from is told in PROV-O; what these don't have is
 * in the project's own vocabulary, which {@code shapes/queries/vocabulary.ttl} describes. Queries are SPARQL 1.1 over this one graph:
 * nothing outside of it is ever reached.
 */
package org.seamledger.graph;
