package gapwise.server.kept;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.course.CurveTaken;
import gapwise.decision.option.OptionQuestion;
import gapwise.evidence.Study;
import gapwise.exchange.Import;
import gapwise.exchange.Imported;
import gapwise.exchange.KnownEvidence;
import gapwise.review.kept.Digest;
import gapwise.review.kept.DigestStudy;
import gapwise.review.kept.KeptQuestion;
import gapwise.review.kept.Moved;
import gapwise.server.address.Address;
import gapwise.server.address.CourseAddress;
import gapwise.server.address.OptionAddress;
import gapwise.server.address.QuestionAddress;
import gapwise.server.home.Evidence;
import gapwise.server.home.Hold;
import gapwise.server.home.Home;
import gapwise.server.kept.KeptAnswers.Asked;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Kept questions held against what their selections hold, over changes drawn at random. */
class KeptAnswersTest {
  private static final Path DEMONSTRATION =
      Path.of("..", "data-templates", "demonstration", "gapwise-demonstration.xlsx");
  private static final int CHANGES = 14;

  private static final List<Asked> QUESTIONS =
      List.of(
          asked(KeptPlace.POOLED, "outcome=primary-union&method=bone-transport"),
          asked(KeptPlace.POOLED, "outcome=time-to-union&method=induced-membrane"),
          asked(KeptPlace.POOLED, "outcome=flap-loss&method=allograft"),
          asked(KeptPlace.OVER_TIME, "outcome=time-to-union&clock=frame-on"),
          asked(KeptPlace.COMPARE, "from=4&to=8&method=induced-membrane&aspect=union"));

  @TempDir Path folder;

  private static Asked asked(KeptPlace place, String query) {
    return new Asked(place, Address.parse(query));
  }

  private static List<Study> demonstration() {
    Imported read = Import.read(DEMONSTRATION, KnownEvidence.NONE, key -> true, rows -> {});
    return ((Imported.Ready) read).studies();
  }

  /** What the selection of a question holds, asked apart from its digest. */
  private static Set<String> held(Evidence evidence, Asked asked) {
    Set<String> held = new TreeSet<>();
    switch (asked.place()) {
      case POOLED ->
          evidence
              .answers()
              .select(QuestionAddress.question(asked.address()).orElseThrow())
              .byMethod()
              .rows()
              .forEach(row -> held.add(row.study().id()));
      case OVER_TIME ->
          evidence
              .courses()
              .ask(
                  QuestionAddress.question(asked.address()).orElseThrow(),
                  CourseAddress.horizon(asked.address()))
              .curves()
              .stream()
              .map(CurveTaken::row)
              .forEach(row -> held.add(row.study().id()));
      default -> {
        OptionQuestion question = OptionAddress.question(asked.address());
        evidence
            .options()
            .table(question)
            .columns()
            .forEach(column -> column.rows().forEach(row -> held.add(row.study().id())));
      }
    }
    return held;
  }

  private record Known(Map<Asked, Digest> digests, Map<Asked, Set<String>> held) {}

  private static Known known(Home home) {
    Map<Asked, Digest> digests = new HashMap<>();
    Map<Asked, Set<String>> held = new HashMap<>();
    try (Hold hold = home.hold()) {
      KeptAnswers answers = new KeptAnswers(hold.evidence(), "test");
      for (Asked asked : QUESTIONS) {
        digests.put(asked, answers.digest(asked));
        held.put(asked, held(hold.evidence(), asked));
      }
    }
    return new Known(digests, held);
  }

  private static Set<String> ids(List<DigestStudy> studies) {
    return studies.stream().map(DigestStudy::id).collect(Collectors.toCollection(TreeSet::new));
  }

  private static Set<String> without(Set<String> all, Set<String> those) {
    Set<String> left = new TreeSet<>(all);
    left.removeAll(those);
    return left;
  }

  @Test
  void aChangeMarksExactlyTheQuestionsWhoseSelectionHoldsItOrNowHoldsIt() {
    Random chance = new Random(20311);
    try (Home home = Home.open(folder, Clock.systemUTC())) {
      home.base().saveAll(demonstration().iterator(), "AB", "for a test", List.of());
      List<Study> all = new ArrayList<>(demonstration());
      Set<String> gone = new TreeSet<>();
      Map<String, Integer> versions = new HashMap<>();
      Known before = known(home);
      boolean some = false;
      boolean none = false;
      for (int step = 0; step < CHANGES; step++) {
        Study study = all.get(chance.nextInt(all.size()));
        int version = versions.getOrDefault(study.id(), 1);
        boolean back = gone.remove(study.id());
        if (!back && chance.nextBoolean()) {
          home.base().remove(study.id(), "AB", "step " + step, version);
          gone.add(study.id());
        } else {
          Study changed = study.but().note("told anew in step " + step).build();
          home.base().save(changed, "AB", "step " + step, version);
        }
        versions.put(study.id(), version + 1);
        Known after = known(home);
        for (Asked asked : QUESTIONS) {
          Set<String> was = Set.copyOf(before.held().getOrDefault(asked, Set.of()));
          Set<String> is = Set.copyOf(after.held().getOrDefault(asked, Set.of()));
          Moved moved = Moved.between(before.digests().get(asked), after.digests().get(asked));
          String where = "step " + step + ", " + study.id() + ", " + asked;
          assertEquals(without(is, was), ids(moved.came()), where);
          assertEquals(without(was, is), ids(moved.went()), where);
          boolean stayed = was.contains(study.id()) && is.contains(study.id());
          assertEquals(
              stayed ? Set.of(study.id()) : Set.of(),
              moved.changed().stream().map(one -> one.after().id()).collect(Collectors.toSet()),
              where);
          if (was.equals(is) && !was.contains(study.id())) {
            assertEquals(Moved.Mark.AS_IT_WAS, moved.mark(), where);
            none = true;
          } else {
            assertTrue(moved.mark() != Moved.Mark.AS_IT_WAS, where);
            some = true;
          }
        }
        before = after;
      }
      assertTrue(some && none, "changes touched some questions and left some alone");
    }
  }

  @Test
  void aQuestionOfThisStateIsKnownWithoutWorkAndOneOfAnotherIsNot() {
    try (Home home = Home.open(folder, Clock.systemUTC())) {
      home.base().saveAll(demonstration().iterator(), "AB", "for a test", List.of());
      Asked asked = QUESTIONS.get(0);
      KeptQuestion kept;
      try (Hold hold = home.hold()) {
        Digest digest = new KeptAnswers(hold.evidence(), "test").digest(asked);
        kept =
            new KeptQuestion(
                "00aa00aa00aa", "Union", "/pooled", asked.address().at("").substring(1), digest);
        assertTrue(new KeptAnswers(hold.evidence(), "test").isKnown(kept));
        KeptAnswers later = new KeptAnswers(hold.evidence(), "a later program");
        assertFalse(later.isKnown(kept));
        assertEquals(Moved.Mark.AS_IT_WAS, later.moved(kept).mark());
        assertTrue(later.isKnown(kept), "it was worked out and is remembered");
      }
    }
  }

  @Test
  void aMethodWithoutStudiesHasNoNumberAndNoStudy() {
    try (Home home = Home.open(folder, Clock.systemUTC())) {
      try (Hold hold = home.hold()) {
        Digest digest = new KeptAnswers(hold.evidence(), "test").digest(QUESTIONS.get(2));
        assertEquals(List.of(), digest.studies());
        assertEquals(List.of(), digest.numbers());
      }
    }
  }
}
