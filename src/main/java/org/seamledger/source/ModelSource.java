package org.seamledger.source;

import java.io.IOException;

/** A place that a model can be had from. */
public interface ModelSource {

  /** What people call the model, for messages. */
  String name();

  /**
   * Opens the model; the caller closes it.
   *
   * @throws org.seamledger.finding.UnreadableModelException where there is no model at that place
   */
  OpenModel open() throws IOException;
}
