package org.seamledger.quantity;

import org.seamledger.quantity.layout.Panel;

/**
 * Equal panels of one face.
 *
 * @param panel one of them; its pan number is the first's
 */
public record PanelCut(String face, int count, Panel panel) {
}
