package org.seamledger;

import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaConstructor;
import com.tngtech.archunit.core.domain.JavaMethod;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** What the program itself never calls is not kept, however well it is tested. */
@Tag("slow")
class UnusedCodeTest {

  private static final JavaClasses PROGRAM =
      new ClassFileImporter().withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS).importPackages("org.seamledger");

  /** Called by the platform or by a library by name. */
  private static final Set<String> CALLED_FROM_OUTSIDE = Set.of("main", "values", "valueOf", "toString", "hashCode", "equals", "$values");

  /**
   * What tests need to see or set of a running service, and nobody else: its addresses, to hold the description to them, and its limits.
   */
  private static final Set<String> FOR_TESTS = Set.of("org.seamledger.http.Server.addresses()",
      "org.seamledger.http.setting.Options.limits(org.seamledger.http.setting.Limits)");

  /** Where processes begin: the program's own, the one that {@code spark-submit} starts, and the build's step that stores the rules. */
  private static final Set<String> STARTS =
      Set.of("org.seamledger.cli.Main", "org.seamledger.cluster.ClusterMain", "org.seamledger.shacl.StoredRules");

  @Test
  void everyMethodIsCalled() {
    List<String> idle = PROGRAM.stream().flatMap(c -> c.getMethods().stream()).filter(m -> !isExempt(m))
        .filter(m -> m.getAccessesToSelf().stream().allMatch(a -> a.getOrigin().equals(m))).map(JavaMethod::getFullName)
        .filter(name -> !FOR_TESTS.contains(name)).sorted().toList();
    assertThat(idle).isEmpty();
  }

  @Test
  void everyClassIsUsed() {
    List<String> idle = PROGRAM.stream().filter(c -> !c.getSimpleName().equals("package-info") && !c.isAnonymousClass())
        .filter(c -> !isUsed(c))
        .filter(c -> !isStart(c)).map(JavaClass::getName).sorted().toList();
    assertThat(idle).isEmpty();
  }

  private static boolean isUsed(JavaClass outer) {
    return PROGRAM.stream().filter(c -> outermost(c).equals(outermost(outer))).flatMap(c -> c.getDirectDependenciesToSelf().stream())
        .anyMatch(d -> !outermost(d.getOriginClass()).equals(outermost(outer)));
  }

  /** Compilers copy constants to where they are used, so a class of nothing else leaves no trace there. */
  private static boolean isStart(JavaClass c) {
    boolean hasOnlyConstants = !c.getFields().isEmpty() && c.getMethods().isEmpty() && c.getFields().stream()
        .allMatch(f -> f.getModifiers().contains(JavaModifier.STATIC) && f.getModifiers().contains(JavaModifier.FINAL));
    return STARTS.contains(c.getName()) || !outermost(c).equals(c) || hasOnlyConstants;
  }

  private static JavaClass outermost(JavaClass c) {
    return c.getEnclosingClass().map(UnusedCodeTest::outermost).orElse(c);
  }

  private static boolean isExempt(JavaMethod m) {
    JavaClass owner = m.getOwner();
    boolean isAccessor = owner.isRecord() && m.getRawParameterTypes().isEmpty()
        && owner.getFields().stream().anyMatch(f -> f.getName().equals(m.getName()));
    return CALLED_FROM_OUTSIDE.contains(m.getName()) || isAccessor || m.getModifiers().contains(JavaModifier.SYNTHETIC)
        || m.getModifiers().contains(JavaModifier.BRIDGE) || m.getName().contains("$") || overrides(m) || !m.getAnnotations().isEmpty();
  }

  private static boolean overrides(JavaMethod m) {
    List<String> parameters = m.getRawParameterTypes().stream().map(JavaClass::getName).toList();
    return Stream.concat(m.getOwner().getAllRawSuperclasses().stream(), m.getOwner().getAllRawInterfaces().stream())
        .flatMap(c -> c.getMethods().stream())
        .anyMatch(s -> s.getName().equals(m.getName()) && s.getRawParameterTypes().size() == parameters.size());
  }

  @Test
  void everyConstructorIsCalled() {
    List<String> idle = PROGRAM.stream().flatMap(c -> c.getConstructors().stream())
        .filter(k -> !k.getModifiers().contains(JavaModifier.PRIVATE) && !k.getOwner().isRecord() && !k.getOwner().isEnum())
        .filter(k -> !k.getOwner().isAnonymousClass() && k.getAccessesToSelf().isEmpty()).map(JavaConstructor::getFullName)
        .filter(name -> !name.startsWith("org.seamledger.cli.")).sorted().toList();
    assertThat(idle).isEmpty();
  }
}
