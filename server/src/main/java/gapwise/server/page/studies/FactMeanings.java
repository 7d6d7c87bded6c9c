package gapwise.server.page.studies;

import static gapwise.sentence.Sentences.say;

import java.util.Map;
import java.util.Optional;

/** What is meant by the lines on a study's page, and how papers differ in them. */
final class FactMeanings {
  private static final Map<String, String> BY_NAME =
      Map.ofEntries(
          Map.entry(say("wording.fact-method"), say("page.meaning-method")),
          Map.entry(say("wording.fact-together-with"), say("page.meaning-together-with")),
          Map.entry(say("wording.fact-patients"), say("page.meaning-patients")),
          Map.entry(say("wording.fact-limbs"), say("page.meaning-limbs")),
          Map.entry(say("wording.fact-defects"), say("page.meaning-defects")),
          Map.entry(say("wording.fact-age"), say("page.meaning-age")),
          Map.entry(say("wording.fact-men-and-boys"), say("page.meaning-men-and-boys")),
          Map.entry(say("wording.fact-smokers"), say("page.meaning-smokers")),
          Map.entry(say("wording.fact-with-diabetes"), say("page.meaning-with-diabetes")),
          Map.entry(say("wording.fact-infected-start"), say("page.meaning-infected-start")),
          Map.entry(say("wording.fact-bones"), say("page.meaning-bones")),
          Map.entry(say("wording.fact-part-bone"), say("page.meaning-part-bone")),
          Map.entry(say("wording.fact-followed"), say("page.meaning-followed")),
          Map.entry(say("wording.fact-lost-followup"), say("page.meaning-lost-followup")));

  private FactMeanings() {}

  /** The meaning of a line; empty for one that says it itself. */
  static Optional<String> of(String name) {
    return Optional.ofNullable(BY_NAME.get(name));
  }
}
