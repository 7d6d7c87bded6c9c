package gapwise.decision.sheet;

import static gapwise.sentence.Sentences.say;
import static org.junit.jupiter.api.Assertions.assertTrue;

import gapwise.decision.situation.Situation;
import gapwise.decision.situation.Wish;
import gapwise.evidence.unit.LengthRange;
import gapwise.evidence.vocabulary.Bone;
import gapwise.search.SearchRequest;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/**
 * What the page for the patient says whatever the evidence, paragraph by paragraph, with every
 * bone, length and time that can stand in it. Labels without a verb are left out.
 */
class GeneralSentencesTest {
  /** Grades 6 and 8, as is common for leaflets (Rooney et al., J Patient Exp 2021;8). */
  private static final double KINCAID = 6;

  private static final double SMOG = 8;

  private static Situation situation(Set<Bone> bones, Optional<LengthRange> defect) {
    return new Situation(
        SearchRequest.EVERYTHING,
        defect,
        bones,
        Set.of(),
        Optional.empty(),
        Optional.empty(),
        OptionalInt.empty(),
        Optional.empty(),
        Optional.empty(),
        List.of());
  }

  private static List<String> questions() {
    List<Optional<LengthRange>> lengths = new ArrayList<>(List.of(Optional.empty()));
    lengths.add(Optional.of(new LengthRange(6, 6)));
    lengths.add(Optional.of(new LengthRange(2.5, 12.5)));
    lengths.add(Optional.of(new LengthRange(12.5, Double.POSITIVE_INFINITY)));
    List<String> questions = new ArrayList<>();
    for (Bone bone : Bone.values()) {
      lengths.forEach(
          one -> questions.add(new PatientSituation(situation(Set.of(bone), one)).question()));
    }
    return questions;
  }

  /** Every paragraph by what it is. */
  private static Map<String, String> paragraphs() {
    Map<String, String> all = new LinkedHashMap<>();
    List<String> followed =
        List.of(
            say("sheet.followed", Map.of("from", "3", "to", "120")), say("sheet.followed-unknown"));
    for (String question : questions()) {
      for (String one : followed) {
        all.put(
            question + " " + one,
            String.join(" ", question, say("sheet.choice"), say("sheet.choice-promise"), one));
      }
    }
    all.put(
        "what nobody knows",
        String.join(" ", say("sheet.nobody"), say("sheet.nobody-rows"), say("sheet.waiting")));
    all.put(
        "what matters",
        Arrays.stream(Wish.values())
            .map(PatientWords::wish)
            .map(wish -> wish + ".")
            .collect(Collectors.joining(" ")));
    all.put(
        "what to ask",
        String.join(
            " ",
            say("sheet.ask-how-many"),
            say("sheet.ask-fails"),
            say("sheet.ask-home"),
            say("sheet.ask-job")));
    all.put("care", String.join(" ", say("sheet.caution"), say("sheet.caution-groups")));
    return all;
  }

  @Test
  void everyParagraphIsReadInSixthGrade() {
    Syllables syllables = Syllables.listed();
    List<String> hard = new ArrayList<>();
    paragraphs()
        .forEach(
            (what, text) -> {
              ReadingLevel level = ReadingLevel.of(text, syllables);
              if (level.kincaid() > KINCAID || level.smog() > SMOG) {
                hard.add(what + ": " + level.kincaid() + ", " + level.smog() + ", " + text);
              }
            });
    assertTrue(hard.isEmpty(), String.join("\n", hard));
  }
}
