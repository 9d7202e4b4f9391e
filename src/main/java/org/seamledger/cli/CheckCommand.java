package org.seamledger.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import org.seamledger.export.IdsJson;
import org.seamledger.export.IdsReport;
import org.seamledger.ids.IdsDocument;
import org.seamledger.ids.IdsReader;
import org.seamledger.ids.check.DocumentResult;
import org.seamledger.ids.check.IdsCheck;
import org.seamledger.progress.Headway;
import org.seamledger.takeoff.Stage;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

@Command(name = "check", description = "Check models against information delivery specifications (IDS 1.0).",
    footer = {"", "Exit status: 0 every specification passes; 1 one fails; 2 an IDS file is not a valid one, or the command line is wrong;",
        "3 a model can't be read; 70 a fault of the program; 74 the result can't be written."})
final class CheckCommand implements Task {

  /** Forms of the result. */
  enum Form {
    text(IdsReport::write), json(IdsJson::write);

    @FunctionalInterface
    private interface Writer {
      void write(List<DocumentResult> results, OutputStream out) throws IOException;
    }

    private final Writer writer;

    Form(Writer writer) {
      this.writer = writer;
    }
  }

  private static final Pattern MODEL = Pattern.compile("(?i)server:.*|.*\\.(ifc|ifczip|zip|gz)");

  @Parameters(arity = "0..*", paramLabel = "MODEL", description = "Models as for analyze. Elements of all of them count.")
  private List<String> models = new ArrayList<>();

  @Mixin
  private ServersChoice servers;

  @Option(names = "--ids", required = true, arity = "1..*", paramLabel = "FILE", description = "Files of specifications, such as "
      + "walls.ids.")
  private List<String> files;

  @Option(names = "--format", paramLabel = "FORM", defaultValue = "text", description = "text, or json for programs (default: text).")
  private Form format;

  @Option(names = "--output", paramLabel = "FILE", description = "Write the result to FILE instead of standard output.")
  private Path output;

  @Override
  public int run(Session session) {
    session.requireWritable(output);
    separate();
    List<IdsDocument> documents = files.stream().map(f -> read(Path.of(f))).toList();
    List<DocumentResult> results = check(documents, session);
    session.print(Optional.ofNullable(output), out -> format.writer.write(results, out));
    documents.stream().flatMap(d -> d.problems().stream()).forEach(p -> session.complain(p.text()));
    return documents.stream().anyMatch(d -> !d.valid()) ? ExitStatus.USAGE
        : results.stream().allMatch(DocumentResult::passes) ? ExitStatus.DONE : ExitStatus.FINDINGS;
  }

  /** Models that stand behind --ids are models all the same. */
  private void separate() {
    List<String> named = files.stream().filter(f -> !MODEL.matcher(f).matches()).toList();
    files.stream().filter(f -> MODEL.matcher(f).matches()).forEach(models::add);
    files = named;
    if (models.isEmpty() || files.isEmpty()) {
      throw new UsageException(models.isEmpty() ? "say which models to check: check MODEL... --ids FILE..."
          : "say which specifications to check by: --ids FILE...");
    }
  }

  private List<DocumentResult> check(List<IdsDocument> documents, Session session) {
    if (documents.stream().noneMatch(IdsDocument::valid)) {
      return documents.stream().map(d -> new DocumentResult(d, List.of())).toList();
    }
    try (ChosenModels chosen = ChosenModels.of(models, servers); LateProgress progress = new LateProgress(session.err())) {
      progress.begins(Stage.READING);
      return IdsCheck.run(chosen.sources(), documents, Headway.UNHEARD);
    }
  }

  private static IdsDocument read(Path file) {
    try (InputStream in = Files.newInputStream(file)) {
      return IdsReader.read(in, file.toString());
    } catch (NoSuchFileException e) {
      throw new UsageException("--ids " + file + ": expected a file, found none");
    } catch (IOException e) {
      throw new UsageException("--ids " + file + " can't be read: " + e.getMessage());
    }
  }
}
