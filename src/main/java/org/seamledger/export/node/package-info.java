/**
 * Where lines meet, as SVG: plan and oblique view of the folded pieces in the order in which they are fitted, on the model's own faces
 * and lines. What is drawn is made from the same content as what is counted; every piece, seal and fastener carries the id of its part.
 */
package org.seamledger.export.node;
