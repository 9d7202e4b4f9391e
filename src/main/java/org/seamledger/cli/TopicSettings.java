package org.seamledger.cli;

import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.seamledger.bcf.BcfDate;
import org.seamledger.bcf.BcfFormatException;
import org.seamledger.bcf.BcfReader;
import org.seamledger.finding.TopicAnswer;
import org.seamledger.takeoff.Program;
import picocli.CommandLine.Option;

/** How findings are handed on to coordination tools, and what came back from there. */
final class TopicSettings {

  @Option(names = "--reviews", paramLabel = "FILE", description = "BCF that came back: what people closed, reopened and said there. "
      + "May be given several times.")
  private List<Path> reviews = List.of();

  @Option(names = "--author", paramLabel = "NAME", defaultValue = Program.NAME, description = "Whose topics those of --format bcf are "
      + "(default: the program's name).")
  private String author;

  @Option(names = "--created", paramLabel = "DATE", description = "When topics count as made: 2024-05-31, or with a time "
      + "(default: when the first model was written).")
  private String created;

  /** @throws UsageException where it is blank */
  String author() {
    if (author.isBlank()) {
      throw new UsageException("--author is a name, found an empty one");
    }
    return author;
  }

  /** @throws UsageException where it is no date */
  Optional<Instant> created() {
    if (created == null) {
      return Optional.empty();
    }
    return Optional.of(BcfDate.instant(created).orElseThrow(() -> new UsageException(
        "--created: expected a day or time in ISO 8601 such as 2024-05-31 or 2024-05-31T14:00:00Z, found '" + created + "'")));
  }

  /** @throws UsageException where there are reviews, which belong to one building */
  void requireNoReviews() {
    if (!reviews.isEmpty()) {
      throw new UsageException("--reviews is about one building; with --each every model stands for itself");
    }
  }

  /** @throws UsageException where a file is no BCF */
  List<TopicAnswer> answers() {
    try {
      return reviews.stream().flatMap(file -> BcfReader.read(file, file.toString()).topics().stream()).toList();
    } catch (BcfFormatException e) {
      throw new UsageException("--reviews " + e.getMessage());
    }
  }
}
