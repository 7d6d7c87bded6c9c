package gapwise.decision.sheet;

import gapwise.figure.drawing.Picture;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * The page for the patient.
 *
 * @param question in the patient's own words
 * @param situation short labels: length, infection, skin
 * @param bone the missing bone to scale; empty where no length is known
 * @param choice the choice in two sentences
 * @param heads over the arrays
 * @param rows the methods in the order of the vocabulary
 * @param followed when it was counted
 * @param nobody what nobody knows
 * @param wishes what may matter, those that were named first
 * @param named how many of the wishes were named
 * @param questions to ask
 * @param caution two sentences
 */
public record PatientPage(
    String question,
    List<String> situation,
    Optional<Picture> bone,
    List<String> choice,
    List<String> heads,
    List<PatientRow> rows,
    String followed,
    List<String> nobody,
    List<String> wishes,
    int named,
    List<String> questions,
    List<String> caution) {
  public PatientPage {
    Objects.requireNonNull(question, "question");
    situation = List.copyOf(situation);
    Objects.requireNonNull(bone, "bone");
    choice = List.copyOf(choice);
    heads = List.copyOf(heads);
    rows = List.copyOf(rows);
    Objects.requireNonNull(followed, "followed");
    nobody = List.copyOf(nobody);
    wishes = List.copyOf(wishes);
    questions = List.copyOf(questions);
    caution = List.copyOf(caution);
  }
}
