package org.seamledger.cli;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.seamledger.export.JsonLedger;
import org.seamledger.takeoff.Inputs;
import org.seamledger.takeoff.Program;

/** The analysis as the server asks for it. */
record ServedAnalysis(Analyzer analyzer, Optional<Path> shapes) implements org.seamledger.http.Analyzer {

  @Override
  public void analyze(List<Model> models, Optional<Path> system, ProgressListener progress, OutputStream ledgerJson) throws IOException {
    Inputs inputs = Inputs.ofNamedFiles(models.stream().map(m -> new Inputs.NamedFile(m.path(), m.name())).toList())
        .withSystem(system).withShapes(shapes);
    JsonLedger.write(analyzer.analyze(inputs, stage -> progress.progress(stage.words(), stage.fraction())), ledgerJson);
  }

  @Override
  public String version() {
    return Program.version();
  }
}
