package gapwise.server;

import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.Architectures.layeredArchitecture;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.importer.ImportOption.DoNotIncludeTests;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

/** Arrows of this module point one way: main, commands, web server, doors, home. */
@AnalyzeClasses(packages = "gapwise.server", importOptions = DoNotIncludeTests.class)
class ServerArchitectureTest {
  @ArchTest
  static final ArchRule ROOMS_FORM_NO_CIRCLE =
      slices().matching("gapwise.server.(*)..").should().beFreeOfCycles();

  /** The frame and the rooms within {@code page} each stand alone in this. */
  @ArchTest
  static final ArchRule FOLDERS_FORM_NO_CIRCLE =
      slices().matching("gapwise.server.(**)").should().beFreeOfCycles();

  @ArchTest
  static final ArchRule THE_API_KNOWS_NO_PAGE =
      noClasses()
          .that()
          .resideInAPackage("gapwise.server.api..")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("gapwise.server.page..");

  /** An address is read without a request, an answer, or anything that is kept. */
  @ArchTest
  static final ArchRule ADDRESSES_KNOW_THE_CORE_ALONE =
      noClasses()
          .that()
          .resideInAPackage("gapwise.server.address..")
          .should()
          .dependOnClassesThat(
              resideInAPackage("gapwise.server..")
                  .and(not(resideInAPackage("gapwise.server.address..")))
                  .or(resideInAPackage("io.javalin..")));

  /** Who somebody is and may do is decided apart from every page. */
  @ArchTest
  static final ArchRule RIGHTS_STAND_ON_SECURITY_ALONE =
      noClasses()
          .that()
          .resideInAPackage("gapwise.server.account..")
          .should()
          .dependOnClassesThat(
              resideInAPackage("gapwise.server..")
                  .and(not(resideInAPackage("gapwise.server.account..")))
                  .and(not(resideInAPackage("gapwise.server.security.."))));

  @ArchTest
  static final ArchRule DOORS_LIE_OVER_HOME =
      layeredArchitecture()
          .consideringOnlyDependenciesInLayers()
          .layer("commands")
          .definedBy("gapwise.server.cli..")
          .layer("web")
          .definedBy("gapwise.server.web..")
          .layer("api")
          .definedBy("gapwise.server.api..")
          .layer("pages")
          .definedBy("gapwise.server.page..")
          .layer("home")
          .definedBy("gapwise.server.home..", "gapwise.server.job..")
          .layer("admission")
          .definedBy("gapwise.server.admission..")
          .layer("people")
          .definedBy("gapwise.server.account..")
          .whereLayer("web")
          .mayOnlyBeAccessedByLayers("commands")
          .whereLayer("api")
          .mayOnlyBeAccessedByLayers("web")
          .whereLayer("pages")
          .mayOnlyBeAccessedByLayers("web")
          .whereLayer("home")
          .mayOnlyBeAccessedByLayers("pages", "api", "web", "commands")
          .whereLayer("admission")
          .mayOnlyBeAccessedByLayers("home", "pages", "web")
          .whereLayer("people")
          .mayNotAccessAnyLayer();
}
