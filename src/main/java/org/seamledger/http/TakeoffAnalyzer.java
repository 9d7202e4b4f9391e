package org.seamledger.http;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.seamledger.detail.Decision;
import org.seamledger.export.CutList;
import org.seamledger.export.JsonLedger;
import org.seamledger.export.PlanDrawing;
import org.seamledger.export.SectionDrawing;
import org.seamledger.export.TextReport;
import org.seamledger.takeoff.Analysis;
import org.seamledger.takeoff.Inputs;
import org.seamledger.takeoff.Program;
import org.seamledger.takeoff.Progress;
import org.seamledger.takeoff.Stage;
import org.seamledger.takeoff.Takeoff;

/**
 * The program's own analysis.
 *
 * @param shapes folder of shapes to use instead of the program's own
 */
public record TakeoffAnalyzer(Optional<Path> shapes) implements Analyzer {

  @Override
  public Drawings analyze(List<Model> models, Optional<Path> system, List<Decision> decisions, ProgressListener progress,
      OutputStream ledgerJson)
      throws IOException {
    List<Inputs.NamedFile> files = models.stream().map(m -> new Inputs.NamedFile(m.path(), m.name(), m.placement())).toList();
    Inputs inputs = Inputs.ofNamedFiles(files).withSystem(system).withShapes(shapes).withDecisions(decisions);
    Takeoff takeoff = Analysis.run(inputs, new Told(progress));
    JsonLedger.write(takeoff, ledgerJson);
    return new TakeoffDrawings(takeoff);
  }

  private record TakeoffDrawings(Takeoff takeoff) implements Drawings {

    @Override
    public String plan() {
      return PlanDrawing.svg(takeoff);
    }

    @Override
    public Optional<String> section(String junction) {
      boolean isKnown = takeoff.junctions().stream().anyMatch(j -> j.junction().id().equals(junction));
      return isKnown ? Optional.of(SectionDrawing.svg(takeoff, junction)) : Optional.empty();
    }

    @Override
    public Optional<String> report() {
      return Optional.of(text(TextReport::write));
    }

    @Override
    public String cutList() {
      return text(CutList::write);
    }

    private String text(Writer writer) {
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      try {
        writer.write(takeoff, bytes);
      } catch (IOException e) {
        throw new UncheckedIOException(e);
      }
      return bytes.toString(StandardCharsets.UTF_8);
    }

    @FunctionalInterface
    private interface Writer {
      void write(Takeoff takeoff, OutputStream out) throws IOException;
    }
  }

  private record Told(ProgressListener listener) implements Progress {

    @Override
    public void begins(Stage stage) {
      within(stage, 0);
    }

    @Override
    public void within(Stage stage, double share) {
      listener.progress(TakeoffAnalyzer.words(stage), stage.fraction(share));
    }
  }

  private static String words(Stage stage) {
    String words = stage == Stage.DONE ? "writing the ledger" : stage.words();
    return Character.toUpperCase(words.charAt(0)) + words.substring(1);
  }

  @Override
  public String version() {
    return Program.version();
  }

  @Override
  public String rules() {
    return Program.rules(shapes);
  }
}
