package org.seamledger.ids.check;

import java.util.List;
import org.seamledger.ids.Specification;

/**
 * What models say to a specification.
 *
 * @param applicable how many elements it applies to
 * @param reason why it fails as a whole, where no single element is to blame; else empty
 * @param elements those that fail, by model, class and place in the file
 */
public record SpecificationResult(Specification specification, boolean passes, long applicable, String reason,
    List<FailedElement> elements) {

  public SpecificationResult {
    elements = List.copyOf(elements);
  }
}
