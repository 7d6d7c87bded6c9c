package gapwise.server.page.part;

import static gapwise.sentence.Sentences.say;

import gapwise.evidence.vocabulary.Bone;
import gapwise.evidence.vocabulary.Coded;
import gapwise.evidence.vocabulary.Design;
import gapwise.evidence.vocabulary.Method;
import gapwise.evidence.vocabulary.MethodDetail;
import gapwise.evidence.vocabulary.Outcome;
import gapwise.evidence.vocabulary.Risk;
import gapwise.evidence.vocabulary.YesOrNo;
import gapwise.server.address.Filters;
import gapwise.wording.Segments;
import java.util.Map;
import java.util.Optional;

/** How a value of a filter reads on its own, beside values of other filters. */
public final class FilterWords {
  private FilterWords() {}

  /**
   * A value in words; empty where it is none of the filter.
   *
   * @param filter its name in an address, of those with codes
   * @throws IllegalArgumentException for a filter without codes
   */
  public static Optional<String> of(String filter, String code) {
    return switch (filter) {
      case "method" -> Method.vocabulary().find(code).map(Method::label);
      case "outcome" -> Outcome.vocabulary().find(code).map(Outcome::label);
      case "bone" -> Coded.parse(Bone.class, code).map(Bone::label);
      case "segment" -> Optional.of(Segments.name(code));
      case "infected" ->
          Coded.parse(YesOrNo.class, code)
              .map(answer -> say("page.infected-at-start", Map.of("answer", answer.label())));
      case "design" -> Coded.parse(Design.class, code).map(Design::label);
      case Filters.RISK -> Coded.parse(Risk.class, code).map(Risk::label);
      case Filters.DETAIL -> MethodDetail.find(code).map(MethodDetail::label);
      default -> throw new IllegalArgumentException("no filter with codes: " + filter);
    };
  }
}
