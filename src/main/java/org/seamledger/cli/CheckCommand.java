package org.seamledger.cli;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import org.seamledger.export.GateModel;
import org.seamledger.export.IdsJson;
import org.seamledger.export.IdsReport;
import org.seamledger.finding.Severity;
import org.seamledger.finding.SettingsFile;
import org.seamledger.ids.IdsDocument;
import org.seamledger.ids.IdsReader;
import org.seamledger.ids.check.DocumentResult;
import org.seamledger.ids.check.IdsCheck;
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
    text((results, models, out) -> IdsReport.write(results, out)), json((results, models, out) -> IdsJson.write(results, out)), csv(of(
        GateForm.csv)),
    junit(of(GateForm.junit)), sarif(of(GateForm.sarif));

    @FunctionalInterface
    private interface Writer {
      void write(List<DocumentResult> results, List<String> models, OutputStream out) throws IOException;
    }

    private final Writer writer;

    Form(Writer writer) {
      this.writer = writer;
    }

    private static Writer of(GateForm form) {
      return (results, models, out) -> form.write(List.of(GateModel.of(models, results)), LIMIT, out);
    }
  }

  /** What a specification does not let pass is wrong, however it was found. */
  private static final Optional<Severity> LIMIT = Optional.of(Severity.VIOLATION);
  private static final Pattern MODEL = Pattern.compile("(?i)server:.*|.*\\.(ifc|ifczip|zip|gz)");

  @Parameters(arity = "0..*", paramLabel = "MODEL", description = "Models as for analyze. Elements of all of them count.")
  private List<String> models = new ArrayList<>();

  @Mixin
  private ServersChoice servers;

  @Option(names = "--ids", required = true, arity = "1..*", paramLabel = "FILE", description = "Files of specifications, such as "
      + "walls.ids.")
  private List<String> files;

  @Option(names = "--format", paramLabel = "FORM", defaultValue = "text",
      description = "text, json for programs, csv for spreadsheets, junit or sarif for pipelines (default: text).")
  private Form format;

  @Option(names = "--each", description = "Check each model by itself; models may be folders or patterns, as for analyze.")
  private boolean each;

  @Option(names = "--output", paramLabel = "FILE", description = "Write the result to FILE instead of standard output.")
  private Path output;

  @Override
  public int run(Session session) {
    session.requireWritable(output);
    separate();
    List<IdsDocument> documents = files.stream().map(f -> read(Path.of(f))).toList();
    if (each && documents.stream().allMatch(IdsDocument::valid)) {
      return new EachModel(models, LIMIT, GateForm.valueOf(format.name()), output).run(session,
          word -> GateModel.of(List.of(word), check(List.of(word), documents, session)));
    }
    List<DocumentResult> results = each ? none(documents) : check(models, documents, session);
    session.print(Optional.ofNullable(output), out -> format.writer.write(results, models, out));
    documents.stream().flatMap(d -> d.problems().stream()).forEach(p -> session.complain(p.text()));
    return documents.stream().anyMatch(d -> !d.valid()) ? ExitStatus.USAGE
        : results.stream().allMatch(DocumentResult::passes) ? ExitStatus.DONE : ExitStatus.FINDINGS;
  }

  /** Models that stand behind --ids are models all the same. */
  private void separate() {
    Predicate<String> isModel = f -> MODEL.matcher(f).matches() || each && Files.isDirectory(Path.of(f));
    List<String> named = files.stream().filter(isModel.negate()).toList();
    files.stream().filter(isModel).forEach(models::add);
    files = named;
    if (models.isEmpty() || files.isEmpty()) {
      throw new UsageException(models.isEmpty() ? "say which models to check: check MODEL... --ids FILE..."
          : "say which specifications to check by: --ids FILE...");
    }
  }

  private static List<DocumentResult> none(List<IdsDocument> documents) {
    return documents.stream().map(d -> new DocumentResult(d, List.of())).toList();
  }

  private List<DocumentResult> check(List<String> words, List<IdsDocument> documents, Session session) {
    if (documents.stream().noneMatch(IdsDocument::valid)) {
      return none(documents);
    }
    try (ChosenModels chosen = ChosenModels.of(words, servers); LateProgress progress = new LateProgress(session.err())) {
      return IdsCheck.run(chosen.sources(), documents, progress.stage("checking the models", 0, 1));
    }
  }

  private static IdsDocument read(Path file) {
    try (InputStream in = new ByteArrayInputStream(SettingsFile.bytes(file))) {
      return IdsReader.read(in, file.toString());
    } catch (NoSuchFileException e) {
      throw new UsageException("--ids " + file + ": expected a file, found none");
    } catch (IOException e) {
      throw new UsageException("--ids " + file + " can't be read: " + e.getMessage());
    }
  }
}
