/**
 * Where lines end and meet: nodes with the kind that {@code shapes/nodes.ttl} gives them. Which lines a node joins is found by geometry
 * in {@link org.seamledger.junction.NodeFinder}; here the lines' kinds are known, and are counted as facts.
 */
package org.seamledger.node;
