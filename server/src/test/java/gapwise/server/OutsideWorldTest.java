package gapwise.server;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * What our code, of both modules, never does: start programs (but itself, to read papers apart),
 * build objects or scripts from what it was given, or call out. The one call over the network is
 * the server's to itself after its start.
 */
class OutsideWorldTest {
  private static final JavaClasses OURS =
      new ClassFileImporter()
          .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
          .importPackages("gapwise");

  @Test
  void bothModulesAreLookedAt() {
    assertTrue(OURS.contain("gapwise.table.TableReader"));
    assertTrue(OURS.contain("gapwise.server.cli.WarmUp"));
  }

  @Test
  void noProgramIsStarted() {
    for (Class<?> process : List.of(ProcessBuilder.class, Process.class)) {
      noClasses()
          .that()
          .doNotHaveFullyQualifiedName("gapwise.paper.Reader")
          .should()
          .dependOnClassesThat()
          .areAssignableTo(process)
          .check(OURS);
    }
  }

  @Test
  void nothingThatWasGivenBecomesObjectsOrCode() {
    noClasses()
        .should()
        .dependOnClassesThat()
        .haveFullyQualifiedName("java.io.ObjectInputStream")
        .check(OURS);
    noClasses()
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage(
            "javax.script..",
            "javax.naming..",
            "java.beans..",
            "java.rmi..",
            "javax.xml.transform..",
            "javax.xml.xpath..")
        .check(OURS);
    noClasses().should().dependOnClassesThat().areAssignableTo(ClassLoader.class).check(OURS);
  }

  @Test
  void nothingCallsOut() {
    noClasses()
        .that()
        .doNotHaveFullyQualifiedName("gapwise.server.cli.WarmUp")
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage("java.net.http..", "javax.net..")
        .check(OURS);
    noClasses()
        .should()
        .dependOnClassesThat()
        .haveNameMatching("java\\.net\\.(URL|.*Socket.*|.*URLConnection)")
        .check(OURS);
  }
}
