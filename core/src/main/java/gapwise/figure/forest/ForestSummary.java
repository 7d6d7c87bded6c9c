package gapwise.figure.forest;

import gapwise.figure.value.Check;
import gapwise.figure.value.Estimate;
import gapwise.figure.value.Limits;
import gapwise.figure.value.SeriesCount;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/** What stands under a block: a pooled value, or the reason why there is none. */
public sealed interface ForestSummary {

  /** Name of the line, such as "Pooled, random effects". */
  String label();

  /**
   * A pooled value.
   *
   * @param label name of the line, such as "Pooled, random effects"
   * @param estimate pooled value with its interval
   * @param prediction where a new centre is likely to lie; empty where it cannot be given
   * @param series how many groups, at least 1, and of how many studies
   * @param participants the people or limbs in words, such as "115 limbs"; empty for none
   */
  record Pooled(
      String label,
      Estimate estimate,
      Optional<Limits> prediction,
      SeriesCount series,
      String participants)
      implements ForestSummary {
    public Pooled {
      Check.words(label, "label");
      Objects.requireNonNull(estimate, "estimate");
      Objects.requireNonNull(prediction, "prediction");
      Objects.requireNonNull(participants, "participants");
      if (series.groups() < 1) {
        throw new IllegalArgumentException("a pooled value needs a study");
      }
    }

    /** Number of series, and the people where they are told, as phrases. */
    List<String> size() {
      return participants.isBlank()
          ? List.of(series.words())
          : List.of(series.words(), participants);
    }
  }

  /**
   * No pooled value.
   *
   * @param label name of the line, such as "Not pooled"
   * @param reason why, as a sentence
   */
  record NotPooled(String label, String reason) implements ForestSummary {
    public NotPooled {
      Check.words(label, "label");
      Check.words(reason, "reason");
    }
  }
}
