package org.seamledger.source;

import java.io.IOException;

/** A revision's model, downloaded each time it is opened. Equal where it is the same revision of the same server. */
record ServedModel(BimServer server, ServedRevision revision, String name) implements ModelSource {

  @Override
  public OpenModel open() throws IOException {
    return server.download(revision, name);
  }
}
