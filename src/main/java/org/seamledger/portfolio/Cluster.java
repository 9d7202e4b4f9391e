package org.seamledger.portfolio;

import java.io.IOException;
import java.util.List;
import java.util.function.Consumer;

/** Machines that share a portfolio. */
public interface Cluster {

  /**
   * The models below a folder of a file system that the cluster knows, by their names.
   *
   * @throws IOException where it can't be read, with a message for people
   */
  List<PortfolioModel> models(String folder) throws IOException;

  /**
   * Runs until every model has its entry in the store.
   *
   * @param again whether models without a result are analysed again even where that would say the same
   * @param say a line about how far it is, now and then
   * @return number of models whose entry was there before
   * @throws org.seamledger.run.FailureException where rules or roof system can't be used
   */
  int run(List<PortfolioModel> models, ModelRun runner, EntryStore store, boolean again, Consumer<String> say)
      throws IOException, InterruptedException;

  /** Forms of tables that it writes besides comma-separated values. */
  List<TableFormat> formats();
}
