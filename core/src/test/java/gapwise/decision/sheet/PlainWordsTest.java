package gapwise.decision.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.answer.GroupName;
import gapwise.answer.MethodLine;
import gapwise.decision.certainty.Certainty;
import gapwise.decision.certainty.Domain;
import gapwise.decision.certainty.Level;
import gapwise.decision.certainty.Lowering;
import gapwise.decision.certainty.Rating;
import gapwise.decision.certainty.Start;
import gapwise.decision.option.Aspect;
import gapwise.decision.option.Cell;
import gapwise.decision.option.JudgedNumber;
import gapwise.decision.situation.Fit;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.figure.value.Estimate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What a patient reads of each method in each state of its numbers. */
class PlainWordsTest {
  /** Grades 6 and 8, as is common for leaflets (Rooney et al., J Patient Exp 2021;8). */
  private static final double KINCAID = 6;

  private static final double SMOG = 8;

  /** Words that claim more than such numbers carry; common practice, no source. */
  private static final Pattern FORBIDDEN =
      Pattern.compile(
          "\\b(significant(ly)?|proven|safe(r|ly)?|works|best|superior|inferior|trend|no effect"
              + "|no difference|equally good|ineffective|failed to|no evidence of harm|will)\\b",
          Pattern.CASE_INSENSITIVE);

  private static final Syllables SYLLABLES = Syllables.listed();

  private static Cell known(Method method, Level level, Estimate value) {
    List<Lowering> lowerings = new ArrayList<>();
    for (Domain domain : Domain.values()) {
      lowerings.add(
          new Lowering(domain, domain == Domain.BIAS ? level.ordinal() : 0, "for a test"));
    }
    return new Cell.Known(
        new MethodLine(
            GroupName.of(method),
            "7 of 13",
            "1 series",
            "",
            new MethodLine.OneSeries(value),
            Optional.empty(),
            List.of()),
        Fit.NONE,
        new JudgedNumber("for a test"),
        new Certainty(new Rating(Start.ONE_METHOD, lowerings, 0), Optional.empty(), List.of()));
  }

  private static Map<String, Cell> shares(Method method) {
    Map<String, Cell> cells = new LinkedHashMap<>();
    for (Level level : Level.values()) {
      cells.put(level.code(), known(method, level, Estimate.of(0.88, 0.78, 0.94)));
    }
    cells.put("not counted", new Cell.NotCounted(3));
    cells.put("no study", new Cell.NoStudy());
    cells.put("not usable", new Cell.NothingUsable());
    cells.put("does not apply", new Cell.DoesNotApply());
    return cells;
  }

  private static Cell months(Method method, Cell share) {
    return share instanceof Cell.Known known
        ? known(method, known.certainty().rating().level(), Estimate.of(12, 10, 15))
        : share;
  }

  /** All sentences of the row of a method whose numbers are all in one state. */
  private static String row(Method method, Cell cell) {
    PlainMethod plain = PlainMethod.of(method);
    Stream<String> shares =
        Stream.of(Aspect.UNION, Aspect.INFECTION, Aspect.LATER_AMPUTATION)
            .map(aspect -> PlainOutcome.of(aspect.outcomes(Optional.empty()).get(0)))
            .map(outcome -> PatientWords.share(outcome, cell))
            .map(share -> share.sentence() + ' ' + share.range());
    Cell months = months(method, cell);
    return String.join(
        " ",
        plain.is(),
        plain.asks(),
        plain.wrong(),
        "Not known: " + plain.unknown() + '.',
        PatientWords.frame(months),
        PatientWords.walking(months),
        shares.collect(Collectors.joining(" ")));
  }

  @Test
  void everyRowInEveryStateIsReadInSixthGrade() {
    for (Method method : Method.vocabulary().all()) {
      shares(method)
          .forEach(
              (state, cell) -> {
                String text = row(method, cell);
                ReadingLevel level = ReadingLevel.of(text, SYLLABLES);
                String where = method.code() + ", " + state + ": " + level + " " + text;
                assertTrue(level.kincaid() <= KINCAID, level.kincaid() + " " + where);
                assertTrue(level.smog() <= SMOG, level.smog() + " " + where);
                assertFalse(FORBIDDEN.matcher(text).find(), where);
              });
    }
  }

  @Test
  void everyMethodIsToldInPartsOfLikeLength() {
    for (Method method : Method.vocabulary().all()) {
      PlainMethod plain = PlainMethod.of(method);
      Stream.of(plain.name(), plain.is(), plain.asks(), plain.wrong(), plain.unknown())
          .forEach(part -> assertTrue(part.length() >= 15 && part.length() <= 120, part));
      assertTrue(plain.name().length() <= 30, plain.name());
      assertFalse(
          (plain.is() + plain.asks() + plain.wrong() + plain.unknown()).matches(".*[0-9].*"),
          "numbers come from the evidence alone: " + plain);
    }
  }

  @Test
  void everyWayOfCountingThatCanStandOverAnArrayHasPlainWords() {
    for (Aspect aspect : List.of(Aspect.UNION, Aspect.INFECTION, Aspect.LATER_AMPUTATION)) {
      for (Outcome outcome : aspect.outcomes(Optional.empty())) {
        assertFalse(PlainOutcome.of(outcome).head().isBlank());
      }
    }
  }

  @Test
  void aNumberIsSaidInTheWordsOfItsCertaintyWithItsOtherSideAndItsRange() {
    PlainOutcome union = PlainOutcome.of(Outcome.vocabulary().get("union"));
    Method method = Method.vocabulary().all().get(0);
    ShareCell low =
        PatientWords.share(union, known(method, Level.LOW, Estimate.of(0.88, 0.78, 0.94)));
    assertEquals("Perhaps 88 of 100 joined, maybe quite different.", low.sentence());
    assertEquals("78 to 94 fits; 12 did not.", low.range());
    assertEquals(
        "Bone joined: 88 of 100. Of 100 marks 78 are filled, 16 hatched, 6 empty.",
        low.alternative());
    ShareCell high =
        PatientWords.share(union, known(method, Level.HIGH, Estimate.of(0.88, 0.78, 0.94)));
    assertEquals("About 88 of 100 joined.", high.sentence());
  }

  @Test
  void whatIsNotKnownIsNeverANumber() {
    PlainOutcome union = PlainOutcome.of(Outcome.vocabulary().get("union"));
    assertEquals(
        "3 studies, none counted this.",
        PatientWords.share(union, new Cell.NotCounted(3)).sentence());
    assertEquals(
        "No study we found treated people like this.",
        PatientWords.share(union, new Cell.NoStudy()).sentence());
    assertEquals("Does not apply.", PatientWords.share(union, new Cell.DoesNotApply()).sentence());
  }

  @Test
  void noEventLeavesOpenWhatTheExactIntervalLeavesOpen() {
    // 1 - 0.025^(1/n), worked out apart from the program.
    assertEquals(0.336267, Counted.upperLimitOfNone(9), 5e-7);
    assertEquals(0.115703, Counted.upperLimitOfNone(30), 5e-7);
  }

  @Test
  void wholeNumbersNeverReachABoundThatTheShareDoesNot() {
    assertEquals("fewer than 1", Whole.of100(0.003));
    assertEquals("0", Whole.of100(0));
    assertEquals("over 99", Whole.of100(0.997));
    assertEquals("100", Whole.of100(1));
    assertEquals("34", Whole.of100(0.336267));
  }
}
