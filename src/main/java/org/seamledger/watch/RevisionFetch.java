package org.seamledger.watch;

import java.util.List;
import org.seamledger.finding.UnreadableModelException;
import org.seamledger.ledger.Analyses;
import org.seamledger.ledger.Origin;
import org.seamledger.ledger.State;
import org.seamledger.ledger.Store;
import org.seamledger.ledger.StoredAnalysis;
import org.seamledger.ledger.StoredFile;
import org.seamledger.ledger.Watches;
import org.seamledger.run.Failure;
import org.seamledger.source.ModelServer;
import org.seamledger.source.ModelServerException.Reason;
import org.seamledger.source.ModelServerException;

/** The model of a revision, brought here with an analysis noted for it. */
final class RevisionFetch {

  /** A model that its server can't deliver is asked for so often. */
  static final int MOST_DOWNLOADS = 3;

  private final ServerTalk talk;
  private final Store store;
  private final Watches watches;
  private final Download download;

  RevisionFetch(ServerTalk talk) {
    this.talk = talk;
    this.store = talk.setting().store();
    this.watches = store.watches();
    this.download = talk.setting().download();
  }

  /** Downloads a revision's model and notes its analysis. A model that can't be read is an analysis that failed. */
  StoredAnalysis fetch(Origin origin) throws InterruptedException {
    String id = Analyses.newId();
    try (ModelServer s = talk.connect()) {
      StoredFile file = download.fetch(s, id, origin);
      talk.tell("downloaded", origin, file.bytes() + " bytes");
      return watches.begin(id, origin, List.of(file));
    } catch (UnreadableModelException e) {
      return failed(id, origin, Failure.of(e));
    } catch (ModelServerException e) {
      download.forget(id);
      boolean hopeless = e.reason() == Reason.UNUSABLE && watches.attempted(origin, e.getMessage()) >= MOST_DOWNLOADS;
      if (!hopeless) {
        throw e;
      }
      return failed(id, origin, Failure.of(e));
    } catch (RuntimeException | Error e) {
      download.forget(id);
      throw e;
    }
  }

  /** An analysis may be noted and its model gone: where storage failed just when it was noted, or somebody removed the file. */
  void fetchAgain(StoredAnalysis analysis, Origin origin) throws InterruptedException {
    if (!store.has(analysis.files().get(0))) {
      try (ModelServer s = talk.connect()) {
        watches.arrived(analysis.id(), download.fetch(s, analysis.id(), origin));
      } catch (UnreadableModelException e) {
        end(analysis.id(), Failure.of(e));
      }
    }
  }

  private StoredAnalysis failed(String id, Origin origin, Failure failure) {
    download.forget(id);
    watches.begin(id, origin, List.of(download.file(id, origin)));
    end(id, failure);
    return store.analyses().get(id);
  }

  private void end(String id, Failure failure) {
    store.analyses().end(id, State.FAILED, failure.code(), failure.text());
  }
}
