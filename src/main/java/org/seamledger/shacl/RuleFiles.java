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
import java.util.SortedMap;
import java.util.TreeMap;
import org.seamledger.finding.Sha256;

/** The files of the rules in force, by name, unparsed: to know which rules they are takes no more. */
public final class RuleFiles {

  private static final List<String> PACKAGED = List.of("details-content.ttl", "details.ttl", "findings.ttl", "fixity.ttl", "kinds.ttl",
      "nodes-content.ttl", "nodes.ttl", "profiles.ttl", "sequence.ttl");

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
    SortedMap<String, RuleFile> all = new TreeMap<>(packaged().files);
    all.putAll(own);
    return new RuleFiles(all);
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
