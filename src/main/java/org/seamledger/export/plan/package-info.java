/**
 * What the plan of the junctions is made of: how each family of kinds is drawn, and where labels find room. In go lines in metres, out
 * come marks on paper in millimetres.
 */
package org.seamledger.export.plan;
