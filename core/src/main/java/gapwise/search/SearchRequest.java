package gapwise.search;

import gapwise.evidence.unit.LengthRange;
import gapwise.evidence.vocabulary.Bone;
import gapwise.evidence.vocabulary.Design;
import gapwise.evidence.vocabulary.MethodDetail;
import gapwise.evidence.vocabulary.Risk;
import gapwise.evidence.vocabulary.YesOrNo;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * What a person looks for among arms. Values of one filter are alternatives; filters narrow one
 * another; an empty part does not narrow.
 *
 * @param text free words, searched in titles, method details and wording
 * @param methods codes of methods
 * @param bones bones among the defects
 * @param segments AO/OTA codes
 * @param infected infected at the start: yes, no, mixed
 * @param made how the study was made
 * @param outcomes codes of outcomes of which at least one must be reported for the arm
 * @param details words of details of methods; those of one detail are alternatives, and details
 *     narrow one another
 * @param years years of publication
 * @param defect missing length
 * @param defectMatch how the missing length of an arm is held against it
 * @param followUpFrom months for which the patients of an arm must have been followed at least, by
 *     mean or median or else by the shortest follow-up, 0 or more; arms of which no follow-up is
 *     known fail it
 */
public record SearchRequest(
    String text,
    Set<String> methods,
    Set<Bone> bones,
    Set<String> segments,
    Set<YesOrNo> infected,
    HowMade made,
    Set<String> outcomes,
    Set<MethodDetail> details,
    YearRange years,
    Optional<LengthRange> defect,
    DefectMatch defectMatch,
    OptionalDouble followUpFrom) {

  /** How the missing length of an arm is held against the range asked for. */
  public enum DefectMatch {
    /**
     * The arm reaches into the range, by what is reported of its spread; "over 4 cm" alone reaches
     * only into a range that holds all of it.
     */
    OVERLAP,
    /** The mean or median of the arm lies in the range. */
    CENTRE,
    /** No mean or median is known of the arm; the range says nothing then. */
    NO_CENTRE,
    /**
     * Of the length only one end is known, such as "over 4 cm", so that it is not said whether the
     * arm reaches into the range; without a range, every such arm.
     */
    ONE_SIDED,
    /** Nothing in numbers is known of the length that could lie in the range. */
    UNKNOWN
  }

  /** Everything there is. */
  public static final SearchRequest EVERYTHING =
      new SearchRequest(
          "",
          Set.of(),
          Set.of(),
          Set.of(),
          Set.of(),
          HowMade.ANY,
          Set.of(),
          Set.of(),
          YearRange.ANY,
          Optional.empty(),
          DefectMatch.OVERLAP,
          OptionalDouble.empty());

  public SearchRequest {
    Objects.requireNonNull(text, "text");
    methods = Set.copyOf(methods);
    bones = Set.copyOf(bones);
    segments = Set.copyOf(segments);
    infected = Set.copyOf(infected);
    Objects.requireNonNull(made, "made");
    outcomes = Set.copyOf(outcomes);
    details = Set.copyOf(details);
    Objects.requireNonNull(years, "years");
    Objects.requireNonNull(defect, "defect");
    Objects.requireNonNull(defectMatch, "defectMatch");
    if (followUpFrom.isPresent() && !(followUpFrom.getAsDouble() >= 0)) {
      throw new IllegalArgumentException(
          "follow-up must be 0 months or more, was " + followUpFrom.getAsDouble());
    }
  }

  /**
   * The missing length that patients described one by one are counted by: the range, where it is
   * asked of arms whether they reach into it or have their centre in it.
   */
  public Optional<LengthRange> lengthsOfPatients() {
    return defectMatch == DefectMatch.OVERLAP || defectMatch == DefectMatch.CENTRE
        ? defect
        : Optional.empty();
  }

  /** The same request with other free words. */
  public SearchRequest withText(String words) {
    Copy copy = new Copy();
    copy.text = words;
    return copy.request();
  }

  /** The same request narrowed to other methods. */
  public SearchRequest withMethods(Set<String> codes) {
    Copy copy = new Copy();
    copy.methods = codes;
    return copy.request();
  }

  /** The same request narrowed to other bones. */
  public SearchRequest withBones(Set<Bone> others) {
    Copy copy = new Copy();
    copy.bones = others;
    return copy.request();
  }

  /** The same request of other infection at the start. */
  public SearchRequest withInfected(Set<YesOrNo> others) {
    Copy copy = new Copy();
    copy.infected = others;
    return copy.request();
  }

  /** The same request narrowed to other outcomes. */
  public SearchRequest withOutcomes(Set<String> codes) {
    Copy copy = new Copy();
    copy.outcomes = codes;
    return copy.request();
  }

  /** Designs, any of them; empty where all are meant. */
  public Set<Design> designs() {
    return made.designs();
  }

  /** Risks of bias, any of them; empty where all are meant. */
  public Set<Risk> risks() {
    return made.risks();
  }

  /** The same request narrowed to other risks of bias, or to none. */
  public SearchRequest withRisks(Set<Risk> risks) {
    Copy copy = new Copy();
    copy.made = new HowMade(made.designs(), risks);
    return copy.request();
  }

  /** The same request narrowed to one year of publication. */
  public SearchRequest ofYear(int year) {
    Copy copy = new Copy();
    copy.years = YearRange.only(year);
    return copy.request();
  }

  /** The same request with another missing length. */
  public SearchRequest withDefect(LengthRange range, DefectMatch match) {
    Copy copy = new Copy();
    copy.defect = Optional.of(range);
    copy.defectMatch = match;
    return copy.request();
  }

  /** The parts of this request, of which one is changed. */
  private final class Copy {
    private String text = SearchRequest.this.text;
    private Set<String> methods = SearchRequest.this.methods;
    private Set<Bone> bones = SearchRequest.this.bones;
    private Set<YesOrNo> infected = SearchRequest.this.infected;
    private HowMade made = SearchRequest.this.made;
    private Set<String> outcomes = SearchRequest.this.outcomes;
    private YearRange years = SearchRequest.this.years;
    private Optional<LengthRange> defect = SearchRequest.this.defect;
    private DefectMatch defectMatch = SearchRequest.this.defectMatch;

    SearchRequest request() {
      return new SearchRequest(
          text,
          methods,
          bones,
          segments,
          infected,
          made,
          outcomes,
          details,
          years,
          defect,
          defectMatch,
          followUpFrom);
    }
  }
}
