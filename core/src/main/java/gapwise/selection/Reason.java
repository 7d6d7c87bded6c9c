package gapwise.selection;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.Definition;
import gapwise.evidence.KeptApart;
import gapwise.evidence.OutcomeReport;
import gapwise.evidence.vocabulary.Coded;
import gapwise.evidence.vocabulary.ExtractionStatus;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.evidence.vocabulary.Risk;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** Why something does not enter, with the values that tell it; worded when somebody reads it. */
public sealed interface Reason
    permits Reason.Plain,
        Reason.StatusTooEarly,
        Reason.RiskOfBias,
        Reason.NeverPooled,
        Reason.TooFewPatients,
        Reason.OtherDefinition,
        Reason.OverlappingCohort,
        Reason.OverlapSuspected,
        Reason.ValueOfAllArms,
        Reason.PartOfArm,
        Reason.FormDoesNotFit,
        Reason.PercentageOf,
        Reason.PassedOver,
        Incomparable {
  /** Kebab-case word that stays stable. */
  String code();

  /** The reason in a sentence for people. */
  String sentence();

  /** Reasons that are the same wherever they hold. */
  enum Plain implements Reason {
    RETRACTED("retracted", "selection.retracted"),
    ALTERNATIVE("another-report", "selection.alternative"),
    SUPERSEDED("superseded", "selection.superseded"),
    COMPARISON("comparison-only", "selection.comparison"),
    DIFFERENCE("comparison-only", "selection.difference"),
    PHASE("phase-of-treatment", "selection.phase"),
    WORDS("no-numbers", "selection.words"),
    NO_TOTAL("no-total", "selection.no-total"),
    PERCENTAGE_ALONE("percentage-without-count", "selection.percentage-alone"),
    NO_CENTRE("no-centre", "selection.no-centre"),
    OVER_TIME("events-over-time", "selection.over-time"),
    LENGTH_ONE_SIDED("length-one-sided", "selection.length-one-sided"),
    LENGTH_UNKNOWN("length-unknown", "selection.length-unknown"),
    LENGTH_WITHOUT_MIDDLE("length-without-middle", "selection.length-without-middle"),
    NO_PATIENTS_IN_RANGE("no-patients-in-range", "selection.no-patients-in-range"),
    NO_PATIENT_KNOWN("no-numbers", "selection.no-patient-known"),
    CURVE_ALONE("curve-alone", "selection.curve-alone"),
    NO_CURVE("no-curve", "selection.no-curve"),
    CURVE_WITHOUT_PATIENTS("curve-without-patients", "selection.curve-without-patients");

    private final String code;
    private final String name;

    Plain(String code, String name) {
      this.code = code;
      this.name = name;
    }

    @Override
    public String code() {
      return code;
    }

    @Override
    public String sentence() {
      return say(name);
    }
  }

  /** The record of the study has not come as far as is asked for. */
  record StatusTooEarly(ExtractionStatus status, ExtractionStatus least) implements Reason {
    @Override
    public String code() {
      return "status-too-early";
    }

    @Override
    public String sentence() {
      return say(
          "selection.status-too-early", Map.of("status", status.label(), "least", least.label()));
    }
  }

  /** The result of the study has another risk of bias than those asked for. */
  record RiskOfBias(Risk risk) implements Reason {
    @Override
    public String code() {
      return "risk-of-bias";
    }

    @Override
    public String sentence() {
      return say("selection.risk-of-bias", Map.of("risk", risk.label()));
    }
  }

  /**
   * The arm is kept and shown, and never pooled.
   *
   * @param why of what kind, and in what words
   */
  record NeverPooled(KeptApart why) implements Reason {
    @Override
    public String code() {
      return "kept-apart";
    }

    @Override
    public String sentence() {
      String reason = why.reason().label();
      return why.words()
          .map(words -> say("selection.kept-apart-words", Map.of("reason", reason, "words", words)))
          .orElseGet(() -> say("selection.kept-apart", Map.of("reason", reason)));
    }
  }

  /** The arm speaks of fewer patients than are asked for. */
  record TooFewPatients(int patients, int least) implements Reason {
    @Override
    public String code() {
      return "too-few-patients";
    }

    @Override
    public String sentence() {
      return say("selection.too-few-patients", Map.of("patients", patients, "least", least));
    }
  }

  /** The paper defines the outcome in another way than the one asked for. */
  record OtherDefinition(Definition definition) implements Reason {
    @Override
    public String code() {
      return "different-definition";
    }

    @Override
    public String sentence() {
      return definition
          .words()
          .map(words -> say("selection.different-definition", Map.of("definition", words)))
          .orElseGet(
              () ->
                  definition.isStated()
                      ? say("selection.different-definition-kinds", Map.of("kinds", kinds()))
                      : say("selection.definition-not-stated"));
    }

    /** Such as "bridging of three of four cortices; walking without pain". */
    private String kinds() {
      return definition.kinds().stream().map(Coded::label).collect(Collectors.joining("; "));
    }
  }

  /**
   * Patients of another study are among these.
   *
   * @param stays first author and year of the study that stays
   * @param named whether it stays because a person named it
   */
  record OverlappingCohort(String stays, boolean named) implements Reason {
    @Override
    public String code() {
      return "overlapping-cohort";
    }

    @Override
    public String sentence() {
      return say(
          named ? "selection.named-instead" : "selection.overlapping-cohort",
          Map.of("study", stays));
    }
  }

  /**
   * A record suspects, or a person could not tell, that a study that stays tells of the same
   * patients, and suspected ones are to be left out.
   *
   * @param stays first author and year of the study that stays
   * @param byPerson whether a person could not tell
   */
  record OverlapSuspected(String stays, boolean byPerson) implements Reason {
    @Override
    public String code() {
      return "overlap-left-out";
    }

    @Override
    public String sentence() {
      Map<String, String> study = Map.of("study", stays);
      return byPerson
          ? say("selection.overlap-not-known", study)
          : say("selection.overlap-left-out", study);
    }
  }

  /** One value for so many arms together. */
  record ValueOfAllArms(int arms) implements Reason {
    @Override
    public String code() {
      return "value-for-all-arms";
    }

    @Override
    public String sentence() {
      return say("selection.value-of-all-arms", Map.of("arms", arms));
    }
  }

  /**
   * The value is of some patients of the arm.
   *
   * @param part which, in the words of the paper
   */
  record PartOfArm(String part) implements Reason {
    @Override
    public String code() {
      return "subgroup";
    }

    @Override
    public String sentence() {
      return say("selection.part-of-arm", Map.of("part", part));
    }
  }

  /** An outcome of its kind has no numbers of this form. */
  record FormDoesNotFit(Outcome outcome) implements Reason {
    @Override
    public String code() {
      return "form-does-not-fit";
    }

    @Override
    public String sentence() {
      return say("selection.form-does-not-fit", Map.of("outcome", outcome.label()));
    }
  }

  /** A printed percentage that no whole number of the total, or more than one, gives. */
  record PercentageOf(double percent, int total) implements Reason {
    @Override
    public String code() {
      return "percentage-without-count";
    }

    @Override
    public String sentence() {
      return say(
          "selection.percentage-of-total",
          Map.of("percent", ReportWords.number(percent), "total", total));
    }
  }

  /** A usable report that gave way to something better. */
  record PassedOver(OutcomeReport report, For better) implements Reason {
    /** What it gave way to. */
    public enum For {
      /** Another report at the same time. */
      ANOTHER("another-report", "selection.passed-for-another"),
      /** A report at a later time. */
      LATER("another-time-point", "selection.passed-for-later"),
      /** Patients inside the range asked for, described one by one. */
      PATIENTS_IN_RANGE("patients-in-range", "selection.passed-for-patients"),
      /** A row that speaks for the whole arm. */
      WHOLE_ARM("subgroup", "selection.passed-for-whole-arm"),
      /** Sums of events among patients; it is a mean for each patient. */
      EVENTS_TAKEN("counted-otherwise", "selection.counted-as-mean"),
      /** Means for each patient; it is a sum of events among patients. */
      MEANS_TAKEN("counted-otherwise", "selection.counted-as-events");

      private final String code;
      private final String name;

      For(String code, String name) {
        this.code = code;
        this.name = name;
      }
    }

    @Override
    public String code() {
      return better.code;
    }

    @Override
    public String sentence() {
      return say(better.name, Map.of("value", ReportWords.of(Optional.of(report))));
    }
  }
}
