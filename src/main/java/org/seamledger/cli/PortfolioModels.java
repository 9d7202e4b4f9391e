package org.seamledger.cli;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.seamledger.portfolio.Cluster;
import org.seamledger.portfolio.PortfolioModel;

/** The models of a portfolio: those of a folder, or those that a manifest lists. */
final class PortfolioModels {

  private static final long LONGEST = 1L << 28;
  private static final String STEP = "ISO-10303-21";

  private PortfolioModels() {
  }

  /**
   * The models by their names, each once.
   *
   * @throws UsageException where there is none, or the manifest can't be read
   */
  static List<PortfolioModel> of(String word, Optional<Cluster> cluster) {
    if (PortfolioModel.isAddress(word)) {
      return onCluster(word, cluster);
    }
    Path place = Path.of(word);
    if (!Files.exists(place)) {
      throw new UsageException(place + ": expected a folder of models or a list of them, found nothing of that name");
    }
    return Files.isDirectory(place) ? inFolder(place) : listed(place);
  }

  private static List<PortfolioModel> onCluster(String folder, Optional<Cluster> cluster) {
    if (cluster.isEmpty()) {
      throw new UsageException(folder + ": a folder of another file system needs a cluster that knows it: --master URL");
    }
    try {
      List<PortfolioModel> models = cluster.get().models(folder).stream().filter(m -> ModelWords.isModel(m.name())).toList();
      if (models.isEmpty()) {
        throw new UsageException(ModelWords.holdsNone(folder));
      }
      return models;
    } catch (IOException e) {
      throw new UsageException(folder + ": can't be read: " + e.getMessage());
    }
  }

  private static List<PortfolioModel> inFolder(Path folder) {
    Map<String, PortfolioModel> models = new TreeMap<>();
    for (String word : ModelWords.expand(List.of(folder.toString()))) {
      Path file = Path.of(word);
      String name = folder.normalize().relativize(file).toString().replace('\\', '/');
      models.put(name, new PortfolioModel(file, name));
    }
    return List.copyOf(models.values());
  }

  /** A path a line, from the list's own folder; a line that is empty or begins with # is none. */
  private static List<PortfolioModel> listed(Path manifest) {
    Map<String, PortfolioModel> models = new TreeMap<>();
    int number = 0;
    for (String line : text(manifest).split("\\R")) {
      number++;
      String word = line.strip();
      if (!word.isEmpty() && !word.startsWith("#")) {
        Path path = path(word, manifest, number);
        String name = path.normalize().toString().replace('\\', '/');
        models.putIfAbsent(name, new PortfolioModel(manifest.toAbsolutePath().getParent().resolve(path), name));
      }
    }
    if (models.isEmpty()) {
      throw new UsageException(manifest + ": expected a path of a model in each line, found none");
    }
    return List.copyOf(models.values());
  }

  private static Path path(String word, Path manifest, int line) {
    try {
      return Path.of(word);
    } catch (InvalidPathException e) {
      throw new UsageException(manifest + ":" + line + ": expected a path of a model, found " + word);
    }
  }

  private static String text(Path manifest) {
    try {
      if (Files.size(manifest) > LONGEST) {
        throw new UsageException(manifest + ": expected a list of models, found a file of " + Files.size(manifest) + " bytes");
      }
      String text = Files.readString(manifest);
      if (text.startsWith("\ufeff")) {
        text = text.substring(1);
      }
      if (text.startsWith(STEP)) {
        throw new UsageException(manifest + ": expected a folder of models or a list of them, found a model; analyze takes it");
      }
      return text;
    } catch (CharacterCodingException e) {
      throw new UsageException(manifest + ": expected a list of models as text in UTF-8, found other bytes");
    } catch (IOException e) {
      throw new UsageException(manifest + ": can't be read");
    }
  }
}
