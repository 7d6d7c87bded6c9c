package gapwise.evidence;

import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import gapwise.evidence.unit.Unit;
import gapwise.evidence.vocabulary.YesOrNo;
import java.util.Objects;

/** What became of one patient in one outcome. */
@JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "form")
@JsonSubTypes({
  @JsonSubTypes.Type(value = PatientOutcome.Happened.class, name = "happened"),
  @JsonSubTypes.Type(value = PatientOutcome.Measured.class, name = "measured"),
  @JsonSubTypes.Type(value = PatientOutcome.Graded.class, name = "graded")
})
public sealed interface PatientOutcome {
  /** Whether an event came about: yes, no or unclear. */
  record Happened(YesOrNo answer) implements PatientOutcome {
    public Happened {
      Objects.requireNonNull(answer, "answer");
    }
  }

  /** A number in its unit. */
  record Measured(double value, Unit unit) implements PatientOutcome {
    public Measured {
      Objects.requireNonNull(unit, "unit");
      if (!Double.isFinite(value)) {
        throw new IllegalArgumentException("a measured value must be finite, was " + value);
      }
    }
  }

  /** A grade such as excellent or poor, in the words of the paper. */
  record Graded(String grade) implements PatientOutcome {
    public Graded {
      if (grade.isBlank()) {
        throw new IllegalArgumentException("a grade needs a word");
      }
    }
  }
}
