package org.seamledger.source;

import java.util.List;

/** A BIMserver, asked through its client library. */
final class BimServer implements ModelServer {

  static ModelServer login(ServerAccess access) {
    throw new ModelServerException(ModelServerException.Reason.UNREACHABLE, access + " can't be asked yet");
  }

  private BimServer() {
  }

  @Override
  public List<ServedProject> projects() {
    return List.of();
  }

  @Override
  public List<ServedRevision> revisions(long project) {
    return List.of();
  }

  @Override
  public ModelSource model(ServedRevision revision) {
    return null;
  }

  @Override
  public void attach(ServedRevision revision, Attachment document) {
  }

  @Override
  public List<Attachment> attachments(ServedRevision revision) {
    return List.of();
  }

  @Override
  public void close() {
  }
}
