package org.seamledger.roof;

import java.util.List;

/**
 * Where the upward area of one roof element went, square metres of true area. The parts add up to {@code upwardM2}.
 *
 * @param globalId of the element
 * @param upwardM2 what of the element's surface looks up, openings not taken away; what is steeper than a roof may be doesn't
 * @param inFacesM2 what is in faces of the roof
 * @param coveredM2 what other elements stand on, or another part of its own body
 * @param coveredBy GlobalIds of these, the element's own among them where its body has parts that cover each other; sorted
 * @param innerLayerM2 what lies under another layer of the roof
 * @param enclosedM2 what other roof surface higher up hides inside the building
 * @param voidM2 what openings take away
 * @param cutEdgeM2 the ends and reveals of slabs
 * @param tooSmallM2 strips that a fold or a joint leaves over, and specks
 * @param lostM2 what has no reason
 * @param readable whether all of the element's shape could be read
 */
public record ElementCoverage(String globalId, double upwardM2, double inFacesM2, double coveredM2, List<String> coveredBy,
    double innerLayerM2, double enclosedM2, double voidM2, double cutEdgeM2, double tooSmallM2, double lostM2, boolean readable) {

  public ElementCoverage {
    coveredBy = List.copyOf(coveredBy);
  }
}
