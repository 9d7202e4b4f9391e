package org.seamledger.http;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.seamledger.finding.UnreadableModelException;
import org.seamledger.ledger.StoredAnalysis;
import org.seamledger.ledger.StoredFile;

/**
 * What an analysis reads.
 *
 * @param models that together are one building
 * @param system the roof system's file, where one was given
 */
record AnalysisFiles(List<Analyzer.Model> models, Optional<Path> system) {

  /**
   * The files of an analysis as it is stored.
   *
   * @throws UnreadableModelException where a model is no longer there: one of the command line stays where its owner keeps it
   */
  static AnalysisFiles of(StoredAnalysis analysis) {
    List<Analyzer.Model> models = analysis.files().stream().filter(f -> f.role().equals("model"))
        .map(f -> new Analyzer.Model(Path.of(f.path()), f.name(), f.placement())).toList();
    Optional<Path> system =
        analysis.files().stream().filter(f -> f.role().equals("system")).map(StoredFile::path).map(Path::of).findFirst();
    for (Analyzer.Model m : models) {
      if (!Files.isReadable(m.path())) {
        throw new UnreadableModelException(m.name(), 0, 0, "a file that can be read", "none: it was moved or removed");
      }
    }
    return new AnalysisFiles(models, system);
  }
}
