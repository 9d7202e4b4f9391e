package org.seamledger.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.seamledger.quantity.RoofSystem;
import org.seamledger.quantity.SystemChange;
import org.seamledger.quantity.SystemFormatException;
import org.seamledger.takeoff.UnusableFileException;

/** The systems of alternates, each read and checked before anything is computed; files of changed ones are gone when it is closed. */
final class AlternateSystems implements AutoCloseable {

  /** @param file empty for the built-in system */
  record Named(String name, Optional<Path> file) {
  }

  private final List<Named> all = new ArrayList<>();
  private final List<Path> written = new ArrayList<>();
  private final Set<String> names = new HashSet<>();

  private AlternateSystems() {
  }

  /**
   * @throws UnusableFileException where a system can't be used
   * @throws UsageException where a change is none
   */
  static AlternateSystems of(List<Path> files, List<String> changes) {
    AlternateSystems systems = new AlternateSystems();
    boolean whole = false;
    try {
      files.forEach(systems::file);
      if (files.size() + (changes.isEmpty() ? 0 : 1) < 2 || files.isEmpty()) {
        systems.builtIn(files.isEmpty());
      }
      RoofSystem base = files.isEmpty() ? RoofSystem.DEFAULT : RoofSystem.read(files.get(0));
      changes.forEach(change -> systems.changed(base, change));
      whole = true;
      return systems;
    } finally {
      if (!whole) {
        systems.close();
      }
    }
  }

  List<Named> all() {
    return all;
  }

  private void file(Path file) {
    try {
      RoofSystem system = RoofSystem.read(file);
      add(names.contains(system.name()) ? system.name() + " (" + file.getFileName() + ")" : system.name(), Optional.of(file));
    } catch (SystemFormatException e) {
      throw new UnusableFileException(e);
    }
  }

  /** One file alone is compared with the built-in system. */
  private void builtIn(boolean first) {
    names.add(RoofSystem.DEFAULT.name());
    all.add(first ? 0 : all.size(), new Named(RoofSystem.DEFAULT.name(), Optional.empty()));
  }

  private void add(String name, Optional<Path> file) {
    if (!names.add(name)) {
      throw new UsageException("two alternates are called \"" + name + "\"");
    }
    all.add(new Named(name, file));
  }

  private void changed(RoofSystem base, String change) {
    int colon = change.indexOf(':');
    if (colon < 1) {
      throw new UsageException("--alternate: expected NAME: FIELD = VALUE, found \"" + change + "\"");
    }
    String name = change.substring(0, colon).strip();
    try {
      String json = SystemChange.apply(base, name, values(change.substring(colon + 1)), "--alternate " + name);
      RoofSystem.parse(json, "--alternate " + name);
      Path file = Files.createTempFile("seamledger-alternate-", ".json");
      written.add(file);
      Files.writeString(file, json);
      add(name, Optional.of(file));
    } catch (SystemFormatException e) {
      throw new UnusableFileException(e);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** {@code panel.coverage = 18 in; ridge.vented = true}. */
  private static Map<String, String> values(String changes) {
    Map<String, String> values = new LinkedHashMap<>();
    for (String change : changes.split(";")) {
      int equals = change.indexOf('=');
      if (equals < 0 && !change.isBlank()) {
        throw new UsageException(
            "--alternate: expected FIELD = VALUE with a field of the system such as panel.coverage, found \"" + change.strip() + "\"");
      }
      if (equals >= 0 && values.put(change.substring(0, equals).strip(), change.substring(equals + 1).strip()) != null) {
        throw new UsageException("--alternate: expected each field once, found \"" + change.strip() + "\" as another");
      }
    }
    return values;
  }

  @Override
  public void close() {
    for (Path file : written) {
      try {
        Files.deleteIfExists(file);
      } catch (IOException e) {
        file.toFile().deleteOnExit();
      }
    }
  }
}
