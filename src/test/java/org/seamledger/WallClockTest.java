package org.seamledger;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.AccessTarget;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaCodeUnit;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/**
 * Whoever asks what time of the day it is, with why. Somebody may set that clock at any moment, by hours or days: how long something takes,
 * when it is over, and who is dead is measured by {@link System#nanoTime}, or by the time that processes share.
 */
class WallClockTest {

  private static final Map<String, String> WHY = new TreeMap<>(Map.of(
      "org.seamledger.cli.Cli.<init>", "dates of events in logs and of what is written",
      "org.seamledger.cli.Main.run", "the same",
      "org.seamledger.http.RequestHandling.install", "links end at a date that people were told",
      "org.seamledger.http.Server.<init>", "since when a part fails, for people",
      "org.seamledger.http.Server.watching", "dates of events in logs",
      "org.seamledger.http.api.LinksApi.body", "links end at a date that people were told",
      "org.seamledger.ledger.Analyses.now", "dates that people read",
      "org.seamledger.ledger.SiteLinks.make", "links end at a date that people were told",
      "org.seamledger.source.BimServer.attach", "the date of a document, for people"));

  static {
    WHY.put("org.seamledger.ledger.Analyses.oldestWaiting", "by a date in storage, for a chart");
    WHY.put("org.seamledger.ledger.CautiousClock.<init>", "the age of files, which have no other; a jump ahead is noticed");
    WHY.put("org.seamledger.ledger.ModelFolder.touched", "the age of files, which have no other");
  }

  private static boolean asks(AccessTarget target) {
    String owner = target.getOwner().getName();
    String name = target.getName();
    boolean isDate = owner.startsWith("java.time.") && name.equals("now");
    boolean isClock = Set.of("java.time.Clock", "java.time.InstantSource").contains(owner)
        && (name.startsWith("system") || name.startsWith("tick"));
    boolean isOld = owner.equals("java.lang.System") && name.equals("currentTimeMillis")
        || owner.equals("java.util.Calendar") && name.equals("getInstance")
        || owner.equals("java.util.Date") && target.getFullName().endsWith("Date.<init>()");
    return isDate || isClock || isOld;
  }

  private static void note(JavaAccess<?> access, Set<String> found) {
    if (asks(access.getTarget())) {
      JavaCodeUnit by = access.getOrigin();
      found.add(by.getOwner().getName() + "." + by.getName());
    }
  }

  @Test
  void onlyThoseAskForTheTimeOfTheDayWhoTellItToPeople() {
    JavaClasses program =
        new ClassFileImporter().withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS).importPackages("org.seamledger");
    Set<String> found = new TreeSet<>();
    for (JavaClass c : program) {
      c.getAccessesFromSelf().forEach(a -> note(a, found));
    }
    assertThat(found).containsExactlyInAnyOrderElementsOf(WHY.keySet());
  }
}
