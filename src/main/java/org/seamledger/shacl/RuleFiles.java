package org.seamledger.shacl;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.Collection;
import java.util.Collections;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.seamledger.finding.Sha256;

/** The files of the rules in force, by name, unparsed: to know which rules they are takes no more. */
public final class RuleFiles {

  private static final List<String> PACKAGED = List.of("details-content.ttl", "details.ttl", "findings.ttl", "fixity.ttl", "kinds.ttl",
      "nodes-content.ttl", "nodes.ttl", "profiles.ttl", "sequence.ttl");

  private static final Pattern NAME = Pattern.compile("[A-Za-z0-9][A-Za-z0-9._-]{0,80}\\.ttl");

  private final SortedMap<String, RuleFile> files;

  private RuleFiles(SortedMap<String, RuleFile> files) {
    this.files = Collections.unmodifiableSortedMap(files);
  }

  /** Those that come with the program. */
  public static RuleFiles packaged() {
    SortedMap<String, RuleFile> files = new TreeMap<>();
    for (String name : PACKAGED) {
      String place = "shapes/" + name;
      try (InputStream in = RuleFiles.class.getResourceAsStream("/" + place)) {
        if (in == null) {
          throw new IllegalStateException("the program was packed without " + place);
        }
        files.put(name, new RuleFile(name, place, RuleFile.decode(place, in.readAllBytes())));
      } catch (IOException e) {
        throw new IllegalStateException(place, e);
      }
    }
    return new RuleFiles(files);
  }

  /**
   * Those of a folder: each of its {@code .ttl} files takes the place of the packaged one of the same name, or is added.
   *
   * @throws BrokenRulesException where there is no such folder, or no such file in it
   */
  public static RuleFiles in(Path folder) {
    SortedMap<String, RuleFile> own = new TreeMap<>();
    try (DirectoryStream<Path> list = Files.newDirectoryStream(folder, "*.ttl")) {
      list.forEach(p -> own.put(p.getFileName().toString(), RuleFile.read(p)));
    } catch (IOException e) {
      throw new BrokenRulesException(folder.toString(), 0, 0, "is no folder of rules that can be read");
    }
    if (own.isEmpty()) {
      throw new BrokenRulesException(folder.toString(), 0, 0, "holds no file of rules (*.ttl)");
    }
    if (own.keySet().containsAll(PACKAGED)) {
      return new RuleFiles(own);
    }
    SortedMap<String, RuleFile> all = new TreeMap<>(packaged().files);
    all.putAll(own);
    return new RuleFiles(all);
  }

  /**
   * The same with other texts in the place of those of the same name, or beside them.
   *
   * @param texts by the file's name, such as {@code kinds.ttl}
   * @throws BrokenRulesException where a name is none of such a file
   */
  public RuleFiles with(Map<String, String> texts) {
    SortedMap<String, RuleFile> all = new TreeMap<>(files);
    texts.forEach((name, text) -> {
      if (!NAME.matcher(name).matches()) {
        throw new BrokenRulesException("rules", 0, 0,
            "a file of rules has a name such as kinds.ttl, not \"" + name.replaceAll("[^ -~]", "?") + "\"");
      }
      all.put(name, new RuleFile(name, name, text.replace("\r\n", "\n").replace('\r', '\n')));
    });
    return new RuleFiles(all);
  }

  /** The texts of the files by their names. */
  public SortedMap<String, String> texts() {
    SortedMap<String, String> texts = new TreeMap<>();
    files.forEach((name, file) -> texts.put(name, file.text()));
    return texts;
  }

  /** Those that the program doesn't have with the same text: what a folder has to hold to be these rules. */
  public SortedMap<String, String> own() {
    SortedMap<String, String> own = texts();
    packaged().files.forEach((name, file) -> own.remove(name, file.text()));
    return own;
  }

  /** Whether they have the same texts in the same places. */
  boolean areSameAs(RuleFiles others) {
    return files.equals(others.files);
  }

  Collection<RuleFile> all() {
    return files.values();
  }

  /** SHA-256 over names and texts of the files in the order of their names, line ends as in Unix: 64 hexadecimal digits. */
  public String hash() {
    MessageDigest digest = Sha256.digest();
    for (RuleFile f : all()) {
      digest.update((f.name() + "\n" + f.text().length() + "\n" + f.text()).getBytes(StandardCharsets.UTF_8));
    }
    return HexFormat.of().formatHex(digest.digest());
  }
}
