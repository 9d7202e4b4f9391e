package org.seamledger.quantity;

import org.seamledger.detail.FixedLine;
import org.seamledger.quantity.layout.Panel;

/**
 * Equal panels of one face that are fixed at the same end.
 *
 * @param panel one of them; its pan number is the first's
 */
public record PanelCut(String face, int count, Panel panel, FixedLine fixed) {
}
