package org.seamledger.takeoff;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import org.seamledger.detail.Decision;
import org.seamledger.detail.DecisionFormatException;
import org.seamledger.detail.DecisionReader;
import org.seamledger.detail.KindBook;
import org.seamledger.detail.Kinds;
import org.seamledger.geometry.Tolerance;
import org.seamledger.shacl.BrokenRulesException;
import org.seamledger.shacl.Rules;
import org.seamledger.site.Movement;
import org.seamledger.source.ModelFile;
import org.seamledger.source.ModelSource;

/**
 * What an analysis works on.
 *
 * @param models that together are one building, at least one
 * @param system the roof system's file; the default system where there is none
 * @param shapes folder of shapes to use instead of the program's own
 * @param decisions kinds and details that people chose, at most one a junction
 * @param places movements of models to the first one, by file name; the others lie where the models themselves say
 */
public record Inputs(List<ModelSource> models, Optional<Path> system, Optional<Path> shapes, Tolerance tolerance,
    List<Decision> decisions, SortedMap<String, Movement> places) {

  public Inputs {
    models = List.copyOf(models);
    decisions = List.copyOf(decisions);
    places = java.util.Collections.unmodifiableSortedMap(new TreeMap<>(places));
    if (models.isEmpty()) {
      throw new IllegalArgumentException("an analysis needs at least one model");
    }
  }

  /** These models, the default system, the program's shapes and tolerance. */
  public static Inputs of(List<? extends ModelSource> models) {
    return new Inputs(List.copyOf(models), Optional.empty(), Optional.empty(), Tolerance.DEFAULT, List.of(), new TreeMap<>());
  }

  public static Inputs ofFiles(List<Path> files) {
    return of(files.stream().map(ModelFile::new).toList());
  }

  /** A file and what people call it, where that is not where it is. */
  public record NamedFile(Path path, String name) {
  }

  public static Inputs ofNamedFiles(List<NamedFile> files) {
    return of(files.stream().map(file -> new ModelFile(file.path(), file.name())).toList());
  }

  public Inputs withSystem(Optional<Path> file) {
    return new Inputs(models, file, shapes, tolerance, decisions, places);
  }

  public Inputs withShapes(Optional<Path> folder) {
    return new Inputs(models, system, folder, tolerance, decisions, places);
  }

  public Inputs withDecisions(List<Decision> chosen) {
    return new Inputs(models, system, shapes, tolerance, chosen, places);
  }

  /**
   * The same with the decisions in a file, which may choose any kind that the shapes given before have.
   *
   * @throws UnusableFileException where it can't be read or is wrong
   */
  public Inputs withDecisionsIn(Path file) {
    try {
      return withDecisions(DecisionReader.read(file, kinds()));
    } catch (DecisionFormatException | BrokenRulesException e) {
      throw new UnusableFileException(e);
    }
  }

  private Set<String> kinds() {
    Set<String> ids = new TreeSet<>(Kinds.ALL);
    ids.add(Kinds.UNCLASSIFIED);
    shapes.ifPresent(folder -> ids.addAll(KindBook.read(Rules.load(folder)).ids()));
    return ids;
  }

  /**
   * With models moved to the first one.
   *
   * @param words each {@code FILE=dx,dy,dz}, {@code FILE=dx,dy,dz,degrees} or {@code FILE=dx,dy,dz,degrees,factor}: the file's name without
   *     folders; lengths times the factor, turned anticlockwise about the model's origin, then moved by metres
   * @throws IllegalArgumentException with a message for people where the words are something else, or no one model has that name
   */
  public Inputs withPlaces(List<String> words) {
    SortedMap<String, Movement> all = new TreeMap<>(places);
    for (String word : words) {
      int equals = word.lastIndexOf('=');
      if (equals < 1) {
        throw new IllegalArgumentException("expected FILE=dx,dy,dz, found '" + word + "'");
      }
      String file = word.substring(0, equals);
      long named = models.stream().filter(m -> fileName(m.name()).equals(file)).count();
      if (named != 1) {
        throw new IllegalArgumentException((named == 0 ? "no model" : "more than one model") + " is named '" + file + "'");
      }
      all.put(file, Movement.parse(word.substring(equals + 1)));
    }
    return new Inputs(models, system, shapes, tolerance, decisions, all);
  }

  private static String fileName(String name) {
    return name.substring(Math.max(name.lastIndexOf('/'), name.lastIndexOf('\\')) + 1);
  }
}
