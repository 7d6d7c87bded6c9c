package gapwise;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Holds the map of rooms in DEVELOPERS.md: what each may use, and that nothing points back. */
class ArchitectureTest {
  private static final JavaClasses CORE =
      new ClassFileImporter()
          .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
          .importPackages("gapwise");

  /** Rooms that every room but {@code problem} and they themselves may use. */
  private static final Set<String> OPEN_TO_ALL = Set.of("budget", "sentence");

  /** What a kind of figure stands on; no kind knows another. */
  private static final Set<String> KIND_OF_FIGURE =
      Set.of("figure", "figure.drawing", "figure.file", "figure.page", "figure.value");

  /** Room to the rooms of ours that it may use. A room not listed here may not exist. */
  private static final Map<String, Set<String>> MAY_USE =
      new TreeMap<>(
          Map.ofEntries(
              Map.entry("problem", Set.of()),
              Map.entry("budget", Set.of("problem")),
              Map.entry("sentence", Set.of()),
              Map.entry("table", Set.of("problem")),
              Map.entry("evidence.unit", Set.of("problem")),
              Map.entry("evidence.vocabulary", Set.of("evidence.unit", "problem")),
              Map.entry("evidence", Set.of("evidence.unit", "evidence.vocabulary", "problem")),
              Map.entry("appraisal", Set.of("evidence", "evidence.vocabulary")),
              Map.entry(
                  "evidence.rule",
                  Set.of("evidence", "evidence.unit", "evidence.vocabulary", "problem")),
              Map.entry(
                  "evidence.check",
                  Set.of(
                      "evidence.rule",
                      "cohort",
                      "appraisal",
                      "evidence",
                      "evidence.unit",
                      "evidence.vocabulary",
                      "problem")),
              Map.entry(
                  "exchange.form", Set.of("evidence", "evidence.unit", "evidence.vocabulary")),
              Map.entry(
                  "exchange",
                  Set.of(
                      "table",
                      "exchange.form",
                      "evidence.rule",
                      "evidence.check",
                      "evidence",
                      "evidence.unit",
                      "evidence.vocabulary",
                      "problem")),
              Map.entry(
                  "desk",
                  Set.of(
                      "analysis.rows",
                      "effect",
                      "exchange",
                      "exchange.form",
                      "extraction",
                      "evidence",
                      "evidence.unit",
                      "evidence.vocabulary",
                      "figure.value",
                      "intake",
                      "paper",
                      "paper.curve",
                      "paper.reading",
                      "paper.table",
                      "paper.trace",
                      "printed",
                      "selection",
                      "store",
                      "table",
                      "untidy",
                      "problem")),
              Map.entry("store", Set.of("store.database", "problem")),
              Map.entry("store.database", Set.of("problem")),
              Map.entry(
                  "curation",
                  Set.of(
                      "evidence",
                      "extraction",
                      "reference",
                      "reference.format",
                      "reference.kept",
                      "review",
                      "review.kept",
                      "screening",
                      "store",
                      "problem")),
              Map.entry(
                  "carried",
                  Set.of(
                      "cohort",
                      "curation",
                      "decision.certainty",
                      "evidence",
                      "extraction",
                      "reference.kept",
                      "review.kept",
                      "screening",
                      "store",
                      "problem")),
              Map.entry("datapackage", Set.of("store", "problem")),
              Map.entry(
                  "whole",
                  Set.of(
                      "carried",
                      "curation",
                      "datapackage",
                      "evidence",
                      "exchange",
                      "figure.file",
                      "reference.format",
                      "reference.kept",
                      "store",
                      "table",
                      "problem")),
              Map.entry(
                  "supplement",
                  Set.of(
                      "analysis",
                      "analysis.result",
                      "analysis.rows",
                      "answer",
                      "cohort",
                      "curation",
                      "datapackage",
                      "evidence",
                      "exchange",
                      "figure",
                      "figure.drawing",
                      "figure.file",
                      "report",
                      "search",
                      "selection",
                      "store",
                      "table",
                      "problem")),
              Map.entry(
                  "review",
                  Set.of("evidence.unit", "evidence.vocabulary", "figure.value", "screening")),
              Map.entry("review.kept", Set.of()),
              Map.entry(
                  "review.digest",
                  Set.of(
                      "analysis.result",
                      "answer",
                      "claim",
                      "course",
                      "decision.certainty",
                      "decision.option",
                      "evidence",
                      "evidence.unit",
                      "evidence.vocabulary",
                      "figure.bubble",
                      "figure.value",
                      "review.kept",
                      "selection")),
              Map.entry(
                  "extraction",
                  Set.of(
                      "effect",
                      "evidence",
                      "exchange",
                      "exchange.form",
                      "numeric",
                      "screening",
                      "synthesis.agreement")),
              Map.entry("screening", Set.of("numeric", "reference.kept", "synthesis.agreement")),
              Map.entry("screening.drawn", Set.of("figure", "figure.flow", "screening")),
              Map.entry(
                  "intake",
                  Set.of(
                      "exchange",
                      "curation",
                      "evidence",
                      "evidence.rule",
                      "evidence.check",
                      "store",
                      "table",
                      "problem")),
              Map.entry(
                  "search",
                  Set.of(
                      "appraisal",
                      "evidence",
                      "evidence.unit",
                      "evidence.vocabulary",
                      "store",
                      "problem")),
              Map.entry("search.words", Set.of("evidence.unit", "evidence.vocabulary")),
              Map.entry(
                  "selection",
                  Set.of(
                      "appraisal",
                      "cohort",
                      "evidence",
                      "evidence.unit",
                      "evidence.vocabulary",
                      "search",
                      "curation",
                      "problem")),
              Map.entry("printed", Set.of("evidence.unit", "evidence.vocabulary")),
              Map.entry(
                  "untidy",
                  Set.of(
                      "table",
                      "printed",
                      "exchange.form",
                      "evidence.unit",
                      "evidence.vocabulary",
                      "problem")),
              Map.entry("paper", Set.of("problem")),
              Map.entry("paper.file", Set.of("paper")),
              Map.entry("reference.likeness", Set.of("printed")),
              Map.entry("reference", Set.of("evidence")),
              Map.entry("reference.format", Set.of("reference", "reference.likeness", "problem")),
              Map.entry(
                  "reference.pair",
                  Set.of(
                      "reference",
                      "reference.format",
                      "reference.likeness",
                      "evidence",
                      "problem")),
              Map.entry(
                  "reference.kept",
                  Set.of(
                      "reference",
                      "reference.format",
                      "reference.likeness",
                      "reference.pair",
                      "evidence")),
              Map.entry("paper.table", Set.of("paper")),
              Map.entry("paper.trace", Set.of("paper", "problem")),
              Map.entry("paper.curve", Set.of("paper.trace", "synthesis.survival", "problem")),
              Map.entry(
                  "paper.reading",
                  Set.of(
                      "paper",
                      "paper.table",
                      "untidy",
                      "printed",
                      "evidence.unit",
                      "evidence.vocabulary")),
              Map.entry(
                  "cohort",
                  Set.of(
                      "reference",
                      "reference.likeness",
                      "evidence",
                      "evidence.unit",
                      "evidence.vocabulary",
                      "evidence.rule",
                      "problem")),
              Map.entry("numeric", Set.of()),
              Map.entry("effect", Set.of("numeric", "problem")),
              Map.entry("effect.arms", Set.of("effect", "numeric", "problem")),
              Map.entry("synthesis.heterogeneity", Set.of("effect", "numeric")),
              Map.entry(
                  "synthesis.pooling",
                  Set.of("synthesis.heterogeneity", "effect", "numeric", "problem")),
              Map.entry(
                  "synthesis.diagnostics",
                  Set.of("synthesis.heterogeneity", "synthesis.pooling", "effect", "numeric")),
              Map.entry(
                  "synthesis.bayes",
                  Set.of(
                      "synthesis.heterogeneity",
                      "synthesis.likelihood",
                      "effect",
                      "numeric",
                      "problem")),
              Map.entry(
                  "synthesis.smallstudy",
                  Set.of(
                      "synthesis.heterogeneity",
                      "synthesis.pooling",
                      "effect",
                      "numeric",
                      "problem")),
              Map.entry("synthesis.agreement", Set.of("effect", "numeric")),
              Map.entry(
                  "synthesis.network",
                  Set.of("synthesis.heterogeneity", "effect", "numeric", "problem")),
              Map.entry(
                  "synthesis.network.exact",
                  Set.of(
                      "synthesis.network",
                      "synthesis.heterogeneity",
                      "effect",
                      "numeric",
                      "problem")),
              Map.entry("synthesis.survival", Set.of("effect", "numeric", "problem")),
              Map.entry(
                  "synthesis.regression",
                  Set.of(
                      "synthesis.heterogeneity",
                      "synthesis.pooling",
                      "effect",
                      "numeric",
                      "problem")),
              Map.entry(
                  "synthesis.likelihood",
                  Set.of(
                      "synthesis.heterogeneity",
                      "synthesis.pooling",
                      "synthesis.regression",
                      "effect",
                      "numeric",
                      "problem")),
              Map.entry(
                  "synthesis.multilevel",
                  Set.of(
                      "synthesis.heterogeneity",
                      "synthesis.pooling",
                      "synthesis.regression",
                      "effect",
                      "numeric",
                      "problem")),
              Map.entry(
                  "synthesis.patients",
                  Set.of("synthesis.multilevel", "synthesis.heterogeneity", "numeric", "problem")),
              Map.entry("synthesis.trial", Set.of("effect", "numeric")),
              Map.entry(
                  "decision.situation",
                  Set.of(
                      "evidence", "evidence.unit", "evidence.vocabulary", "search", "selection")),
              Map.entry(
                  "decision.certainty",
                  Set.of("decision.situation", "evidence.vocabulary", "figure.value")),
              Map.entry(
                  "decision.option",
                  Set.of(
                      "decision.situation",
                      "decision.certainty",
                      "appraisal",
                      "answer",
                      "claim",
                      "analysis",
                      "analysis.result",
                      "analysis.bayesian",
                      "analysis.synthesis",
                      "selection",
                      "search",
                      "evidence",
                      "evidence.vocabulary",
                      "figure.value")),
              Map.entry(
                  "decision.findings",
                  Set.of(
                      "decision.option",
                      "decision.certainty",
                      "decision.situation",
                      "answer",
                      "claim",
                      "evidence.vocabulary",
                      "figure.value")),
              Map.entry("decision.weighing", Set.of("numeric", "problem")),
              Map.entry("decision.cost", Set.of("numeric", "problem")),
              Map.entry(
                  "decision.choice",
                  Set.of(
                      "decision.option",
                      "decision.weighing",
                      "decision.cost",
                      "answer",
                      "selection",
                      "evidence",
                      "evidence.vocabulary",
                      "numeric",
                      "figure",
                      "figure.drawing",
                      "figure.plane",
                      "figure.ranks",
                      "figure.value",
                      "problem")),
              Map.entry(
                  "synthesis.multiverse",
                  Set.of(
                      "synthesis.heterogeneity",
                      "synthesis.pooling",
                      "synthesis.regression",
                      "effect",
                      "numeric",
                      "problem")),
              Map.entry("analysis.result", Set.of("problem")),
              Map.entry(
                  "analysis.rows",
                  Set.of(
                      "analysis.result",
                      "table",
                      "selection",
                      "evidence",
                      "evidence.vocabulary",
                      "effect",
                      "problem")),
              Map.entry("analysis.plan", Set.of("analysis.rows", "analysis.result", "problem")),
              Map.entry(
                  "analysis.pooling",
                  task(
                      "synthesis.heterogeneity",
                      "synthesis.pooling",
                      "synthesis.likelihood",
                      "synthesis.diagnostics")),
              Map.entry(
                  "analysis.moderators",
                  task(
                      "analysis.pooling",
                      "synthesis.heterogeneity",
                      "synthesis.pooling",
                      "synthesis.likelihood",
                      "synthesis.regression")),
              Map.entry(
                  "analysis.clusters",
                  task(
                      "analysis.pooling",
                      "analysis.moderators",
                      "synthesis.heterogeneity",
                      "synthesis.pooling",
                      "synthesis.regression",
                      "synthesis.multilevel")),
              Map.entry(
                  "analysis.bayesian",
                  task(
                      "analysis.pooling",
                      "synthesis.heterogeneity",
                      "synthesis.pooling",
                      "synthesis.likelihood",
                      "synthesis.bayes")),
              Map.entry(
                  "analysis.subgroups",
                  task("analysis.pooling", "analysis.bayesian", "synthesis.pooling")),
              Map.entry(
                  "analysis.smallstudy",
                  task(
                      "analysis.pooling",
                      "synthesis.heterogeneity",
                      "synthesis.pooling",
                      "synthesis.smallstudy")),
              Map.entry(
                  "analysis.network",
                  task(
                      "analysis.pooling",
                      "effect.arms",
                      "synthesis.heterogeneity",
                      "synthesis.network",
                      "synthesis.network.exact")),
              Map.entry(
                  "analysis.synthesis",
                  task(
                      "analysis.pooling",
                      "analysis.moderators",
                      "analysis.clusters",
                      "analysis.bayesian",
                      "analysis.subgroups",
                      "analysis.smallstudy",
                      "analysis.network",
                      "synthesis.heterogeneity",
                      "synthesis.pooling")),
              Map.entry(
                  "analysis.multiverse",
                  task(
                      "analysis.moderators",
                      "analysis.pooling",
                      "analysis.synthesis",
                      "synthesis.heterogeneity",
                      "synthesis.likelihood",
                      "synthesis.pooling",
                      "synthesis.regression",
                      "synthesis.multiverse")),
              Map.entry(
                  "analysis.trial",
                  task("analysis.pooling", "analysis.synthesis", "synthesis.trial")),
              Map.entry(
                  "analysis.curves",
                  task(
                      "analysis.pooling",
                      "synthesis.heterogeneity",
                      "synthesis.pooling",
                      "synthesis.survival")),
              Map.entry("analysis.agreement", task("synthesis.agreement")),
              Map.entry("analysis.patients", task("synthesis.patients")),
              Map.entry("analysis.single", task("analysis.pooling")),
              Map.entry(
                  "analysis",
                  Set.of(
                      "analysis.plan",
                      "analysis.rows",
                      "analysis.result",
                      "analysis.synthesis",
                      "analysis.multiverse",
                      "analysis.trial",
                      "analysis.curves",
                      "analysis.agreement",
                      "analysis.patients",
                      "analysis.single",
                      "selection",
                      "evidence.unit",
                      "evidence.vocabulary",
                      "problem")),
              Map.entry(
                  "report",
                  Set.of(
                      "analysis.result",
                      "analysis.pooling",
                      "analysis.subgroups",
                      "analysis.moderators",
                      "analysis.clusters",
                      "analysis.bayesian",
                      "analysis.smallstudy",
                      "analysis.network",
                      "analysis.synthesis",
                      "analysis.multiverse",
                      "analysis.curves",
                      "analysis.patients",
                      "analysis.trial",
                      "synthesis.likelihood",
                      "selection",
                      "search",
                      "evidence.unit",
                      "evidence.vocabulary",
                      "wording",
                      "effect",
                      "problem")),
              Map.entry("figure.value", Set.of()),
              Map.entry("figure.drawing", Set.of("figure.value")),
              Map.entry("figure.span", Set.of("figure.drawing", "figure.value")),
              Map.entry("figure", Set.of("figure.drawing", "figure.value")),
              Map.entry(
                  "figure.file", Set.of("figure", "figure.drawing", "figure.value", "problem")),
              Map.entry("figure.page", Set.of("figure", "figure.drawing", "figure.file")),
              Map.entry(
                  "figure.forest",
                  Set.of(
                      "figure",
                      "figure.drawing",
                      "figure.file",
                      "figure.page",
                      "figure.span",
                      "figure.value")),
              Map.entry("figure.bubble", KIND_OF_FIGURE),
              Map.entry("figure.funnel", KIND_OF_FIGURE),
              Map.entry("figure.curve", KIND_OF_FIGURE),
              Map.entry("figure.network", KIND_OF_FIGURE),
              Map.entry("figure.timeline", KIND_OF_FIGURE),
              Map.entry("figure.plane", KIND_OF_FIGURE),
              Map.entry("figure.ranks", KIND_OF_FIGURE),
              Map.entry("figure.flow", KIND_OF_FIGURE),
              Map.entry("figure.array", Set.of("figure.drawing", "figure.value")),
              Map.entry(
                  "wording",
                  Set.of(
                      "evidence",
                      "evidence.unit",
                      "evidence.vocabulary",
                      "effect",
                      "figure.drawing",
                      "figure.span",
                      "figure.value")),
              Map.entry(
                  "place",
                  Set.of(
                      "answer",
                      "analysis",
                      "analysis.result",
                      "analysis.pooling",
                      "analysis.subgroups",
                      "analysis.moderators",
                      "analysis.synthesis",
                      "selection",
                      "search",
                      "evidence",
                      "evidence.unit",
                      "evidence.vocabulary",
                      "wording",
                      "figure",
                      "figure.drawing",
                      "figure.timeline",
                      "figure.value",
                      "problem")),
              Map.entry(
                  "course",
                  Set.of(
                      "answer",
                      "analysis",
                      "analysis.curves",
                      "analysis.result",
                      "selection",
                      "evidence",
                      "evidence.unit",
                      "evidence.vocabulary",
                      "figure",
                      "figure.curve",
                      "figure.value",
                      "problem")),
              Map.entry(
                  "claim",
                  Set.of(
                      "answer",
                      "analysis",
                      "analysis.patients",
                      "numeric",
                      "analysis.result",
                      "analysis.rows",
                      "analysis.pooling",
                      "analysis.bayesian",
                      "analysis.subgroups",
                      "analysis.moderators",
                      "analysis.synthesis",
                      "analysis.network",
                      "analysis.multiverse",
                      "analysis.trial",
                      "selection",
                      "search",
                      "evidence",
                      "evidence.unit",
                      "evidence.vocabulary",
                      "wording",
                      "figure",
                      "figure.drawing",
                      "figure.forest",
                      "figure.value",
                      "problem")),
              Map.entry(
                  "decision.sheet",
                  Set.of(
                      "answer",
                      "curation",
                      "decision.certainty",
                      "decision.choice",
                      "decision.option",
                      "decision.situation",
                      "decision.weighing",
                      "evidence",
                      "evidence.unit",
                      "evidence.vocabulary",
                      "figure.array",
                      "figure.drawing",
                      "figure.span",
                      "figure.value",
                      "problem",
                      "search",
                      "selection")),
              Map.entry(
                  "answer.grid",
                  Set.of("search", "evidence", "evidence.unit", "evidence.vocabulary", "problem")),
              Map.entry(
                  "answer",
                  Set.of(
                      "appraisal",
                      "answer.grid",
                      "analysis",
                      "analysis.result",
                      "analysis.rows",
                      "analysis.pooling",
                      "analysis.bayesian",
                      "analysis.subgroups",
                      "analysis.moderators",
                      "analysis.synthesis",
                      "analysis.smallstudy",
                      "analysis.network",
                      "analysis.curves",
                      "effect",
                      "synthesis.heterogeneity",
                      "synthesis.pooling",
                      "synthesis.smallstudy",
                      "selection",
                      "search",
                      "evidence",
                      "evidence.unit",
                      "evidence.vocabulary",
                      "wording",
                      "figure",
                      "figure.bubble",
                      "figure.curve",
                      "figure.drawing",
                      "figure.forest",
                      "figure.funnel",
                      "figure.network",
                      "figure.span",
                      "figure.value",
                      "problem"))));

  /** What a task or a part of one may use: what every plan has, effects, and these rooms. */
  private static Set<String> task(String... rooms) {
    Set<String> all =
        new TreeSet<>(
            Set.of(
                "analysis.plan",
                "analysis.rows",
                "analysis.result",
                "effect",
                "numeric",
                "problem"));
    all.addAll(List.of(rooms));
    return all;
  }

  @TestFactory
  List<DynamicTest> eachRoomUsesOnlyWhatItMay() {
    List<DynamicTest> tests = new ArrayList<>();
    for (String room : rooms()) {
      Set<String> allowed = MAY_USE.getOrDefault(room, Set.of());
      String[] forbidden =
          rooms().stream()
              .filter(other -> !other.equals(room) && !allowed.contains(other))
              .filter(other -> room.equals("problem") || !OPEN_TO_ALL.contains(other))
              .map(other -> "gapwise." + other)
              .toArray(String[]::new);
      tests.add(
          DynamicTest.dynamicTest(
              room + " uses only " + allowed,
              () ->
                  noClasses()
                      .that()
                      .resideInAPackage("gapwise." + room)
                      .should()
                      .dependOnClassesThat()
                      .resideInAnyPackage(forbidden)
                      .check(CORE)));
    }
    return tests;
  }

  @Test
  void everyRoomIsOnTheMap() {
    Set<String> unknown = new TreeSet<>(rooms());
    unknown.removeAll(MAY_USE.keySet());
    assertTrue(unknown.isEmpty(), "rooms that the map does not know: " + unknown);
  }

  @Test
  void everyRoomSaysWhatBelongsInIt() {
    Set<String> described =
        CORE.stream()
            .filter(type -> type.getSimpleName().equals("package-info"))
            .map(type -> type.getPackageName().substring("gapwise.".length()))
            .collect(Collectors.toSet());
    List<String> silent =
        rooms().stream()
            .filter(room -> !described.contains(room))
            .filter(room -> !hasPackageInfo(room))
            .toList();
    assertTrue(silent.isEmpty(), "rooms without package-info: " + silent);
  }

  private static boolean hasPackageInfo(String room) {
    return java.nio.file.Files.exists(
        java.nio.file.Path.of(
            "src/main/java/gapwise/" + room.replace('.', '/') + "/package-info.java"));
  }

  @Test
  void roomsDoNotGoInCircles() {
    slices().matching("gapwise.(**)").should().beFreeOfCycles().check(CORE);
  }

  @Test
  void onlyTheStoreKnowsSql() {
    onlyIn(
        "gapwise.store..",
        "java.sql..",
        "javax.sql..",
        "org.jdbi..",
        "org.sqlite..",
        "org.postgresql..",
        "org.flywaydb..");
  }

  @Test
  void onlySearchKnowsLucene() {
    onlyIn("gapwise.search", "org.apache.lucene..");
  }

  @Test
  void onlyTheProcessThatReadsPapersKnowsPdf() {
    onlyIn("gapwise.paper.file", "org.apache.pdfbox..", "org.apache.fontbox..");
  }

  @Test
  void onlyTableAndExchangeKnowWorkbooks() {
    noClasses()
        .that()
        .resideOutsideOfPackages("gapwise.table", "gapwise.exchange")
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage("org.apache.poi..")
        .check(CORE);
  }

  @Test
  void distributionsComeFromTheLibraryThatIsAccurateInTheTails() {
    noClasses()
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage(
            "org.apache.commons.math3.distribution..", "org.apache.commons.math3.special..")
        .check(CORE);
  }

  @Test
  void exceptionsAreNamedAfterTheirFailure() {
    classes()
        .that()
        .areAssignableTo(Exception.class)
        .and()
        .arePublic()
        .should()
        .haveSimpleNameEndingWith("Exception")
        .check(CORE);
  }

  private static void onlyIn(String room, String... packages) {
    noClasses()
        .that()
        .resideOutsideOfPackage(room)
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage(packages)
        .check(CORE);
  }

  private static Set<String> rooms() {
    return CORE.stream()
        .map(type -> type.getPackageName())
        .filter(name -> name.startsWith("gapwise."))
        .map(name -> name.substring("gapwise.".length()))
        .collect(Collectors.toCollection(TreeSet::new));
  }

  /** The table of rooms for contributors names each, the short form {@code .part} included. */
  @Test
  void theMapForContributorsNamesEveryRoom() throws java.io.IOException {
    Set<String> named = new TreeSet<>();
    for (String line :
        java.nio.file.Files.readAllLines(java.nio.file.Path.of("..", "DEVELOPERS.md"))) {
      if (line.startsWith("| `")) {
        String parent = "";
        for (String name :
            line.substring(0, line.indexOf(" | ", 2)).replaceAll("[|` ]", "").split(",")) {
          named.add(name.startsWith(".") ? parent + name : name);
          parent = name.startsWith(".") ? parent : name.replaceFirst("[.][^.]*$", "");
        }
      }
    }
    Set<String> forgotten = new TreeSet<>(rooms());
    forgotten.removeAll(named);
    assertTrue(forgotten.isEmpty(), "rooms that DEVELOPERS.md does not name: " + forgotten);
  }

  /** Every entry of the map is a real room, so the map cannot grow stale. */
  @Test
  void theMapHasNoRoomThatIsGone() {
    Set<String> gone = new TreeSet<>(MAY_USE.keySet());
    gone.removeAll(rooms());
    assertTrue(gone.isEmpty(), "rooms on the map without a class: " + gone);
  }
}
