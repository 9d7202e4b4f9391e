package org.seamledger.cli;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.seamledger.finding.EditDistance;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/** The command or option that was meant by a word that is none. */
final class Suggestion {

  /** Letters that may be wrong: two, and one more for every three of the word. */
  private static final int LETTERS = 3;

  private Suggestion() {
  }

  /** Such as {@code ; did you mean analyze?}, or the empty string where nothing is near. */
  static String of(ParameterException e) {
    if (!(e instanceof UnmatchedArgumentException unmatched) || unmatched.getUnmatched().isEmpty()) {
      return "";
    }
    String word = unmatched.getUnmatched().get(0).replaceFirst("=.*", "");
    return known(e.getCommandLine().getCommandSpec(), word).stream().filter(k -> isNear(word, k))
        .min(Comparator.comparing((String k) -> !k.startsWith(word)).thenComparingInt(k -> EditDistance.between(word, k))
            .thenComparing(k -> k))
        .map(k -> "; did you mean " + k + "?").orElse("");
  }

  /** That a word in the place of a command is none; empty where something else is wrong. */
  static Optional<String> unknownCommand(ParameterException e) {
    CommandSpec spec = e.getCommandLine().getCommandSpec();
    return e instanceof UnmatchedArgumentException unmatched && !unmatched.getUnmatched().isEmpty() && !spec.subcommands().isEmpty()
        && !unmatched.getUnmatched().get(0).startsWith("-") ? Optional.of("there is no command " + unmatched.getUnmatched().get(0))
            : Optional.empty();
  }

  private static boolean isNear(String word, String known) {
    int most = Math.min(2 + word.length() / LETTERS, Math.max(word.length(), known.length()) / 2);
    return EditDistance.between(word, known) <= most || word.length() >= LETTERS && known.startsWith(word);
  }

  private static List<String> known(CommandSpec spec, String word) {
    List<String> known = new ArrayList<>();
    if (word.startsWith("-")) {
      spec.options().stream().map(OptionSpec::longestName).forEach(known::add);
    } else {
      spec.subcommands().forEach((name, command) -> {
        if (!command.getCommandSpec().usageMessage().hidden()) {
          known.add(name);
        }
      });
    }
    return known;
  }
}
