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
import org.seamledger.finding.AcceptedFinding;
import org.seamledger.geometry.Tolerance;
import org.seamledger.shacl.BrokenRulesException;
import org.seamledger.shacl.Rules;
import org.seamledger.site.RigidTransform;
import org.seamledger.source.ModelFile;
import org.seamledger.source.ModelSource;

/**
 * What an analysis works on.
 *
 * @param models that together are one building, at least one
 * @param system the roof system's file; the default system where there is none
 * @param shapes folder of shapes to use instead of the program's own
 * @param decisions kinds and details that people chose, at most one a junction
 * @param places movements of models to the first one, by their positions in {@code models} from 0; the others lie where the models
 *     themselves say
 * @param accepted findings that people let stand
 */
public record Inputs(List<ModelSource> models, Optional<NamedFile> system, Optional<Path> shapes, Tolerance tolerance,
    List<Decision> decisions, SortedMap<Integer, RigidTransform> places, List<AcceptedFinding> accepted) {

  public Inputs {
    models = List.copyOf(models);
    decisions = List.copyOf(decisions);
    accepted = List.copyOf(accepted);
    places = java.util.Collections.unmodifiableSortedMap(new TreeMap<>(places));
    if (models.isEmpty()) {
      throw new IllegalArgumentException("an analysis needs at least one model");
    }
  }

  /** These models, the default system, the program's shapes and tolerance. */
  public static Inputs of(List<? extends ModelSource> models) {
    return new Inputs(List.copyOf(models), Optional.empty(), Optional.empty(), Tolerance.DEFAULT, List.of(), new TreeMap<>(), List.of());
  }

  public static Inputs ofFiles(List<Path> files) {
    return of(files.stream().map(ModelFile::new).toList());
  }

  /**
   * A file and what people call it, where that is not where it is.
   *
   * @param placement movement to the first model: {@code dx,dy,dz[,degrees[,factor]]}; empty to leave it where the models say
   */
  public record NamedFile(Path path, String name, Optional<String> placement) {

    public NamedFile(Path path, String name) {
      this(path, name, Optional.empty());
    }
  }

  /** @throws IllegalArgumentException with a message for users where a placement is none */
  public static Inputs ofNamedFiles(List<NamedFile> files) {
    Inputs inputs = of(files.stream().map(file -> new ModelFile(file.path(), file.name())).toList());
    SortedMap<Integer, RigidTransform> places = new TreeMap<>();
    for (int i = 0; i < files.size(); i++) {
      int model = i;
      files.get(i).placement().ifPresent(p -> places.put(model, RigidTransform.parse(p)));
    }
    return inputs.placed(places);
  }

  /**
   * A movement as it is stored: equal movements give equal texts.
   *
   * @throws IllegalArgumentException with a message for users where the text is no {@code dx,dy,dz[,degrees[,factor]]}
   */
  public static String placement(String text) {
    return RigidTransform.parse(text).argument();
  }

  public Inputs withSystem(Optional<Path> file) {
    return withNamedSystem(file.map(f -> new NamedFile(f, String.valueOf(f.getFileName()))));
  }

  /** The name stands in what is said of a system that is wrong. */
  public Inputs withNamedSystem(Optional<NamedFile> file) {
    return new Inputs(models, file, shapes, tolerance, decisions, places, accepted);
  }

  public Inputs withShapes(Optional<Path> folder) {
    return new Inputs(models, system, folder, tolerance, decisions, places, accepted);
  }

  public Inputs withDecisions(List<Decision> chosen) {
    return new Inputs(models, system, shapes, tolerance, chosen, places, accepted);
  }

  /**
   * The same with the decisions and accepted findings in a file, which may choose any kind that the shapes given before have.
   *
   * @throws UnusableFileException where it can't be read or is wrong
   */
  public Inputs withDecisionsIn(Path file) {
    try {
      DecisionReader.Content content = DecisionReader.read(file, kinds());
      return new Inputs(models, system, shapes, tolerance, content.decisions(), places, content.accepted());
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

  private Inputs placed(SortedMap<Integer, RigidTransform> movements) {
    return new Inputs(models, system, shapes, tolerance, decisions, movements, accepted);
  }

  /**
   * With models moved to the first one.
   *
   * @param words each {@code MODEL=dx,dy,dz}, {@code MODEL=dx,dy,dz,degrees} or {@code MODEL=dx,dy,dz,degrees,factor}: the model as it was
   *     typed, or its name with or without folders; lengths times the factor, turned anticlockwise about the model's origin, then moved
   *     by metres
   * @param typed what each model was called by who named it
   * @throws IllegalArgumentException with a message for users where the words are something else, or no one model has that name
   */
  public Inputs withPlaces(List<String> words, List<String> typed) {
    SortedMap<Integer, RigidTransform> all = new TreeMap<>(places);
    List<Set<String>> names = ModelNames.together(typed, models.stream().map(ModelSource::name).toList());
    for (String word : words) {
      int equals = word.lastIndexOf('=');
      if (equals < 1) {
        throw new IllegalArgumentException("expected MODEL=dx,dy,dz, found '" + word + "'");
      }
      int model = ModelNames.position(word.substring(0, equals), names);
      if (all.put(model, RigidTransform.parse(word.substring(equals + 1))) != null) {
        throw new IllegalArgumentException("'" + word.substring(0, equals) + "' is placed twice");
      }
    }
    return placed(all);
  }

  /** What people call the models, each told from the others. */
  List<String> names() {
    return ModelNames.shown(models.stream().map(ModelSource::name).toList());
  }
}
