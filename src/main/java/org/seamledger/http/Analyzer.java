package org.seamledger.http;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.seamledger.detail.Decision;

/** Turns models into a result. Called from several threads at once; must not keep anything between calls. */
@FunctionalInterface
public interface Analyzer {

  /**
   * Analyses models together as one building and writes the result, the JSON of the contract, as UTF-8.
   *
   * @param models files to read, with the names that people gave them
   * @param system the roof system to apply, or empty for the default one
   * @param decisions kinds and details that people chose, at most one a junction
   * @param progress told from time to time how far it is; throws where the analysis shall stop, and that exception must get through
   * @return the drawings and lists of this result; they may be kept long and asked for by several threads at once
   * @throws org.seamledger.finding.UnreadableModelException where a model can't be read
   */
  Drawings analyze(List<Model> models, Optional<Path> system, List<Decision> decisions, ProgressListener progress, OutputStream ledgerJson)
      throws IOException;

  /** The program's version. */
  default String version() {
    return "";
  }

  /** What identifies the rules as they are now; together with the version: another value means that stored results are out of date. */
  default String rules() {
    return "";
  }

  /** The drawings and lists of one result; the same result gives the same text. */
  interface Drawings {

    /** The roof plan, as SVG. */
    String plan();

    /** The section through a junction's detail, as SVG; empty where there is no junction of that id. */
    Optional<String> section(String junction);

    /** The shop's cut list, as comma-separated values. */
    String cutList();

    /** The report for people, plain text; empty where there is none. */
    default Optional<String> report() {
      return Optional.empty();
    }
  }

  /**
   * A model: where its bytes are, and the name that results shall show for it.
   *
   * @param placement movement that somebody asked for, {@code dx,dy,dz[,degrees[,factor]]}; empty where it lies as the models say
   */
  record Model(Path path, String name, Optional<String> placement) {

    Model(Path path, String name) {
      this(path, name, Optional.empty());
    }
  }

  /** Hears how far an analysis is. */
  @FunctionalInterface
  interface ProgressListener {

    /**
     * Called often, once for every face or line.
     *
     * @param stage what is being done, a few words for people
     * @param fraction 0 to 1 of the whole
     * @throws java.util.concurrent.CancellationException where the analysis shall stop
     */
    void progress(String stage, double fraction);
  }
}
