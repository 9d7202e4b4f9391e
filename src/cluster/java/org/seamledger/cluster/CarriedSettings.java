package org.seamledger.cluster;

import java.io.IOException;
import java.io.Serializable;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.seamledger.portfolio.ModelRun;
import org.seamledger.takeoff.Analysis;

/**
 * How models are to be analysed, with the content of the files that say so: the machines of a cluster need not have them.
 *
 * @param system name and content of the roof system; empty for the one built in
 * @param shapes names and contents; empty for those in the program file
 */
record CarriedSettings(LinkedHashMap<String, byte[]> system, LinkedHashMap<String, byte[]> shapes, String basis, Duration longest)
    implements Serializable {

  /** Made once in each process. */
  private static ModelRun unpacked;

  static CarriedSettings of(ModelRun runner) throws IOException {
    LinkedHashMap<String, byte[]> shapes = new LinkedHashMap<>();
    if (runner.shapes().isPresent()) {
      for (Path file : shapeFiles(runner.shapes().get())) {
        shapes.put(file.getFileName().toString(), Files.readAllBytes(file));
      }
    }
    LinkedHashMap<String, byte[]> system = new LinkedHashMap<>();
    if (runner.system().isPresent()) {
      system.put(runner.system().get().getFileName().toString(), Files.readAllBytes(runner.system().get()));
    }
    return new CarriedSettings(system, shapes, runner.basis(), runner.longest());
  }

  private static List<Path> shapeFiles(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.filter(f -> f.getFileName().toString().endsWith(".ttl") && Files.isRegularFile(f)).sorted().toList();
    }
  }

  /** The way to analyse that they describe; the same in each call of a process. */
  ModelRun runner() {
    synchronized (CarriedSettings.class) {
      if (unpacked == null || !unpacked.basis().equals(basis) || !unpacked.longest().equals(longest)) {
        unpacked = new ModelRun(Analysis::run, unpack(system).map(f -> f.resolve(system.keySet().iterator().next())), unpack(shapes),
            basis, longest);
      }
      return unpacked;
    }
  }

  private static Optional<Path> unpack(Map<String, byte[]> files) {
    if (files.isEmpty()) {
      return Optional.empty();
    }
    try {
      Path folder = Files.createTempDirectory("seamledger");
      folder.toFile().deleteOnExit();
      for (Map.Entry<String, byte[]> file : files.entrySet()) {
        Path path = folder.resolve(file.getKey());
        path.toFile().deleteOnExit();
        Files.write(path, file.getValue());
      }
      return Optional.of(folder);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
