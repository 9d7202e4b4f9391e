/**
 * Elements: which of a model's products are roofs and which may meet one, what belongs to them (openings, types, properties, parts), and
 * the shape that represents each.
 */
package org.seamledger.ifc.product;
