package org.seamledger.queue;

import java.nio.file.Path;
import org.seamledger.ledger.Store;
import org.seamledger.run.Analyzer;
import org.seamledger.run.Result;
import org.seamledger.watch.Download;
import org.seamledger.watch.Health;
import org.seamledger.watch.Servers;

/**
 * What a worker works with.
 *
 * @param store one that is shared
 * @param scratch folder for what is being written
 * @param servers the servers that models may be fetched from
 * @param halt ends the process at once, where an analysis can't be ended otherwise
 */
public record WorkerSetting(Store store, Analyzer<Result> analyzer, Path scratch, Servers servers, Download download, Health health,
    WorkerLimits limits, Runnable halt) {
}
