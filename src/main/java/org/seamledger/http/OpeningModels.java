package org.seamledger.http;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.seamledger.http.api.UploadFolder;
import org.seamledger.http.job.Jobs;
import org.seamledger.http.setting.Options;
import org.seamledger.ledger.Analyses;
import org.seamledger.ledger.StoredAnalysis;
import org.seamledger.ledger.StoredFile;

/** The models of the command line, that the page opens on. */
final class OpeningModels {

  private final Options options;
  private final Analyses analyses;
  private final Jobs jobs;
  private final UploadFolder uploads;

  OpeningModels(Options options, Analyses analyses, Jobs jobs, UploadFolder uploads) {
    this.uploads = uploads;
    this.options = options;
    this.analyses = analyses;
    this.jobs = jobs;
  }

  /** Id of their analysis: the one that is there already where files, program and rules are unchanged since, or else a new one. */
  Optional<String> open() throws IOException {
    if (options.models().isEmpty()) {
      return Optional.empty();
    }
    List<StoredFile> files = new ArrayList<>();
    StringBuilder origin = new StringBuilder(options.analyzer().version()).append(' ').append(options.analyzer().rules());
    for (Path m : options.models()) {
      Path absolute = m.toAbsolutePath();
      long size = Files.size(absolute);
      origin.append('\n').append(absolute).append(' ').append(size).append(' ').append(Files.getLastModifiedTime(absolute));
      files.add(new StoredFile(m.getFileName().toString(), absolute.toString(), size, "model"));
    }
    Optional<StoredAnalysis> before = analyses.byOrigin(origin.toString()).filter(a -> !a.state().isFinal() || a.problem().isEmpty());
    return Optional.of(before.isPresent() ? before.get().id() : begin(files, origin.toString()));
  }

  private String begin(List<StoredFile> files, String origin) {
    Optional<String> project =
        options.shared().isPresent() ? analyses.bySources(files) : analyses.byPaths(files.stream().map(StoredFile::path).toList());
    StoredAnalysis added =
        analyses.add(Analyses.newId(), project, files.get(0).name(), files.stream().map(uploads::within).toList(), origin);
    jobs.submit(added);
    return added.id();
  }
}
