package org.seamledger.takeoff;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import org.seamledger.detail.Details;
import org.seamledger.detail.FixedLines;
import org.seamledger.detail.Kind;
import org.seamledger.detail.Kinds;
import org.seamledger.node.NodeKinds;
import org.seamledger.sequence.WorkRules;
import org.seamledger.shacl.BrokenRulesException;
import org.seamledger.shacl.Described;
import org.seamledger.shacl.ExampleFiles;
import org.seamledger.shacl.RuleFiles;
import org.seamledger.shacl.RuleLimits;
import org.seamledger.shacl.Rules;
import org.seamledger.shacl.ShapeExamples;

/** Rules to read and to change: what each shape is for and requires, its limits and examples. Nothing here changes a file on a disk. */
public final class RuleBook {

  /** What shapes are for: the property by which they say so, and what it is called. */
  private static final List<Map.Entry<String, String>> SORTS = List.of(Map.entry("kind", "kind"), Map.entry("detail", "detail"),
      Map.entry("code", "finding"), Map.entry("nodeKind", "node"), Map.entry("fixed", "fixed"));

  /**
   * A shape that matches something by itself.
   *
   * @param sort {@code kind}, {@code detail}, {@code finding}, {@code node} or {@code fixed}
   * @param id the word that it stands for
   * @param title what it is, in words
   * @param severity of a finding; empty for others
   * @param why of a finding: the reason, then what to do
   * @param place file and line
   * @param requires what the shape requires, in words
   * @param limits ids of the limits that it holds facts against
   * @param shape its local name, as examples name it
   */
  public record Entry(String sort, String id, String title, String severity, List<String> why, String place, String requires,
      Set<String> limits, String shape) {
  }

  private final RuleFiles files;
  /** Examples that the program doesn't have, or has with another text. */
  private final SortedMap<String, String> ownExamples;
  private final Rules rules;
  private final RuleLimits limits;
  private final Map<String, String> titles = new HashMap<>();

  private RuleBook(RuleFiles files, SortedMap<String, String> ownExamples) {
    try {
      this.files = files;
      this.ownExamples = ownExamples;
      rules = Rules.of(files);
      limits = rules.limits();
      // Some mistakes show only when something is made of the rules.
      new Kinds(rules).book().all().forEach(k -> titles.put("kind " + k.id(), title(k)));
      new Details(rules).titles().forEach((id, title) -> titles.put("detail " + id, title));
      new NodeKinds(rules).all().forEach(k -> titles.put("node " + k.id(), k.label()));
      rules.review();
      new FixedLines(rules);
      new WorkRules(rules);
    } catch (BrokenRulesException e) {
      throw new UnusableFileException(e);
    }
  }

  /**
   * The rules of a folder, or the program's own.
   *
   * @throws UnusableFileException where they can't be used
   */
  public static RuleBook of(Optional<Path> folder) {
    try {
      return new RuleBook(folder.map(RuleFiles::in).orElseGet(RuleFiles::packaged),
          folder.map(ExampleFiles::in).orElseGet(TreeMap::new));
    } catch (BrokenRulesException e) {
      throw new UnusableFileException(e);
    }
  }

  /**
   * These rules with other texts of files, and then with other numbers for limits of these.
   *
   * @param texts by the file's name; those in {@code tests/} are examples
   * @param numbers by the limit's id
   * @throws UnusableFileException with file, line and reason where they can't be used
   */
  public RuleBook with(Map<String, String> texts, Map<String, String> numbers) {
    try {
      SortedMap<String, String> examples = new TreeMap<>(ownExamples);
      Map<String, String> shapes = new TreeMap<>(texts);
      texts.forEach((name, text) -> ExampleFiles.example(name).ifPresent(example -> examples.put(example, shapes.remove(name))));
      RuleBook read = texts.isEmpty() ? this : new RuleBook(files.with(shapes), examples);
      return numbers.isEmpty() ? read : new RuleBook(read.limits.with(numbers), examples);
    } catch (BrokenRulesException e) {
      throw new UnusableFileException(e);
    }
  }

  /** What identifies these rules. */
  public String hash() {
    return files.hash();
  }

  /** Every shape that matches something by itself, sort by sort, by id. */
  public List<Entry> entries() {
    List<Entry> all = new ArrayList<>();
    for (Map.Entry<String, String> sort : SORTS) {
      rules.described(sort.getKey()).forEach((id, d) -> all.add(entry(sort.getValue(), id, d)));
    }
    return all;
  }

  private Entry entry(String sort, String id, Described d) {
    boolean isFinding = sort.equals("finding");
    String title = isFinding ? String.join(" ", d.words("message")) : titles.getOrDefault(sort + ' ' + id, id.replace('-', ' '));
    List<String> why = isFinding ? List.of(d.word("reason", ""), d.word("action", "")) : List.of();
    String severity = isFinding ? d.words("severity").stream().findFirst().orElse("Violation").toLowerCase(java.util.Locale.ROOT) : "";
    return new Entry(sort, id, title, severity, why, d.place(), rules.requires(d), limits.of(d), d.name());
  }

  /** The label with the meaning, unless the meaning begins with it. */
  private static String title(Kind kind) {
    return kind.meaning().isEmpty() ? kind.label()
        : kind.meaning().startsWith(kind.label()) ? kind.meaning() : kind.label() + ": " + kind.meaning();
  }

  /** Every limit, in the order of files and lines. */
  public List<RuleLimits.Limit> limits() {
    return limits.all();
  }

  /** Runs the examples: those of the program, and in their place or beside them an office's own. */
  public List<ShapeExamples.Example> examples() {
    try {
      SortedMap<String, String> all = new TreeMap<>(ExampleFiles.packaged());
      all.putAll(ownExamples);
      return ShapeExamples.run(files, all);
    } catch (BrokenRulesException e) {
      throw new UnusableFileException(e);
    }
  }

  /** Texts of the files by name. */
  public SortedMap<String, String> texts() {
    return files.texts();
  }

  /** What a folder has to hold to be these rules: texts of the files that differ from the program's own, examples too, by name. */
  public SortedMap<String, String> own() {
    SortedMap<String, String> own = files.own();
    ownExamples.forEach((name, text) -> own.put(ExampleFiles.file(name), text));
    return own;
  }

  /** Writes all files into a folder that is there. */
  public void write(Path into) throws IOException {
    for (Map.Entry<String, String> f : files.texts().entrySet()) {
      Files.writeString(into.resolve(f.getKey()), f.getValue());
    }
  }
}
