package org.seamledger.node;

import org.seamledger.detail.Seal;

/**
 * A sealant at a node.
 *
 * @param of id of the part that it belongs to
 * @param lengthM of one line at one piece of that part
 * @param size the roof system's size of bead, as details name it; empty for tape and for what fills a seam
 */
public record NodeSeal(Seal.Form form, Seal.Role role, Seal.Exposure exposure, String place, String id, String of, int lines,
    double lengthM, String size) {
}
