package org.seamledger.cli;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.seamledger.export.ChangesCsv;
import org.seamledger.export.ChangesJson;
import org.seamledger.export.ChangesReport;
import org.seamledger.export.JsonLedger;
import org.seamledger.finding.Severity;
import org.seamledger.finding.UnreadableModelException;
import org.seamledger.ledger.ComparedResult;
import org.seamledger.ledger.Comparison;
import picocli.CommandLine.Command;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.TypeConversionException;

@Command(name = "compare", description = "Say what changed from one model or result to another: lines, order, findings, overrides.",
    footer = {"", "BEFORE and AFTER are models as for analyze, or results that analyze --format json wrote.",
        "Exit status: 0 done; 1 done, and AFTER has a finding at --fail-on that BEFORE had not and nobody accepted; 2 the command",
        "line, shapes or system are wrong; 3 a model or result can't be read; 70 a fault of the program; 74 the result can't be written."})
final class CompareCommand implements Task {

  /** Forms of the result. */
  enum Form {
    text((from, to, c, out) -> out.write(ChangesReport.text(from, to, c).getBytes(StandardCharsets.UTF_8))),
    json((from, to, c, out) -> ChangesJson.write(from, to, c, List.of(), out)), csv((from, to, c, out) -> ChangesCsv.write(c, out));

    @FunctionalInterface
    private interface Writer {
      void write(String from, String to, Comparison c, OutputStream out) throws IOException;
    }

    private final Writer writer;

    Form(Writer writer) {
      this.writer = writer;
    }
  }

  /** Words of {@code --fail-on}. */
  static final class LimitWord implements ITypeConverter<Severity> {

    @Override
    public Severity convert(String word) {
      return switch (word) {
        case "new-violation" -> Severity.VIOLATION;
        case "new-warning" -> Severity.WARNING;
        default -> throw new TypeConversionException("expected new-violation or new-warning, found '" + word + "'");
      };
    }
  }

  @Parameters(index = "0", paramLabel = "BEFORE", description = "The older model or result.")
  private String before;

  @Parameters(index = "1", paramLabel = "AFTER", description = "The newer one.")
  private String after;

  @Mixin
  private ServersChoice servers;

  @Mixin
  private Settings settings;

  @Option(names = "--format", paramLabel = "FORM", defaultValue = "text", description = "text, json or csv (default: text).")
  private Form format;

  @Option(names = "--output", paramLabel = "FILE", description = "Write the result to FILE instead of standard output.")
  private Path output;

  @Option(names = "--fail-on", paramLabel = "FINDING", converter = LimitWord.class,
      description = "new-violation or new-warning: exit with 1 where AFTER has such a finding that BEFORE had not.")
  private Severity failOn;

  @Override
  public int run(Session session) {
    session.requireWritable(output);
    Comparison c = Comparison.of(result(before, session), result(after, session));
    session.print(Optional.ofNullable(output), out -> format.writer.write(before, after, c, out));
    List<Comparison.Found> worse = failOn == null ? List.of() : c.worse(failOn);
    if (!worse.isEmpty()) {
      session.complain(after + " has " + (worse.size() == 1 ? "a finding" : worse.size() + " findings") + " that " + before
          + " had not and nobody accepted: " + String.join(", ", worse.stream().map(Comparison.Found::code).distinct().toList()));
    }
    return worse.isEmpty() ? ExitStatus.DONE : ExitStatus.FINDINGS;
  }

  /** A result as it stands; a model is analysed. Which it is the first bytes tell. */
  private ComparedResult result(String word, Session session) {
    try {
      Path file = word.startsWith(ChosenModels.PREFIX) ? null : Path.of(word);
      if (file != null && Files.isRegularFile(file) && isJson(file)) {
        try (InputStream in = Files.newInputStream(file)) {
          return ComparedResult.read(in, word);
        }
      }
    } catch (IOException e) {
      throw UnreadableModelException.of(word, e);
    }
    try (ChosenModels chosen = ChosenModels.of(List.of(word), servers)) {
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      JsonLedger.write(session.analyze(settings.on(chosen, session.environment())), out);
      return ComparedResult.read(new ByteArrayInputStream(out.toByteArray()), word);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static boolean isJson(Path file) throws IOException {
    try (InputStream in = Files.newInputStream(file)) {
      String start = new String(in.readNBytes(64), StandardCharsets.UTF_8).replace("\uFEFF", "").strip();
      return start.startsWith("{") || start.startsWith("[");
    }
  }
}
