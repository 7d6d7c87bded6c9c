package gapwise.answer;

import gapwise.figure.bubble.Bubble;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * How an outcome runs over the length of missing bone.
 *
 * @param answer rows, plan and result
 * @param asked the shape asked for
 * @param drawn the shape that there are series enough for; empty for series without a line
 * @param notes why a shape asked for is not drawn, and what could not be told
 */
public record LengthAnswer(
    Answer answer, LengthShape asked, Optional<LengthShape> drawn, List<String> notes) {
  public LengthAnswer {
    Objects.requireNonNull(answer, "answer");
    Objects.requireNonNull(asked, "asked");
    Objects.requireNonNull(drawn, "drawn");
    notes = List.copyOf(notes);
  }

  /**
   * The figure; empty where no series has both a value and a length.
   *
   * @param edition state of program and evidence base
   */
  public Optional<Bubble> figure(Edition edition) {
    return large(edition).map(Large::whole);
  }

  /** The same with what of it a page draws. */
  public Optional<Large<Bubble>> large(Edition edition) {
    return answer
        .result()
        .map(result -> AnswerBubble.of(this, result, edition))
        .filter(figure -> !figure.whole().points().isEmpty());
  }
}
