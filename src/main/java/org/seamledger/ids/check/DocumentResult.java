package org.seamledger.ids.check;

import java.util.List;
import org.seamledger.ids.IdsDocument;

/** What models say to an IDS file; of an invalid one no specification is checked. */
public record DocumentResult(IdsDocument document, List<SpecificationResult> specifications) {

  public DocumentResult {
    specifications = List.copyOf(specifications);
  }

  /** Whether the file is valid and every specification passes. */
  public boolean passes() {
    return document.valid() && specifications.stream().allMatch(SpecificationResult::passes);
  }
}
