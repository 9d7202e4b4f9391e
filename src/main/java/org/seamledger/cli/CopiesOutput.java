package org.seamledger.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.seamledger.run.ModelCopies;
import org.seamledger.source.ModelSource;
import org.seamledger.takeoff.Takeoff;

/** Where copies of the models with the answers in them go: that of one model to a file or standard output, those of several to a folder. */
record CopiesOutput(Optional<Path> output) {

  /** @throws UsageException where that many copies can't go there */
  void requireWritable(Session session, int models) {
    if (models == 1) {
      session.requireWritable(output.orElse(null));
    } else if (output.isEmpty() || !Files.isDirectory(output.get())) {
      throw new UsageException("--format ifc writes a copy of each of the " + models + " models: --output names the folder for them, "
          + output.map(o -> o + " is none").orElse("and is missing"));
    }
  }

  /** Writes them, by the names that the models have. */
  void write(Takeoff takeoff, List<ModelSource> sources, Session session) {
    Set<String> names = new HashSet<>();
    for (int i = 0; i < sources.size(); i++) {
      int model = i;
      Optional<Path> target = sources.size() == 1 ? output : Optional.of(output.get().resolve(name(takeoff, i, names)));
      session.print(target, out -> ModelCopies.write(takeoff, model, sources.get(model), out));
    }
  }

  private static String name(Takeoff takeoff, int model, Set<String> names) {
    String name = takeoff.models().get(model).file();
    String free = name;
    for (int n = 2; !names.add(free); n++) {
      free = n + " " + name;
    }
    return free;
  }
}
